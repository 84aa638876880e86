using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;

namespace PrinterMath.Extrusion;

/// <summary>Two tests of a series of readings with few assumptions: does it have a slope against x, and is one reading apart from the others.</summary>
/// <remarks>
/// Slope or intercept: t = b/u(b) with n − 2 degrees of freedom. Outlier: G = max|x − mean|/s against (n − 1)/√n·√(t²/(n − 2 + t²)) with t at α/(2n) and n − 2 degrees of
/// freedom. Source: JCGM 100:2008, H.3; Grubbs 1969, Technometrics 11, 1 to 21 (from memory).
/// </remarks>
internal static class TrendTest
{
    /// <summary>Fewest readings from which two degrees of freedom remain.</summary>
    private const int Fewest = 4;

    /// <summary>Slope of y over x, if it is significant.</summary>
    internal static double? Slope(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double significance) => Coefficient(1, x, y, significance);

    /// <summary>Value of y at x = 0, if it differs significantly from zero.</summary>
    internal static double? Intercept(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double significance) => Coefficient(0, x, y, significance);

    /// <summary>Index of the reading that lies apart, if there is one.</summary>
    internal static int? Outlier(ReadOnlySpan<double> readings, double significance)
    {
        if (readings.Length < Fewest)
        {
            return null;
        }

        SampleSummary summary = SampleSummary.Of(readings);
        int farthest = 0, n = readings.Length;
        for (int i = 1; i < n; i++)
        {
            farthest = Math.Abs(readings[i] - summary.Mean) > Math.Abs(readings[farthest] - summary.Mean) ? i : farthest;
        }

        double t = StudentT.InvCDF(0, 1, n - 2, 1 - (significance / (2 * n)));
        double limit = (n - 1) / Math.Sqrt(n) * Math.Sqrt(t * t / (n - 2 + (t * t)));
        return Math.Abs(readings[farthest] - summary.Mean) > limit * summary.StandardDeviation ? farthest : null;
    }

    private static double? Coefficient(int index, ReadOnlySpan<double> x, ReadOnlySpan<double> y, double significance)
    {
        if (y.Length < Fewest)
        {
            return null;
        }

        LinearFit line = LinearLeastSquares.Fit(x, 1, y);
        if (!line.TryGetStandardErrors(out IReadOnlyList<double> errors))
        {
            return null;
        }

        double limit = StudentT.InvCDF(0, 1, y.Length - 2, 1 - (significance / 2));
        double coefficient = line.Coefficients[index];
        return Math.Abs(coefficient) > limit * errors[index] ? coefficient : null;
    }
}
