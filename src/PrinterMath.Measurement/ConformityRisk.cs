using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace PrinterMath.Measurement;

/// <summary>Global risks of a measuring process: how often it will accept a bad item or reject a good one, before anything is measured.</summary>
/// <remarks>
/// Items vary normally about a mean; the measurement adds a normal error. All numbers in one unit. Not to be confused with the specific risk of
/// <see cref="Verdict{T}"/>, which speaks of one measured value. Source: JCGM 106:2012, 9.5.2 equation (18) and 9.5.3 equation (20).
/// </remarks>
public static class ConformityRisk
{
    /// <summary>Items farther out than this many standard deviations are left out; their probability is below 1e-30.</summary>
    private const double Reach = 12;

    /// <summary>Consumer's risk: probability that an item is outside the tolerance and yet accepted.</summary>
    /// <param name="mean">Mean of the items.</param>
    /// <param name="itemStandardDeviation">Standard deviation of the items, greater than zero.</param>
    /// <param name="measurementUncertainty">Standard uncertainty of the measurement, greater than zero.</param>
    /// <param name="toleranceLower">Lower tolerance limit.</param>
    /// <param name="toleranceUpper">Upper tolerance limit, above the lower.</param>
    /// <param name="guardBand">How far inside the tolerance a reading must be to be accepted; zero for simple acceptance, negative to accept outside.</param>
    /// <returns>A probability.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or out of range.</exception>
    public static double FalseAcceptance(
        double mean, double itemStandardDeviation, double measurementUncertainty, double toleranceLower, double toleranceUpper, double guardBand = 0)
    {
        Check(mean, itemStandardDeviation, measurementUncertainty, toleranceLower, toleranceUpper, guardBand);
        double Accepted(double item) =>
            Normal.PDF(mean, itemStandardDeviation, item) * AcceptanceProbability(item, measurementUncertainty, toleranceLower + guardBand, toleranceUpper - guardBand);
        return Integrate(Accepted, mean - (Reach * itemStandardDeviation), toleranceLower, itemStandardDeviation, measurementUncertainty)
            + Integrate(Accepted, toleranceUpper, mean + (Reach * itemStandardDeviation), itemStandardDeviation, measurementUncertainty);
    }

    /// <summary>Producer's risk: probability that an item is within the tolerance and yet rejected.</summary>
    /// <param name="mean">Mean of the items.</param>
    /// <param name="itemStandardDeviation">Standard deviation of the items, greater than zero.</param>
    /// <param name="measurementUncertainty">Standard uncertainty of the measurement, greater than zero.</param>
    /// <param name="toleranceLower">Lower tolerance limit.</param>
    /// <param name="toleranceUpper">Upper tolerance limit, above the lower.</param>
    /// <param name="guardBand">How far inside the tolerance a reading must be to be accepted; zero for simple acceptance, negative to accept outside.</param>
    /// <returns>A probability.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or out of range.</exception>
    public static double FalseRejection(
        double mean, double itemStandardDeviation, double measurementUncertainty, double toleranceLower, double toleranceUpper, double guardBand = 0)
    {
        Check(mean, itemStandardDeviation, measurementUncertainty, toleranceLower, toleranceUpper, guardBand);
        double Rejected(double item) =>
            Normal.PDF(mean, itemStandardDeviation, item) * (1 - AcceptanceProbability(item, measurementUncertainty, toleranceLower + guardBand, toleranceUpper - guardBand));
        double from = Math.Max(toleranceLower, mean - (Reach * itemStandardDeviation));
        double to = Math.Min(toleranceUpper, mean + (Reach * itemStandardDeviation));
        return Integrate(Rejected, from, to, itemStandardDeviation, measurementUncertainty);
    }

    private static double AcceptanceProbability(double item, double u, double lower, double upper) =>
        upper > lower ? Normal.CDF(item, u, upper) - Normal.CDF(item, u, lower) : 0;

    private static double Integrate(Func<double, double> density, double from, double to, double s, double u)
    {
        if (to <= from)
        {
            return 0;
        }

        double step = Math.Min(s, u) / 2;
        int panels = (int)Math.Clamp(Math.Ceiling((to - from) / step), 1, 10_000);
        double width = (to - from) / panels;
        double sum = 0;
        for (int i = 0; i < panels; i++)
        {
            sum += GaussLegendreRule.Integrate(density, from + (i * width), from + ((i + 1) * width), 20);
        }

        return sum;
    }

    private static void Check(double mean, double s, double u, double lower, double upper, double guardBand)
    {
        Guard.Finite(mean);
        Guard.Positive(s, "itemStandardDeviation");
        Guard.Positive(u, "measurementUncertainty");
        Guard.Finite(lower, "toleranceLower");
        Guard.Finite(guardBand);
        if (!double.IsFinite(upper) || upper <= lower)
        {
            throw Guard.Out("toleranceUpper", upper, "finite and above toleranceLower");
        }
    }
}
