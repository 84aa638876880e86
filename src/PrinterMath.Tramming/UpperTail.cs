using MathNet.Numerics;

namespace PrinterMath.Tramming;

/// <summary>Probability that F with q and ν degrees of freedom exceeds χ²/q, exact far out in the tail; χ² itself for infinite ν.</summary>
internal static class UpperTail
{
    /// <summary>I_x(ν/2, q/2) with x = ν/(ν + χ²), and Q(q/2, χ²/2): Abramowitz, Stegun 1964, 26.6.2 and 26.4.19 (from memory).</summary>
    internal static double Probability(double square, int freedom, double degreesOfFreedom) => square <= 0
        ? 1
        : double.IsPositiveInfinity(degreesOfFreedom)
            ? SpecialFunctions.GammaUpperRegularized(freedom / 2.0, square / 2)
            : SpecialFunctions.BetaRegularized(degreesOfFreedom / 2, freedom / 2.0, degreesOfFreedom / (degreesOfFreedom + square));
}
