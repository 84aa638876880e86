using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>Mean, standard deviation and lag-1 autocorrelation of repeated readings.</summary>
/// <remarks>
/// Computed in two passes about a shifted origin with a correction for rounding, so that readings with a large common offset keep their digits.
/// Source: Chan, Golub, LeVeque 1983, Algorithms for computing the sample variance, The American Statistician 37, equation (1.7).
/// </remarks>
/// <example><code>SampleSummary s = SampleSummary.Of([9.81, 9.79, 9.80]);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SampleSummary
{
    private SampleSummary(int count, double mean, double standardDeviation, double lag1Autocorrelation)
    {
        Count = count;
        Mean = mean;
        StandardDeviation = standardDeviation;
        Lag1Autocorrelation = lag1Autocorrelation;
    }

    /// <summary>Number of readings.</summary>
    public int Count { get; }

    /// <summary>Arithmetic mean, in the unit of the readings.</summary>
    public double Mean { get; }

    /// <summary>Sample standard deviation with n − 1 in the denominator, in the unit of the readings.</summary>
    public double StandardDeviation { get; }

    /// <summary>
    /// Lag-1 autocorrelation r₁ = Σ(xᵢ − m)(xᵢ₊₁ − m)/Σ(xᵢ − m)², a ratio between −1 and 1; zero when all readings are alike.
    /// Far from zero says that the readings drift or alternate and are not independent.
    /// </summary>
    public double Lag1Autocorrelation { get; }

    /// <summary>Summary of readings.</summary>
    /// <param name="readings">At least two finite readings, in any one unit.</param>
    /// <returns>The summary.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two readings, or one is not finite.</exception>
    public static SampleSummary Of(ReadOnlySpan<double> readings)
    {
        Guard.AtLeast(readings.Length, 2, nameof(readings));
        Guard.AllFinite(readings);
        double origin = readings[0];
        double shift = 0;
        foreach (double reading in readings)
        {
            shift += (reading - origin) / readings.Length;
        }

        double squares = 0, correction = 0, products = 0, previous = 0;
        for (int i = 0; i < readings.Length; i++)
        {
            double deviation = readings[i] - origin - shift;
            squares += deviation * deviation;
            correction += deviation;
            products += i > 0 ? deviation * previous : 0;
            previous = deviation;
        }

        int n = readings.Length;
        double mean = origin + (shift + (correction / n));
        double variance = Math.Max(0, (squares - (correction * correction / n)) / (n - 1));
        return new SampleSummary(n, mean, Math.Sqrt(variance), squares > 0 ? products / squares : 0);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Count, mean and standard deviation.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"n = {Count}, mean = {Mean:G6}, s = {StandardDeviation:G3}");
}
