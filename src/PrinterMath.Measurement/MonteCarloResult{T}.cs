using System.Diagnostics;

namespace PrinterMath.Measurement;

/// <summary>Distribution of a result found by Monte Carlo.</summary>
/// <typeparam name="T">The quantity of the result.</typeparam>
/// <remarks>Source: JCGM 101:2008, 7.5 to 7.7 and clause 8.</remarks>
[DebuggerDisplay("{Result,nq}")]
public sealed class MonteCarloResult<T>
    where T : struct
{
    private readonly double[] _sorted;

    internal MonteCarloResult(double[] trials)
    {
        SampleSummary summary = SampleSummary.Of(trials);
        Result = Measured<T>.FromSi(summary.Mean, summary.StandardDeviation);
        Array.Sort(trials);
        _sorted = trials;
    }

    /// <summary>Mean and standard deviation of the trials: estimate and standard uncertainty of the result.</summary>
    public Measured<T> Result { get; }

    /// <summary>Number of trials.</summary>
    public int Trials => _sorted.Length;

    /// <summary>Quantile of the distribution.</summary>
    /// <param name="probability">Probability below, from 0 to 1.</param>
    /// <returns>The quantile.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The probability is out of range.</exception>
    public T Quantile(double probability) => QuantityUnits<T>.Known.FromSi(QuantileSi(Guard.Between(probability, 0, 1)));

    /// <summary>Interval that leaves the same probability out at either end.</summary>
    /// <param name="coverage">Coverage probability, greater than 0 and less than 1.</param>
    /// <returns>Lower and upper end.</returns>
    /// <remarks>Source: JCGM 101:2008, 7.7.2 and 5.3.3.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The coverage is out of range.</exception>
    public (T Lower, T Upper) SymmetricInterval(double coverage = 0.95)
    {
        double tail = (1 - Guard.StrictlyBetween(coverage, 0, 1)) / 2;
        return (Quantile(tail), Quantile(1 - tail));
    }

    /// <summary>Shortest interval that holds the probability.</summary>
    /// <param name="coverage">Coverage probability, greater than 0 and less than 1.</param>
    /// <returns>Lower and upper end.</returns>
    /// <remarks>Source: JCGM 101:2008, 7.7.4 and 5.3.4.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The coverage is out of range.</exception>
    public (T Lower, T Upper) ShortestInterval(double coverage = 0.95)
    {
        int inside = Math.Min(_sorted.Length - 1, (int)Math.Round(Guard.StrictlyBetween(coverage, 0, 1) * _sorted.Length));
        int best = 0;
        for (int i = 1; i + inside < _sorted.Length; i++)
        {
            best = _sorted[i + inside] - _sorted[i] < _sorted[best + inside] - _sorted[best] ? i : best;
        }

        QuantityUnits<T> units = QuantityUnits<T>.Known;
        return (units.FromSi(_sorted[best]), units.FromSi(_sorted[best + inside]));
    }

    /// <summary>
    /// Whether a first-order result may be used instead: both ends of its 95 % interval agree with the symmetric interval within half a unit of the last of two
    /// digits of the standard uncertainty.
    /// </summary>
    /// <param name="firstOrder">The first-order result.</param>
    /// <returns>Whether the two agree.</returns>
    /// <remarks>
    /// The trials must be many enough for the comparison: a million for two digits. Source: JCGM 101:2008, 8.1 and 7.9.2.
    /// </remarks>
    /// <exception cref="InvalidOperationException">Nothing was measured.</exception>
    public bool Validates(Measured<T> firstOrder)
    {
        double u = firstOrder.SiStandardUncertainty;
        if (u == 0)
        {
            return Result.SiStandardUncertainty == 0;
        }

        double tolerance = 0.5 * Math.Pow(10, Math.Floor(Math.Log10(u)) - 1);
        double k = firstOrder.Interval().CoverageFactor;
        return Math.Abs(firstOrder.SiValue - (k * u) - QuantileSi(0.025)) <= tolerance
            && Math.Abs(firstOrder.SiValue + (k * u) - QuantileSi(0.975)) <= tolerance;
    }

    private double QuantileSi(double probability)
    {
        double position = probability * (_sorted.Length - 1);
        int below = Math.Min((int)position, _sorted.Length - 2);
        return _sorted[below] + ((position - below) * (_sorted[below + 1] - _sorted[below]));
    }
}
