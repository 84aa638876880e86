using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The tensions that serve: tight enough that the slack side never goes slack, loose enough for belt and bearings.</summary>
/// <remarks>
/// <para>Lower: T₀ ≥ F·(L₁/(L₁ + L₂) + s), L₁ the tight strand, s the share left on the slack side, at the worst place of the head; the handbooks' F/2 is the middle of the
/// travel with s = 0. Upper: the least of belt strength (tight side), shaft load and idler load (vector sums).</para>
/// <para>Recommended: the lower limit plus what makes it certain at 95 %, but never past the middle of the window: friction and bearing load rise with tension, so the least
/// tension that serves is best.</para>
/// <para>Caution: over-tension ruins motor and idler bearings and bends shafts before the belt tears; where a maker states a load, state it here.</para>
/// Source: springs side by side; slack-side share: Tension in timing-belt drives, Machine Design, 7 June 2001.
/// </remarks>
/// <example><code>Verdict&lt;Force&gt; verdict = window.Judge(span.TensionFor(heard));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TensionWindow
{
    private const double OneSided95 = 1.645;
    private readonly BeltSpan _span;
    private readonly double _worstShare;
    private readonly ReadOnlyCollection<Finding> _findings;

    internal TensionWindow(
        BeltSpan span,
        UncertaintyBudget<Force> lower,
        UncertaintyBudget<Force> upper,
        UpperTensionLimit limit,
        string place,
        WorstStrand worst,
        UncertaintyBudget<Force> force,
        IEnumerable<Finding> findings)
    {
        _span = span;
        Lower = lower;
        Upper = upper;
        BindingLimit = limit;
        BindingPlace = place;
        WorstPosition = worst.Head;
        _worstShare = worst.Share;
        LargestForce = force;
        _findings = Array.AsReadOnly(findings.ToArray());
    }

    /// <summary>What was noticed, see <see cref="DriveFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Least tension at rest, with its budget.</summary>
    public UncertaintyBudget<Force> Lower { get; }

    /// <summary>Largest tension at rest, with its budget.</summary>
    public UncertaintyBudget<Force> Upper { get; }

    /// <summary>What forbids more tension.</summary>
    public UpperTensionLimit BindingLimit { get; }

    /// <summary>The part that forbids it.</summary>
    public string BindingPlace { get; }

    /// <summary>Where the head is when the slack side loses most.</summary>
    public HeadPosition WorstPosition { get; }

    /// <summary>Largest force that the belt transmits.</summary>
    public UncertaintyBudget<Force> LargestForce { get; }

    /// <summary>Whether no tension serves.</summary>
    public bool IsEmpty => Lower.Result.SiValue > Upper.Result.SiValue;

    /// <summary>Tension to aim at; its uncertainty is that of the lower limit.</summary>
    /// <exception cref="IndeterminateException">The window is empty.</exception>
    public Measured<Force> Recommended => TryGetRecommended(out Measured<Force> tension) ? tension : throw Empty();

    /// <summary>Frequency of the plucked span at the lower limit.</summary>
    public UncertaintyBudget<Frequency> LowerFrequency => _span.FrequencyAt(Lower.Result);

    /// <summary>Frequency of the plucked span at the upper limit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The upper limit is not positive: the belt force alone is too much for belt or bearings.</exception>
    public UncertaintyBudget<Frequency> UpperFrequency => _span.FrequencyAt(Upper.Result);

    /// <summary>Frequency of the plucked span at the recommended tension.</summary>
    /// <exception cref="IndeterminateException">The window is empty.</exception>
    public UncertaintyBudget<Frequency> RecommendedFrequency => _span.FrequencyAt(Recommended);

    /// <summary>The tension to aim at, if there is one.</summary>
    /// <param name="tension">The tension, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetRecommended(out Measured<Force> tension)
    {
        Measured<Force> lower = Lower.Result;
        double middle = (lower.SiValue + Upper.Result.SiValue) / 2;
        tension = IsEmpty
            ? default
            : Measured<Force>.FromSi(Math.Min(lower.SiValue + (OneSided95 * lower.SiStandardUncertainty), middle), lower.SiStandardUncertainty, lower.DegreesOfFreedom);
        return !IsEmpty;
    }

    /// <summary>Share of the transmitted force that is left on the slack side at a tension, worst place of the head; negative when it goes slack and teeth may jump.</summary>
    /// <param name="tension">Tension at rest, zero or more.</param>
    /// <returns>The ratio T₀/F − L₁/(L₁ + L₂).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The tension is negative.</exception>
    public double SlackSideShareAt(Force tension) =>
        (Guard.NonNegative(tension.Newtons, nameof(tension)) / LargestForce.Result.SiValue) - _worstShare;

    /// <summary>Judges the tension of a span.</summary>
    /// <param name="tension">What was heard.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="IndeterminateException">The window is empty, or the span holds no tension.</exception>
    public Verdict<Force> Judge(SpanTension tension) => Judge(Guard.NotNull(tension).Budget);

    /// <summary>Judges a tension, the verdict naming what to improve.</summary>
    /// <param name="tension">The tension with its budget.</param>
    /// <returns>The verdict. The uncertainty of the nearer limit counts as an input of the budget; the other limit is taken as it stands.</returns>
    /// <exception cref="IndeterminateException">The window is empty.</exception>
    public Verdict<Force> Judge(UncertaintyBudget<Force> tension) =>
        Judge(Guard.NotNull(tension).Result, [.. tension.Lines.Select(line => line.Input)], [.. tension.Lines.Select(line => line.SiSensitivity)]);

    /// <summary>Judges a tension.</summary>
    /// <param name="tension">The tension.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="IndeterminateException">The window is empty.</exception>
    /// <exception cref="InvalidOperationException">The tension was never measured.</exception>
    public Verdict<Force> Judge(Measured<Force> tension) => Judge(tension, [BudgetInput.Of("tension", tension)], [1]);

    /// <summary>Invariant text.</summary>
    /// <returns>Both limits and what binds.</returns>
    public override string ToString() => IsEmpty
        ? $"no tension serves: at least {Lower.Result}, at most {Upper.Result} ({BindingPlace})"
        : $"{Lower.Result} to {Upper.Result} ({BindingPlace}), best {Recommended}";

    private Verdict<Force> Judge(Measured<Force> tension, List<BudgetInput> inputs, List<double> sensitivities)
    {
        if (IsEmpty)
        {
            throw Empty();
        }

        Measured<Force> lower = Lower.Result;
        Measured<Force> upper = Upper.Result;
        bool nearLower = Distance(tension, lower) <= Distance(tension, upper);
        inputs.Add(BudgetInput.Of(nearLower ? "lower limit of the window" : "upper limit of the window", nearLower ? lower : upper));
        sensitivities.Add(-1);
        return Tolerance.Between(lower.Value, upper.Value).Judge(Propagation.FirstOrder<Force>(tension.SiValue, inputs, [.. sensitivities]));
    }

    private IndeterminateException Empty() => new(_findings.First(finding => finding.Code == DriveFindings.EmptyWindow));

    private static double Distance(Measured<Force> tension, Measured<Force> limit)
    {
        double u = Math.Sqrt((tension.SiStandardUncertainty * tension.SiStandardUncertainty) + (limit.SiStandardUncertainty * limit.SiStandardUncertainty));
        double gap = Math.Abs(tension.SiValue - limit.SiValue);
        return u > 0 ? gap / u : gap > 0 ? double.PositiveInfinity : 0;
    }
}
