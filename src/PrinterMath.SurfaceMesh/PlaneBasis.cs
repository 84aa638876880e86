using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>Offset and tilts, made orthonormal over a set of points (Gram-Schmidt, twice), to take the least-squares plane out of heights.</summary>
internal sealed class PlaneBasis
{
    /// <summary>What is left of a column that depends on those before it, against its own length.</summary>
    private const double Dependent = 1e-8;

    private readonly List<double[]> _columns = [];

    private PlaneBasis()
    {
    }

    /// <summary>Three when the points determine a plane, two when they lie on one line.</summary>
    internal int Terms => _columns.Count;

    internal static PlaneBasis Of(ProbePoint[] points)
    {
        SurfaceRectangle bounds = PointBounds.Of(points);
        var basis = new PlaneBasis();
        basis.Append([.. points.Select(_ => 1.0)]);
        basis.Append([.. points.Select(p => (p.XMeters - bounds.LeftMeters) / (bounds.RightMeters - bounds.LeftMeters))]);
        basis.Append([.. points.Select(p => (p.YMeters - bounds.FrontMeters) / (bounds.RearMeters - bounds.FrontMeters))]);
        return basis;
    }

    internal void Remove(Span<double> heights)
    {
        foreach (double[] column in _columns)
        {
            double amount = 0;
            for (int k = 0; k < column.Length; k++)
            {
                amount += column[k] * heights[k];
            }

            for (int k = 0; k < column.Length; k++)
            {
                heights[k] -= amount * column[k];
            }
        }
    }

    private void Append(double[] column)
    {
        double length = Length(column);
        Remove(column);
        Remove(column);
        double left = Length(column);
        if (left > Dependent * length)
        {
            _columns.Add([.. column.Select(value => value / left)]);
        }
    }

    private static double Length(double[] column) => Math.Sqrt(column.Sum(value => value * value));
}
