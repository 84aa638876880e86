using System.Numerics;

namespace PrinterMath.SurfaceMesh;

/// <summary>Sums of U(r) = r² ln r = ½ r² ln r² over centres, several places at a time.</summary>
internal static class PlateKernel
{
    /// <summary>Below this r² a place lies on a centre, and U is zero.</summary>
    private const double Nearest = 1e-300;

    internal static double Value(double squared) => squared < Nearest ? 0 : 0.5 * squared * Math.Log(squared);

    /// <summary>Adds Σ cₖ·U to heights. Coordinates, coefficients and heights in any unit; x, y and heights of one length.</summary>
    internal static void Add(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> centresX, ReadOnlySpan<double> centresY, ReadOnlySpan<double> coefficients, Span<double> heights)
    {
        int i = 0, lanes = Vector<double>.Count;
        for (; i + (2 * lanes) <= x.Length; i += 2 * lanes)
        {
            Vector<double> x0 = new(x[i..]), x1 = new(x[(i + lanes)..]), y0 = new(y[i..]), y1 = new(y[(i + lanes)..]);
            Vector<double> sum0 = Vector<double>.Zero, sum1 = Vector<double>.Zero;
            for (int k = 0; k < coefficients.Length; k++)
            {
                Vector<double> cx = new(centresX[k]), cy = new(centresY[k]), c = new(coefficients[k]);
                Vector<double> squared0 = Squared(x0 - cx, y0 - cy), squared1 = Squared(x1 - cx, y1 - cy);
                sum0 = Fused.Add(c * squared0, NaturalLogarithm.Of(squared0), sum0);
                sum1 = Fused.Add(c * squared1, NaturalLogarithm.Of(squared1), sum1);
            }

            (new Vector<double>(heights[i..]) + (sum0 * 0.5)).CopyTo(heights[i..]);
            (new Vector<double>(heights[(i + lanes)..]) + (sum1 * 0.5)).CopyTo(heights[(i + lanes)..]);
        }

        for (; i < x.Length; i++)
        {
            double sum = 0;
            for (int k = 0; k < coefficients.Length; k++)
            {
                double dx = x[i] - centresX[k], dy = y[i] - centresY[k];
                sum += coefficients[k] * Value((dx * dx) + (dy * dy));
            }

            heights[i] += sum;
        }
    }

    private static Vector<double> Squared(Vector<double> dx, Vector<double> dy) => Vector.Max(Fused.Add(dx, dx, dy * dy), new Vector<double>(Nearest));
}
