using MathNet.Numerics.Distributions;

namespace PrinterMath.Tramming;

/// <summary>Tests of significance, by Student's t or, with infinite degrees of freedom, by the normal distribution.</summary>
internal static class TwoSidedTest
{
    internal const double Risk = 0.05;

    internal static double ProbabilityBeyond(double t, double degreesOfFreedom) =>
        2 * (double.IsPositiveInfinity(degreesOfFreedom)
            ? Normal.CDF(0, 1, -Math.Abs(t))
            : StudentT.CDF(0, 1, degreesOfFreedom, -Math.Abs(t)));

    internal static bool IsSignificant(double value, double standardUncertainty, double degreesOfFreedom) =>
        Math.Abs(value) > standardUncertainty && ProbabilityBeyond(value / standardUncertainty, degreesOfFreedom) < Risk;

    /// <summary>Quantile of F with 2 and ν degrees of freedom, in closed form: (ν/2)(q^(−2/ν) − 1) with q = 1 − p; −ln q for infinite ν.</summary>
    internal static double FisherQuantile2(double risk, double degreesOfFreedom) =>
        double.IsPositiveInfinity(degreesOfFreedom)
            ? -Math.Log(risk)
            : degreesOfFreedom / 2 * (Math.Pow(risk, -2 / degreesOfFreedom) - 1);
}
