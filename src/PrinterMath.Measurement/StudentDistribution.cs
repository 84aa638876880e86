using MathNet.Numerics.Distributions;

namespace PrinterMath.Measurement;

/// <summary>Student's t with real degrees of freedom, the normal distribution in the limit.</summary>
internal static class StudentDistribution
{
    /// <summary>k with P(|t| ≤ k) = coverage; ν is truncated to an integer as JCGM 100:2008 G.4.1 says.</summary>
    internal static double CoverageFactor(double coverage, double degreesOfFreedom) =>
        Quantile((1 + Guard.StrictlyBetween(coverage, 0, 1)) / 2, Math.Floor(degreesOfFreedom));

    internal static double Quantile(double probability, double degreesOfFreedom) =>
        IsNormal(degreesOfFreedom)
            ? Normal.InvCDF(0, 1, probability)
            : StudentT.InvCDF(0, 1, degreesOfFreedom, probability);

    internal static double Cumulative(double t, double degreesOfFreedom) =>
        IsNormal(degreesOfFreedom)
            ? Normal.CDF(0, 1, t)
            : StudentT.CDF(0, 1, degreesOfFreedom, t);

    /// <summary>Beyond a million degrees of freedom the quantiles differ by less than a part in a million.</summary>
    private static bool IsNormal(double degreesOfFreedom) => degreesOfFreedom > 1e6;
}
