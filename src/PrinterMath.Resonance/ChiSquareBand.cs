using MathNet.Numerics.Distributions;

namespace PrinterMath.Resonance;

/// <summary>Where the truth lies when an estimate scatters as χ² about it.</summary>
internal static class ChiSquareBand
{
    /// <summary>ν/χ²(ν; (1 + p)/2) and ν/χ²(ν; (1 − p)/2).</summary>
    internal static (double Lower, double Upper) Factors(double freedom, double coverage) =>
        (freedom / Quantile(freedom, (1 + coverage) / 2), freedom / Quantile(freedom, (1 - coverage) / 2));

    /// <summary>Quantile of χ² by bisection on its distribution function.</summary>
    private static double Quantile(double freedom, double probability)
    {
        double low = 0;
        double high = freedom + 10;
        while (ChiSquared.CDF(freedom, high) < probability)
        {
            high *= 2;
        }

        while (high - low > 1e-14 * high)
        {
            double middle = (low + high) / 2;
            if (middle == low || middle == high)
            {
                break;
            }

            (low, high) = ChiSquared.CDF(freedom, middle) < probability ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
