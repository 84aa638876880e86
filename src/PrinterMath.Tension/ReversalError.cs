using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Reversal of an axis: how much the mean place depends on the side it was reached from.</summary>
/// <remarks>
/// At target i B_i = x̄_i↑ − x̄_i↓, the means of the deviations in either direction; reversal of the axis B = max|B_i|; mean reversal B̄ = ΣB_i/m.
/// u²(B_i) = s↑²/n↑ + s↓²/n↓ + step²/6, the last term for the reading step of two means; where a place was read once from a side, s is pooled from the places read more often, and where there
/// is none a finding says that the scatter is not counted. The largest of several |B_i| is by its choice somewhat too large. Backlash, friction against the belt (twice the lost motion of
/// <see cref="AxisResponse.LostMotion"/>) and twist of the carriage all show up in it.
/// Source: ISO 230-2, definitions of reversal value (from memory); JCGM 100:2008, 4.2.3 and F.2.2.1.
/// </remarks>
/// <example><code>
/// ReversalError reversal = ReversalError.From(readings, readingStep: Length.FromMicrometers(10));
/// Verdict&lt;Length&gt; verdict = reversal.Judge(Length.FromMicrometers(50));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ReversalError
{
    private readonly ReadOnlyCollection<Measured<Length>> _at;
    private readonly ReadOnlyCollection<Finding> _findings;

    private ReversalError(Measured<Length>[] at, Length largestAt, Measured<Length> largest, Measured<Length> mean, params Finding[] findings)
    {
        _at = Array.AsReadOnly(at);
        _findings = Array.AsReadOnly(findings);
        LargestAt = largestAt;
        Largest = largest;
        Mean = mean;
    }

    /// <summary><see cref="DriveFindings.ScatterUnknown"/>, or nothing.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>B_i at each target in the order of the readings; positive where the axis ends higher coming from below.</summary>
    public IReadOnlyList<Measured<Length>> AtTargets => _at;

    /// <summary>The target of the largest reversal.</summary>
    public Length LargestAt { get; }

    /// <summary>B, the largest |B_i|, with the uncertainty of that one.</summary>
    public Measured<Length> Largest { get; }

    /// <summary>B̄, the mean of B_i with their signs.</summary>
    public Measured<Length> Mean { get; }

    /// <summary>Reversal from readings in both directions.</summary>
    /// <param name="readings">At least one target; the standard asks for five targets and five runs each way (from memory).</param>
    /// <param name="readingStep">Smallest step of the indicator or, on printed pieces, of the calliper; greater than zero.</param>
    /// <returns>The reversal.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No readings, or the step is not positive.</exception>
    public static ReversalError From(IReadOnlyList<ReversalReadings> readings, Length readingStep)
    {
        double step = Guard.Positive(readingStep.Meters, nameof(readingStep));
        Guard.AtLeast(Guard.NotNull(readings).Count, 1, nameof(readings));
        PooledScatter pooled = PooledScatter.Of(readings);
        Measured<Length>[] at = [.. readings.Select(place => At(place, step, pooled))];
        int largest = Enumerable.Range(0, at.Length).MaxBy(i => Math.Abs(at[i].SiValue));
        BudgetInput[] inputs = [.. at.Select((b, i) => BudgetInput.Of(FormattableString.Invariant($"target {i + 1}"), b))];
        double[] weights = new double[at.Length];
        Array.Fill(weights, 1.0 / at.Length);
        return new ReversalError(
            at,
            readings[largest].Target,
            Measured<Length>.FromSi(Math.Abs(at[largest].SiValue), at[largest].SiStandardUncertainty, at[largest].DegreesOfFreedom),
            Propagation.FirstOrder<Length>(at.Average(b => b.SiValue), inputs, weights).Result,
            pooled.DegreesOfFreedom > 0 ? [] : [Unrepeated]);
    }

    /// <summary>Judges the largest reversal.</summary>
    /// <param name="limit">Largest allowed, greater than zero.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not positive.</exception>
    public Verdict<Length> Judge(Length limit)
    {
        Guard.Positive(limit.Meters, nameof(limit));
        return Tolerance.AtMost(limit).Judge(Largest);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Largest and mean reversal.</returns>
    public override string ToString() => $"reversal {Largest} at {LargestAt.Millimeters.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture)} mm, mean {Mean}";

    private static Finding Unrepeated => new(
        DriveFindings.ScatterUnknown,
        FindingSeverity.Caution,
        "Every place was read once from each side: the uncertainty counts the step of the indicator alone. Repeat the runs, five each way if you can.");

    private static Measured<Length> At(ReversalReadings place, double step, PooledScatter pooled)
    {
        Measured<Length> below = pooled.Mean(place.FromBelow, step);
        Measured<Length> above = pooled.Mean(place.FromAbove, step);
        return Propagation.FirstOrder<Length>(
            below.SiValue - above.SiValue, [BudgetInput.Of("from below", below), BudgetInput.Of("from above", above)], [1, -1]).Result;
    }
}
