using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The tensions that serve: tight enough that the slack side never goes slack, loose enough for belt and bearings.</summary>
/// <remarks>
/// <para>Lower: T₀ ≥ F·(L₁/(L₁ + L₂) + s), L₁ the tight strand, s the share left on the slack side, at the worst place of the head; the handbooks' F/2 is the middle of the
/// travel with s = 0. Upper: the least of belt strength (tight side), shaft load and idler load (vector sums).</para>
/// <para>Recommended: the lower limit plus what makes it certain at 95 %, but never past the middle of the window: friction and bearing load rise with tension, so the least
/// tension that serves is best; see <see cref="BeltDrive.BestTension"/> for the tension of the largest acceleration. F includes the friction that the tension itself causes.</para>
/// <para>Caution: over-tension ruins motor and idler bearings and bends shafts before the belt tears; where a maker states a load, state it here.</para>
/// Source: springs side by side; slack-side share: Tension in timing-belt drives, Machine Design, 7 June 2001.
/// </remarks>
/// <example><code>Verdict&lt;Force&gt; verdict = window.Judge(span.TensionFor(heard));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TensionWindow
{
    private const double OneSided95 = 1.645;

    /// <summary>A limit further away than this many combined standard uncertainties is passed with a probability below 3e-7.</summary>
    private const double FarAway = 5;
    private readonly BeltSpan _span;
    private readonly Func<double, double> _slackShare;
    private readonly ReadOnlyCollection<Finding> _findings;

    internal TensionWindow(
        BeltSpan span,
        UncertaintyBudget<Force> lower,
        WindowSolver.Limit binding,
        WindowSolver.Limit closest,
        WorstStrand worst,
        UncertaintyBudget<Force> force,
        Func<double, double> slackShare,
        IEnumerable<Finding> findings)
    {
        _span = span;
        Lower = lower;
        Upper = binding.Upper;
        BindingLimit = binding.Kind;
        BindingPlace = binding.Place;
        Room = closest.Room;
        Opening = closest.Opening;
        WorstPosition = worst.Head;
        LargestForce = force;
        _slackShare = slackShare;
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

    /// <summary>Largest force that the belt transmits, without the friction that tension causes.</summary>
    public UncertaintyBudget<Force> LargestForce { get; }

    /// <summary>Upper minus lower limit with its budget, in which the loads that move both count once; of several upper limits the one most likely to leave no room.</summary>
    public UncertaintyBudget<Force> Room { get; }

    /// <summary>Within: some tension serves. Outside: none does. Undecided: the limits are not known well enough, and what would decide.</summary>
    public Verdict<Force> Opening { get; }

    /// <summary>Whether no tension serves, at 95 %; see <see cref="Opening"/>.</summary>
    public bool IsEmpty => Opening.Conclusion == Conclusion.Outside;

    /// <summary>Tension to aim at; its uncertainty is that of the lower limit.</summary>
    /// <exception cref="IndeterminateException">The window is empty, or the estimates leave no room.</exception>
    public Measured<Force> Recommended => TryGetRecommended(out Measured<Force> tension) ? tension : throw NoRoom();

    /// <summary>Frequency of the plucked span at the lower limit.</summary>
    /// <exception cref="IndeterminateException">The limit is not positive, so nothing sounds.</exception>
    public UncertaintyBudget<Frequency> LowerFrequency => FrequencyAt(Lower.Result);

    /// <summary>Frequency of the plucked span at the upper limit.</summary>
    /// <exception cref="IndeterminateException">The limit is not positive, see <see cref="DriveFindings.Overloaded"/>.</exception>
    public UncertaintyBudget<Frequency> UpperFrequency => FrequencyAt(Upper.Result);

    /// <summary>Frequency of the plucked span at the recommended tension.</summary>
    /// <exception cref="IndeterminateException">There is no recommended tension.</exception>
    public UncertaintyBudget<Frequency> RecommendedFrequency => FrequencyAt(Recommended);

    /// <summary>Frequency of the plucked span at the upper limit, if the limit is positive.</summary>
    /// <param name="frequency">The frequency, or null.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetUpperFrequency([NotNullWhen(true)] out UncertaintyBudget<Frequency>? frequency)
    {
        frequency = Sounds(Upper.Result) ? _span.FrequencyAt(Upper.Result) : null;
        return frequency is not null;
    }

    /// <summary>The tension to aim at, if there is one.</summary>
    /// <param name="tension">The tension, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetRecommended(out Measured<Force> tension)
    {
        Measured<Force> lower = Lower.Result;
        double middle = (lower.SiValue + Upper.Result.SiValue) / 2;
        tension = HasRoom
            ? Measured<Force>.FromSi(Math.Min(lower.SiValue + (OneSided95 * lower.SiStandardUncertainty), middle), lower.SiStandardUncertainty, lower.DegreesOfFreedom)
            : default;
        return HasRoom;
    }

    /// <summary>Share of the transmitted force that is left on the slack side at a tension, worst place of the head; negative when it goes slack and teeth may jump.</summary>
    /// <param name="tension">Tension at rest, greater than zero.</param>
    /// <returns>The ratio T₀/(F + κ·T₀) − L₁/(L₁ + L₂).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The tension is not positive.</exception>
    public double SlackSideShareAt(Force tension) => _slackShare(Guard.Positive(tension.Newtons, nameof(tension)));

    /// <summary>Judges the tension of a span.</summary>
    /// <param name="tension">What was heard.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="IndeterminateException">The window is empty, its estimates leave no room, or the span holds no tension.</exception>
    public Verdict<Force> Judge(SpanTension tension) => Judge(Guard.NotNull(tension).Budget);

    /// <summary>Judges a tension, the verdict naming what to improve.</summary>
    /// <param name="tension">The tension with its budget.</param>
    /// <returns>The verdict.</returns>
    /// <remarks>
    /// The uncertainty of the limit counts as an input of the budget. With both limits near, that is the larger of the two, which is on the safe side of either.
    /// Correlated lines of the budget handed in are kept together and stand as one.
    /// </remarks>
    /// <exception cref="IndeterminateException">The window is empty, or its estimates leave no room.</exception>
    public Verdict<Force> Judge(UncertaintyBudget<Force> tension)
    {
        (List<BudgetInput> inputs, List<double> sensitivities) = KeptCorrelations.Of(Guard.NotNull(tension));
        return Judge(tension.Result, inputs, sensitivities);
    }

    /// <summary>Judges a tension.</summary>
    /// <param name="tension">The tension.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="IndeterminateException">The window is empty, or its estimates leave no room.</exception>
    /// <exception cref="InvalidOperationException">The tension was never measured.</exception>
    public Verdict<Force> Judge(Measured<Force> tension) => Judge(tension, [BudgetInput.Of("tension", tension)], [1]);

    /// <summary>Invariant text.</summary>
    /// <returns>Both limits and what binds.</returns>
    public override string ToString() => HasRoom
        ? $"{Lower.Result} to {Upper.Result} ({BindingPlace}), best {Recommended}"
        : $"no tension serves: at least {Lower.Result}, at most {Upper.Result} ({BindingPlace})";

    private bool HasRoom => !IsEmpty && Upper.Result.SiValue > Lower.Result.SiValue;

    private Verdict<Force> Judge(Measured<Force> tension, List<BudgetInput> inputs, List<double> sensitivities)
    {
        if (!HasRoom)
        {
            throw NoRoom();
        }

        Measured<Force> lower = Lower.Result;
        Measured<Force> upper = Upper.Result;
        double toLower = Distance(tension, lower);
        double toUpper = Distance(tension, upper);
        bool bothNear = Math.Max(toLower, toUpper) < FarAway;
        bool countLower = bothNear ? lower.SiStandardUncertainty >= upper.SiStandardUncertainty : toLower <= toUpper;
        inputs.Add(BudgetInput.Of(countLower ? "lower limit of the window" : "upper limit of the window", countLower ? lower : upper));
        sensitivities.Add(-1);
        return Tolerance.Between(lower.Value, upper.Value).Judge(Propagation.FirstOrder<Force>(tension.SiValue, inputs, [.. sensitivities]));
    }

    private UncertaintyBudget<Frequency> FrequencyAt(Measured<Force> tension) => Sounds(tension)
        ? _span.FrequencyAt(tension)
        : throw (_findings.FirstOrDefault(finding => finding.Code == DriveFindings.Overloaded) is { } finding
            ? new IndeterminateException(finding)
            : new IndeterminateException($"The limit is {tension}; a span sounds only under tension."));

    /// <summary>Sensitivities are found by steps of 0.2 u, which must not reach zero.</summary>
    private static bool Sounds(Measured<Force> tension) => tension.SiValue > tension.SiStandardUncertainty / 4;

    private IndeterminateException NoRoom() =>
        new(_findings.First(finding => finding.Code is DriveFindings.EmptyWindow or DriveFindings.UndecidedWindow));

    private static double Distance(Measured<Force> tension, Measured<Force> limit)
    {
        double u = Math.Sqrt((tension.SiStandardUncertainty * tension.SiStandardUncertainty) + (limit.SiStandardUncertainty * limit.SiStandardUncertainty));
        double gap = Math.Abs(tension.SiValue - limit.SiValue);
        return u > 0 ? gap / u : gap > 0 ? double.PositiveInfinity : 0;
    }
}
