using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>What to turn on one tensioner: how far in all, how far now, and which way.</summary>
/// <remarks>
/// Caution: power off and move the axes slowly by hand before you reach for a tensioner; a belt stores energy, slacken it before any work on it; over-tension ruins motor bearings,
/// so the upper limit of the <see cref="TensionWindow"/> and the maker's shaft load come first.
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TensionerTurn
{
    internal TensionerTurn(string name, UncertaintyBudget<double> turns, double now)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
        Turns = turns;
        Now = now;
        ExpandedInterval<double> interval = turns.Result.Interval();
        Sense = interval.Contains(0) ? TurnSense.Leave : turns.Result.SiValue > 0 ? TurnSense.Tighten : TurnSense.Slacken;
    }

    /// <summary>Which belt.</summary>
    public string Name { get; }

    /// <summary>Turns to the target, with their budget; positive tightens, negative slackens.</summary>
    public UncertaintyBudget<double> Turns { get; }

    /// <summary>Turns to make before the next reading, of the same sign.</summary>
    public double Now { get; }

    /// <summary>Which way; Leave when at 95 % it is open whether the belt needs a turn at all.</summary>
    public TurnSense Sense { get; }

    /// <summary>Whether more remains to be turned after the next reading.</summary>
    public bool IsBounded => Math.Abs(Now) < Math.Abs(Turns.Result.SiValue);

    /// <summary>Invariant text: one sentence that says what to do.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => Sense == TurnSense.Leave
        ? $"leave {Name}"
        : string.Create(
            CultureInfo.InvariantCulture,
            $"{(Sense == TurnSense.Tighten ? "tighten" : "slacken")} {Name} by {Math.Abs(Now):0.00} turns{(IsBounded ? $" of {Math.Abs(Turns.Result.SiValue):0.00}, then pluck again" : string.Empty)}");
}
