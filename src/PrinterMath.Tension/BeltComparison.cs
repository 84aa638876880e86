using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Two belts that share a load, compared: how different they are, whether that is more than the readings can tell, and which to turn.</summary>
/// <remarks>
/// What both readings share (density, rigidity, a ruler's error) cancels in the difference; the comparison knows which inputs are one and the same, so
/// two belts can be told apart far better than the tension of either is known. Differences are first minus second; positive says the first is tighter.
/// Source: JCGM 100:2008, 5.2 and F.1.2.3 (inputs in common).
/// </remarks>
/// <example><code>
/// BeltComparison pair = BeltComparison.Of(
///     new HeardSpan("A", spanA, heardA), new HeardSpan("B", spanB, heardB), new BeltComparisonOptions { LargestRelativeDifference = 0.05 });
/// Console.WriteLine($"{pair.Verdict}; {pair.Turn}");
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class BeltComparison
{
    private BeltComparison(
        SpanTension first,
        SpanTension second,
        UncertaintyBudget<Force> difference,
        UncertaintyBudget<double> relative,
        Measured<Frequency> frequencyDifference,
        Verdict<double>? verdict,
        BeltChange firstChange,
        BeltChange secondChange)
    {
        FirstTension = first;
        SecondTension = second;
        Difference = difference;
        RelativeDifference = relative;
        FrequencyDifference = frequencyDifference;
        Verdict = verdict;
        FirstChange = firstChange;
        SecondChange = secondChange;
    }

    /// <summary>Tension of the first belt.</summary>
    public SpanTension FirstTension { get; }

    /// <summary>Tension of the second belt.</summary>
    public SpanTension SecondTension { get; }

    /// <summary>First minus second tension, with its budget.</summary>
    public UncertaintyBudget<Force> Difference { get; }

    /// <summary>Difference as a ratio of the mean tension, 2(T₁ − T₂)/(T₁ + T₂), with its budget.</summary>
    public UncertaintyBudget<double> RelativeDifference { get; }

    /// <summary>First minus second frequency, as heard: it compares the belts only where the spans are equally long.</summary>
    public Measured<Frequency> FrequencyDifference { get; }

    /// <summary>Within: equal. Outside: different. Undecided: what would decide. Null when no limit was given.</summary>
    public Verdict<double>? Verdict { get; }

    /// <summary>What to do to the first belt.</summary>
    public BeltChange FirstChange { get; }

    /// <summary>What to do to the second belt.</summary>
    public BeltChange SecondChange { get; }

    /// <summary>The belt to turn first: the one that needs the larger change.</summary>
    public BeltChange Turn => Math.Abs(FirstChange.Change.SiValue) >= Math.Abs(SecondChange.Change.SiValue) ? FirstChange : SecondChange;

    /// <summary>Compares two belts.</summary>
    /// <param name="first">One belt, its span and what was heard.</param>
    /// <param name="second">The other.</param>
    /// <param name="options">Limit, target and what the readings share; null for the defaults.</param>
    /// <returns>The comparison.</returns>
    /// <exception cref="ArgumentException">Both have the same name.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    /// <exception cref="IndeterminateException">A frequency is too low for its span's rigidity.</exception>
    public static BeltComparison Of(HeardSpan first, HeardSpan second, BeltComparisonOptions? options = null)
    {
        options ??= new BeltComparisonOptions();
        Guard.NotNull(first);
        if (first.Name == Guard.NotNull(second).Name)
        {
            throw new ArgumentException($"Both belts are called '{first.Name}'.", nameof(second));
        }

        var model = new PairModel(first, second, options);
        SpanTension tensionOfFirst = first.Span.TensionFor(first.Frequency);
        SpanTension tensionOfSecond = second.Span.TensionFor(second.Frequency);
        double target = options.Target is { } force
            ? Guard.Positive(force.Newtons, nameof(options))
            : Math.Max(tensionOfFirst.Value.SiValue, tensionOfSecond.Value.SiValue);

        UncertaintyBudget<Force> difference = model.Propagate<Force>((t1, t2) => t1 - t2);
        UncertaintyBudget<double> relative = model.Propagate<double>((t1, t2) => 2 * (t1 - t2) / (t1 + t2));
        return new BeltComparison(
            tensionOfFirst,
            tensionOfSecond,
            difference,
            relative,
            Subtract(first.Frequency, second.Frequency),
            options.EqualityLimit?.Judge(relative),
            Change(first, tensionOfFirst, tensionOfSecond, options.Target, target, difference),
            Change(second, tensionOfSecond, tensionOfFirst, options.Target, target, difference));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Relative difference and what to turn.</returns>
    public override string ToString() => $"difference {RelativeDifference.Result.ToString("S %", CultureInfo.InvariantCulture)}; {Turn}";

    /// <summary>To a stated target the reading's own uncertainty counts; to the other belt only that of the difference does.</summary>
    private static BeltChange Change(
        HeardSpan belt, SpanTension own, SpanTension other, Force? stated, double target, UncertaintyBudget<Force> difference)
    {
        double change = target - own.Value.SiValue;
        double u = stated is not null
            ? own.Value.SiStandardUncertainty
            : own.Value.SiValue >= other.Value.SiValue ? 0 : difference.Result.SiStandardUncertainty;
        double degreesOfFreedom = stated is not null ? own.Value.DegreesOfFreedom : difference.Result.DegreesOfFreedom;
        Measured<Frequency> frequency = stated is { } force
            ? belt.Span.FrequencyAt(Measured.Exact(force)).Result
            : FrequencyLike(belt, own, target, difference);
        return new BeltChange(belt.Name, Measured<Force>.FromSi(change, u, degreesOfFreedom), frequency);
    }

    /// <summary>f at which this belt equals the other: near the reading f scales with √T, and only the difference is uncertain.</summary>
    private static Measured<Frequency> FrequencyLike(HeardSpan belt, SpanTension own, double target, UncertaintyBudget<Force> difference)
    {
        double heard = belt.Frequency.SiValue;
        double frequency = heard * Math.Sqrt(target / own.Value.SiValue);
        double u = heard / (2 * own.Value.SiValue) * difference.Result.SiStandardUncertainty;
        return Measured<Frequency>.FromSi(frequency, u, difference.Result.DegreesOfFreedom);
    }

    private static Measured<Frequency> Subtract(Measured<Frequency> first, Measured<Frequency> second) =>
        Propagation.FirstOrder<Frequency>(
            first.SiValue - second.SiValue, [BudgetInput.Of("first", first), BudgetInput.Of("second", second)], [1, -1]).Result;
}
