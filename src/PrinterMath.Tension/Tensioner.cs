using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>A tensioning screw and how much tension a turn of it adds, ΔT/turn.</summary>
/// <remarks>
/// <para>From the belt's stiffness: gain = s·EA·P/L, s strands moved (1: a belt end is clamped to the screw; 2: a pulley is moved), P the lead, L the belt's length. Or from two readings
/// before and after a turn, which need no stiffness.</para>
/// <para>Caution: power off first; slacken a belt before any work on it, it stores energy; turn no more than <see cref="LargestAdjustment"/> before the next reading, and never past the
/// upper limit of the <see cref="TensionWindow"/>: over-tension ruins motor bearings.</para>
/// Source: Hooke's law.
/// </remarks>
/// <example><code>
/// Tensioner learned = Tensioner.FromReadings(span, before, after, turns);
/// TensionerTurn turn = learned.TowardFromLast(window.Recommended.Value);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Tensioner
{
    private const int After = 5;
    private readonly TensionerOptions _options;
    private readonly BudgetInput[] _learnedFrom;

    private Tensioner(Measured<Force> gainPerTurn, TensionerOptions? options, params BudgetInput[] learnedFrom)
    {
        GainPerTurn = gainPerTurn;
        _options = (options ?? new TensionerOptions()).Checked();
        _learnedFrom = learnedFrom;
    }

    /// <summary>Change of tension for each full turn in the tightening sense.</summary>
    public Measured<Force> GainPerTurn { get; }

    /// <summary>Largest number of turns to make before the next reading.</summary>
    public double LargestAdjustment => _options.LargestAdjustment;

    /// <summary>A tensioner from the belt's stiffness.</summary>
    /// <param name="lead">Lead P of the screw, greater than zero.</param>
    /// <param name="strands">Strands that it moves: 1 or 2.</param>
    /// <param name="beltLength">Length L of the belt, greater than zero.</param>
    /// <param name="beltWidth">Width of the belt, greater than zero.</param>
    /// <param name="stiffnessPerWidth">EA for each length of width; anywhere from 1.5 to 3 kN/mm when null (glass fibre, 2 or 3 mm pitch; common practice, no source).</param>
    /// <param name="options">How far and how exactly a person turns; null for the defaults.</param>
    /// <returns>The tensioner; the frame is taken to be stiff, so the true gain can only be lower.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static Tensioner FromStiffness(
        Measured<Length> lead, int strands, Measured<Length> beltLength, Length beltWidth, Measured<ForcePerLength>? stiffnessPerWidth = null, TensionerOptions? options = null)
    {
        Guard.Positive(lead.SiValue, nameof(lead));
        Guard.Between(strands, 1, 2);
        Guard.Positive(beltLength.SiValue, nameof(beltLength));
        double width = Guard.Positive(beltWidth.Meters, nameof(beltWidth));
        Measured<ForcePerLength> stiffness = stiffnessPerWidth ?? Measured.FromRange(
            ForcePerLength.FromNewtonsPerMillimeter(1500), ForcePerLength.FromNewtonsPerMillimeter(3000));
        Guard.Positive(stiffness.SiValue, nameof(stiffnessPerWidth));
        return new Tensioner(Propagation.FirstOrder<Force>(
            x => strands * x[0] * width * x[1] / x[2],
            [BudgetInput.Of("belt stiffness per width", stiffness), BudgetInput.Of("screw lead", lead), BudgetInput.Of("belt length", beltLength)]).Result, options);
    }

    /// <summary>A tensioner from two readings of one span: what span length, density and rigidity get wrong is common to both and counts once.</summary>
    /// <param name="span">The plucked span, the head parked at the same place both times.</param>
    /// <param name="before">Frequency before the turn, greater than zero.</param>
    /// <param name="after">Frequency after the turn, greater than zero.</param>
    /// <param name="turns">Turns between the readings, tightening positive, not zero.</param>
    /// <param name="options">How far and how exactly a person turns; null for the defaults.</param>
    /// <returns>The tensioner.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="IndeterminateException">The readings do not show at 95 % that the turn tightened the belt.</exception>
    public static Tensioner FromReadings(BeltSpan span, Measured<Frequency> before, Measured<Frequency> after, Measured<double> turns, TensionerOptions? options = null)
    {
        Guard.NotNull(span);
        Guard.Positive(before.SiValue, nameof(before));
        Guard.Positive(after.SiValue, nameof(after));
        if (turns.SiValue == 0)
        {
            throw Guard.Out(nameof(turns), turns.SiValue, "other than zero");
        }

        BudgetInput[] inputs =
        [
            BudgetInput.Of(SpanInputs.Length, span.Length), BudgetInput.Of(SpanInputs.Density, span.Density),
            BudgetInput.Of(SpanInputs.Rigidity, span.Rigidity), BudgetInput.Of(SpanInputs.Ends, span.Fixity),
            BudgetInput.Of("frequency before", before), BudgetInput.Of("frequency after", after), BudgetInput.Of("turns", turns),
        ];
        Measured<Force> gain = Propagation.FirstOrder<Force>(Learned, inputs).Result;
        return gain.Interval().Lower.Newtons > 0
            ? new Tensioner(gain, options, inputs)
            : throw new IndeterminateException($"A turn changes the tension by {gain}: the readings do not show that it tightens the belt. Turn further, or pluck more often.");
    }

    /// <summary>What to turn: (target − T)/gain in all, bounded for now.</summary>
    /// <param name="target">Tension to end at, greater than zero.</param>
    /// <param name="from">Tension now, greater than zero.</param>
    /// <param name="name">What the person calls the belt; not empty.</param>
    /// <returns>Turns with their budget, sense, and how much of them to make before the next reading.</returns>
    /// <remarks>Reading and gain are taken as independent: where the gain was learned on the same span, <see cref="TowardFromLast"/> counts once what both share.</remarks>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A tension is not positive.</exception>
    public TensionerTurn Toward(Force target, Measured<Force> from, string name = "belt")
    {
        double aim = Guard.Positive(target.Newtons, nameof(target));
        Guard.Positive(from.SiValue, nameof(from));
        UncertaintyBudget<double> turns = Propagation.FirstOrder<double>(
            x => (aim - x[0]) / x[1], [BudgetInput.Of("tension", from), BudgetInput.Of("gain", GainPerTurn)]);
        return Turned(name, turns);
    }

    /// <summary>What to turn, starting from the second of the readings that the gain was learned from: density and length then all but cancel.</summary>
    /// <param name="target">Tension to end at, greater than zero.</param>
    /// <param name="name">What the person calls the belt; not empty.</param>
    /// <returns>As of <see cref="Toward"/>, what gain and reading share counted once.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The tension is not positive.</exception>
    /// <exception cref="InvalidOperationException">The gain was not learned from readings.</exception>
    public TensionerTurn TowardFromLast(Force target, string name = "belt")
    {
        double aim = Guard.Positive(target.Newtons, nameof(target));
        return _learnedFrom.Length == 0
            ? throw new InvalidOperationException("The gain was not learned from readings, so there is no last one.")
            : Turned(name, Propagation.FirstOrder<double>(x => (aim - Newtons(x, After)) / Learned(x), _learnedFrom));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The gain.</returns>
    public override string ToString() => $"{GainPerTurn} per turn";

    private TensionerTurn Turned(string name, UncertaintyBudget<double> turns) =>
        new(name, turns, Math.Clamp(turns.Result.SiValue, -LargestAdjustment, LargestAdjustment));

    /// <summary>(T_after − T_before)/n from the inputs of <see cref="FromReadings"/>.</summary>
    private static double Learned(ReadOnlySpan<double> x) => (Newtons(x, After) - Newtons(x, After - 1)) / x[After + 1];

    private static double Newtons(ReadOnlySpan<double> x, int frequency) => SpanModel.Newtons(x[frequency], x[0], x[1], x[2], x[3], 1);
}
