using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The tensioners of two belts that share a load: turning one changes both, ΔT = G·Δn with a 2 × 2 matrix G.</summary>
/// <remarks>
/// <para>Learned from readings: planes through the tensions of both belts over the turns of both screws, at least three readings, the two screws not turned alike. What length, density and
/// rigidity get wrong is common to all readings and counts once.</para>
/// <para>Caution: as for <see cref="TensionerTurn"/>.</para>
/// Source: Hooke's law; least squares; JCGM 100:2008, 5.2 and F.1.2.3 (inputs in common).
/// </remarks>
/// <example><code>
/// TensionerPair pair = TensionerPair.FromReadings(spanA, spanB, [start, afterA, afterB]);
/// PairBalance balance = pair.BalanceFromLast(window.Recommended.Value);
/// Console.WriteLine($"{balance.TurnA}; {balance.TurnB}");
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TensionerPair
{
    /// <summary>Condition number √((1 + r)/(1 − r)) = 10 of the two columns of turns: the screws' gains are then ten times less certain apart than together.</summary>
    private const double LargestLikeness = 0.98;
    private const double LargestResidual = 3.5;
    private readonly PairGains _gains;
    private readonly JointEstimate? _matrix;
    private readonly ReadOnlyCollection<Finding> _findings;

    private TensionerPair(PairGains gains, JointEstimate? matrix, params Finding[] findings)
    {
        _gains = gains;
        _matrix = matrix;
        _findings = Array.AsReadOnly(findings);
    }

    /// <summary>What was noticed, see <see cref="DriveFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Whether the gains are known well enough to turn by.</summary>
    public bool IsDetermined => _matrix is not null;

    /// <summary>Gains in newtons a turn, in the order AA, AB, BA, BB, with their covariance; AB is what tensioner B does to belt A.</summary>
    /// <exception cref="IndeterminateException">The readings do not determine them.</exception>
    public JointEstimate Gains => _matrix ?? throw new IndeterminateException(_findings[0]);

    /// <summary>Learns the gains from readings at three or more settings.</summary>
    /// <param name="spanA">The plucked span of belt A, the head parked at the same place each time.</param>
    /// <param name="spanB">The plucked span of belt B.</param>
    /// <param name="readings">At least three; turns count from the first.</param>
    /// <param name="options">How far and how exactly a person turns; null for the defaults.</param>
    /// <returns>The pair; when the readings do not determine it, its findings say why.</returns>
    /// <exception cref="ArgumentException">Fewer than three readings.</exception>
    public static TensionerPair FromReadings(BeltSpan spanA, BeltSpan spanB, IReadOnlyList<PairReading> readings, TensionerOptions? options = null)
    {
        Guard.NotNull(spanA);
        Guard.NotNull(spanB);
        if (Guard.NotNull(readings).Count < 3)
        {
            throw Guard.Refused(nameof(readings), string.Create(CultureInfo.InvariantCulture, $"There are {readings.Count} readings; four gains and two tensions need at least 3."));
        }

        foreach (PairReading reading in readings)
        {
            Guard.NotNull(reading, nameof(readings));
        }

        var gains = new PairGains(spanA, spanB, readings, (options ?? new TensionerOptions()).Checked());
        double likeness = gains.Likeness;
        if (likeness > LargestLikeness)
        {
            return new TensionerPair(gains, null, new Finding(
                DriveFindings.PoorlyDetermined,
                FindingSeverity.Blocking,
                "Both screws were turned alike, or one not at all: turn each by itself and read both belts each time.",
                new FindingNumber("likeness", likeness, "1"),
                new FindingNumber("largestLikeness", LargestLikeness, "1")));
        }

        PairModel model = gains.Model(readings[^1].FrequencyA, readings[^1].FrequencyB);
        Measured<Force> a = gains.Propagate<Force>(model, true, (_, g) => g.AA).Result;
        Measured<Force> b = gains.Propagate<Force>(model, true, (_, g) => g.BB).Result;
        double determinant = gains.Propagate<double>(model, true, (_, g) => g.Determinant).Result.Interval().Lower;
        if (a.Interval().Lower.Newtons <= 0 || b.Interval().Lower.Newtons <= 0 || determinant <= 0)
        {
            return new TensionerPair(gains, null, new Finding(
                DriveFindings.NoGain,
                FindingSeverity.Blocking,
                $"A turn changes belt A by {a} and belt B by {b}: the readings do not show that each screw tightens its own belt. Turn further, or pluck more often.",
                new FindingNumber("gainA", a.SiValue, "N"),
                new FindingNumber("gainB", b.SiValue, "N")));
        }

        double residual = gains.LargestResidual(model);
        JointEstimate matrix = gains.Joint(model);
        return residual <= LargestResidual
            ? new TensionerPair(gains, matrix)
            : new TensionerPair(gains, matrix, new Finding(
                DriveFindings.ReadingsDisagree,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"A reading lies {residual:0.#} of its standard uncertainties away from the others: a belt settles, a screw slips, or a pluck was misheard."),
                new FindingNumber("largestResidual", residual, "1")));
    }

    /// <summary>Two tensioners that do not act on each other's belt.</summary>
    /// <param name="spanA">The plucked span of belt A.</param>
    /// <param name="spanB">The plucked span of belt B.</param>
    /// <param name="tensionerA">The tensioner of belt A.</param>
    /// <param name="tensionerB">The tensioner of belt B.</param>
    /// <param name="options">How far and how exactly a person turns; null for the defaults.</param>
    /// <returns>The pair.</returns>
    public static TensionerPair Uncoupled(BeltSpan spanA, BeltSpan spanB, Tensioner tensionerA, Tensioner tensionerB, TensionerOptions? options = null)
    {
        var gains = new PairGains(
            Guard.NotNull(spanA), Guard.NotNull(spanB), Guard.NotNull(tensionerA).GainPerTurn, Guard.NotNull(tensionerB).GainPerTurn, (options ?? new TensionerOptions()).Checked());
        Measured<Frequency> any = Measured.Exact(Frequency.FromHertz(100));
        return new TensionerPair(gains, gains.Joint(gains.Model(any, any)));
    }

    /// <summary>What to turn on both so that both belts end at a target.</summary>
    /// <param name="heardA">Frequency of belt A now, greater than zero; a new reading, none of those the gains were learned from.</param>
    /// <param name="heardB">Frequency of belt B now, greater than zero.</param>
    /// <param name="target">Tension to end at, greater than zero.</param>
    /// <param name="largestRelativeDifference">Largest difference that counts as equal, as a ratio of the mean; greater than 0 and less than 1.</param>
    /// <returns>The turns and what will remain.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="IndeterminateException">The gains are not determined, or a span holds no tension.</exception>
    public PairBalance Balance(Measured<Frequency> heardA, Measured<Frequency> heardB, Force target, double largestRelativeDifference = 0.05) =>
        IsDetermined ? PairBalance.Of(_gains, heardA, heardB, target, largestRelativeDifference, false) : throw new IndeterminateException(_findings[0]);

    /// <summary>What to turn, starting from the last of the readings that the gains were learned from.</summary>
    /// <param name="target">Tension to end at, greater than zero.</param>
    /// <param name="largestRelativeDifference">Largest difference that counts as equal, as a ratio of the mean; greater than 0 and less than 1.</param>
    /// <returns>The turns and what will remain.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="InvalidOperationException">The gains were not learned from readings.</exception>
    /// <exception cref="IndeterminateException">The gains are not determined, or a span holds no tension.</exception>
    public PairBalance BalanceFromLast(Force target, double largestRelativeDifference = 0.05)
    {
        PairReading last = _gains.Last ?? throw new InvalidOperationException("The gains were not learned from readings, so there is no last one.");
        return IsDetermined
            ? PairBalance.Of(_gains, last.FrequencyA, last.FrequencyB, target, largestRelativeDifference, true)
            : throw new IndeterminateException(_findings[0]);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The gains, or the finding that stands in their place.</returns>
    public override string ToString() => _matrix?.ToString() ?? _findings[0].ToString();
}
