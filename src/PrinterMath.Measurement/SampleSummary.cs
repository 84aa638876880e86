using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>Mean, standard deviation and lag-1 autocorrelation of repeated readings.</summary>
/// <remarks>
/// Computed in two passes, mean and then deviations from it, with sums in doubled precision, so that readings with a large common offset
/// keep their digits. Source: Chan, Golub, LeVeque 1983, Algorithms for computing the sample variance, The American Statistician 37,
/// the two-pass algorithm. Checked against the certified values of the NIST Statistical Reference Datasets.
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
        int n = readings.Length;
        if (!readings.ContainsAnyExcept(readings[0]))
        {
            return new SampleSummary(n, readings[0], 0, 0);
        }

        int exponent = Exponent(readings);
        DoubleDouble sum = 0;
        foreach (double reading in readings)
        {
            sum += Math.ScaleB(reading, -exponent);
        }

        DoubleDouble mean = sum / n;
        DoubleDouble squares = 0, products = 0, previous = 0;
        foreach (double reading in readings)
        {
            DoubleDouble deviation = Math.ScaleB(reading, -exponent) - mean;
            squares += deviation * deviation;
            products += deviation * previous;
            previous = deviation;
        }

        return new SampleSummary(
            n,
            Math.ScaleB((double)mean, exponent),
            Math.ScaleB(Math.Sqrt((double)squares / (n - 1)), exponent),
            (double)(products / squares));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Count, mean and standard deviation.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"n = {Count}, mean = {Mean:G6}, s = {StandardDeviation:G3}");

    /// <summary>Binary exponent of the largest reading; scaling by it keeps every square within range.</summary>
    private static int Exponent(ReadOnlySpan<double> readings)
    {
        double largest = 0;
        foreach (double reading in readings)
        {
            largest = Math.Max(largest, Math.Abs(reading));
        }

        return Math.ILogB(largest);
    }
}
