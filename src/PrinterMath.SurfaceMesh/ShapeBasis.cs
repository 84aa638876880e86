using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>Legendre terms of rising total degree, made orthonormal over a set of points (Gram-Schmidt, twice); terms the points cannot tell apart are left out.</summary>
internal sealed class ShapeBasis
{
    internal const int HighestDegree = 6;

    /// <summary>What is left of a term that depends on those before it, against its own length.</summary>
    private const double Dependent = 1e-8;

    private readonly List<double[]> _columns = [];
    private readonly int[] _termsUpTo = new int[HighestDegree + 1];

    private ShapeBasis()
    {
    }

    /// <summary>Number of terms up to a total degree.</summary>
    internal int Terms(int degree) => _termsUpTo[degree];

    internal static ShapeBasis Of(ProbePoint[] points)
    {
        SurfaceRectangle bounds = PointBounds.Of(points);
        var basis = new ShapeBasis();
        for (int degree = 0; degree <= HighestDegree; degree++)
        {
            for (int term = degree == 0 ? 0 : LegendreTerms.Count(degree - 1); term < LegendreTerms.Count(degree); term++)
            {
                basis.Append([.. points.Select(p => LegendreTerms.Value(
                    term,
                    ((2 * p.XMeters) - bounds.LeftMeters - bounds.RightMeters) / (bounds.RightMeters - bounds.LeftMeters),
                    ((2 * p.YMeters) - bounds.FrontMeters - bounds.RearMeters) / (bounds.RearMeters - bounds.FrontMeters)))]);
            }

            basis._termsUpTo[degree] = basis._columns.Count;
        }

        return basis;
    }

    /// <summary>Takes the terms up to a degree out of heights.</summary>
    internal void Remove(Span<double> heights, int degree) => Remove(heights, 0, Terms(degree));

    /// <summary>Takes the terms above one degree and up to another out of heights.</summary>
    internal void RemoveBetween(Span<double> heights, int above, int upTo) => Remove(heights, Terms(above), Terms(upTo));

    private void Append(double[] column)
    {
        double length = Math.Sqrt(Dot(column, column));
        Remove(column, 0, _columns.Count);
        Remove(column, 0, _columns.Count);
        double left = Math.Sqrt(Dot(column, column));
        if (left <= Dependent * length)
        {
            return;
        }

        for (int k = 0; k < column.Length; k++)
        {
            column[k] /= left;
        }

        _columns.Add(column);
    }

    private void Remove(Span<double> heights, int from, int to)
    {
        for (int j = from; j < to; j++)
        {
            double[] column = _columns[j];
            double amount = Dot(column, heights);
            for (int k = 0; k < column.Length; k++)
            {
                heights[k] -= amount * column[k];
            }
        }
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int k = 0; k < a.Length; k++)
        {
            sum += a[k] * b[k];
        }

        return sum;
    }
}
