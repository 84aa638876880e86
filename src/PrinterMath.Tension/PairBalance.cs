using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>How two belts stand, what to turn on both so that they end at one tension, and what will remain.</summary>
/// <remarks>
/// n = G⁻¹·(target − T). Where a turn would pass the bound, both are shortened alike, so that the belts approach the target together. The remainder counts the readings, the gains and how
/// exactly a person turns.
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PairBalance
{
    private PairBalance(
        BeltComparison comparison,
        Verdict<double> verdict,
        TensionerTurn turnA,
        TensionerTurn turnB,
        UncertaintyBudget<Force> remainderA,
        UncertaintyBudget<Force> remainderB,
        UncertaintyBudget<double> difference,
        Verdict<double> predicted)
    {
        Comparison = comparison;
        Verdict = verdict;
        TurnA = turnA;
        TurnB = turnB;
        RemainderA = remainderA;
        RemainderB = remainderB;
        PredictedDifference = difference;
        PredictedVerdict = predicted;
    }

    /// <summary>The belts as they are.</summary>
    public BeltComparison Comparison { get; }

    /// <summary>Whether they are equal now.</summary>
    public Verdict<double> Verdict { get; }

    /// <summary>The same as a word.</summary>
    public BeltEquality Equality => Verdict.Conclusion switch
    {
        Conclusion.Within => BeltEquality.Equal,
        Conclusion.Outside => BeltEquality.Different,
        _ => BeltEquality.PluckAgain,
    };

    /// <summary>What to turn on belt A's tensioner.</summary>
    public TensionerTurn TurnA { get; }

    /// <summary>What to turn on belt B's tensioner.</summary>
    public TensionerTurn TurnB { get; }

    /// <summary>Tension of belt A minus target after the turns to make now.</summary>
    public UncertaintyBudget<Force> RemainderA { get; }

    /// <summary>Tension of belt B minus target after the turns to make now.</summary>
    public UncertaintyBudget<Force> RemainderB { get; }

    /// <summary>Difference after the turns to make now, 2(T_A − T_B)/(T_A + T_B), a ratio.</summary>
    public UncertaintyBudget<double> PredictedDifference { get; }

    /// <summary>Whether they will be equal after those turns.</summary>
    public Verdict<double> PredictedVerdict { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>How they stand and what to turn.</returns>
    public override string ToString() => $"{Equality}: {TurnA}; {TurnB}";

    internal static PairBalance Of(
        PairGains gains, Measured<Frequency> heardA, Measured<Frequency> heardB, Force target, double largestRelativeDifference, bool nowIsLast)
    {
        double aim = Guard.Positive(target.Newtons, nameof(target));
        Tolerance<double> equal = Tolerance.Around(0.0, Guard.StrictlyBetween(largestRelativeDifference, 0, 1));
        BeltComparison comparison = BeltComparison.Of(gains.HeardA(heardA), gains.HeardB(heardB), new BeltComparisonOptions { Target = target });
        PairModel model = gains.Model(heardA, heardB);
        UncertaintyBudget<double> turnsA = gains.Propagate<double>(model, nowIsLast, (t, g) => g.Solve(aim - t.A, aim - t.B).A);
        UncertaintyBudget<double> turnsB = gains.Propagate<double>(model, nowIsLast, (t, g) => g.Solve(aim - t.A, aim - t.B).B);
        double most = Math.Max(Math.Abs(turnsA.Result.SiValue), Math.Abs(turnsB.Result.SiValue));
        double share = most > gains.Options.LargestAdjustment ? gains.Options.LargestAdjustment / most : 1;
        double nowA = share * turnsA.Result.SiValue;
        double nowB = share * turnsB.Result.SiValue;
        UncertaintyBudget<double> difference = gains.AfterTurns<double>(model, nowIsLast, nowA, nowB, (a, b) => 2 * (a - b) / (a + b));
        return new PairBalance(
            comparison,
            equal.Judge(comparison.RelativeDifference),
            new TensionerTurn("belt A", turnsA, nowA),
            new TensionerTurn("belt B", turnsB, nowB),
            gains.AfterTurns<Force>(model, nowIsLast, nowA, nowB, (a, _) => a - aim),
            gains.AfterTurns<Force>(model, nowIsLast, nowA, nowB, (_, b) => b - aim),
            difference,
            equal.Judge(difference));
    }
}
