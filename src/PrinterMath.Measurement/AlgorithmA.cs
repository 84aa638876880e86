using MathNet.Numerics.Distributions;

namespace PrinterMath.Measurement;

/// <summary>Robust mean and standard deviation found together: Algorithm A of ISO 13528, Huber's proposal 2.</summary>
/// <remarks>
/// Readings beyond m ± k·s are brought to that limit; m is the mean of the limited readings and s their standard deviation divided by √β, in
/// turn until both rest. β(k) = 2Φ(k) − 1 + k²·2(1 − Φ(k)) − 2kφ(k) is the variance of limited normal readings; for k = 1.5 the standard
/// prints 1/√β as 1.134, where the exact value used here is 1.13339; the difference grows in the search to about 0.2 % of s.
/// Starts from the median and 1.4826 MAD; u(m) = 1.25 s/√n.
/// Source: ISO 13528:2015, Annex C.3, and 9.2 for the uncertainty (clause numbers from memory); Huber 1964, Annals of Mathematical
/// Statistics 35, proposal 2.
/// </remarks>
/// <example><code>RobustLocation consensus = AlgorithmA.Of([24.140, 20.155, 19.500, 20.300, 20.705]);</code></example>
public static class AlgorithmA
{
    private const double StandardTuning = 1.5;

    /// <summary>Efficiency loss assumed by the standard, √(π/2) rounded.</summary>
    private const double UncertaintyFactor = 1.25;

    /// <summary>Robust mean and standard deviation of readings.</summary>
    /// <param name="readings">At least three finite readings, in any one unit and order.</param>
    /// <param name="options">How to find them; null for the defaults.</param>
    /// <returns>The location; when more than half of the readings are alike, a blocking finding.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than three readings, one is not finite, or an option is out of range.</exception>
    public static RobustLocation Of(ReadOnlySpan<double> readings, RobustLocationOptions? options = null)
    {
        LimitedMean search = new(readings, options ?? new RobustLocationOptions(), StandardTuning);
        if (!search.HasSpread)
        {
            return search.WithoutSpread();
        }

        double root = Math.Sqrt(LimitedVariance(search.TuningConstant));
        double center = 0, spread = search.Spread, change = double.PositiveInfinity;
        int steps = 0;
        while (steps < search.MaximumIterations && change > search.Tolerance)
        {
            double nextCenter = search.Mean(center, spread);
            double nextSpread = search.StandardDeviation(center, spread, about: nextCenter) / root;
            change = (Math.Abs(nextCenter - center) + Math.Abs(nextSpread - spread)) / nextSpread;
            (center, spread) = (nextCenter, nextSpread);
            steps++;
        }

        return search.Result(center, spread, UncertaintyFactor * spread / Math.Sqrt(readings.Length), steps, change);
    }

    private static double LimitedVariance(double k)
    {
        double inside = 1 - (2 * Normal.CDF(0, 1, -k));
        return inside + (k * k * (1 - inside)) - (2 * k * Normal.PDF(0, 1, k));
    }
}
