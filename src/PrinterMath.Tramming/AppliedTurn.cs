using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>What a hand did to one screw between two passes: how many turns, and which way as seen from the hand.</summary>
/// <example><code>AppliedTurn turn = AppliedTurn.Clockwise("rear left", Angle.FromDegrees(90));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class AppliedTurn
{
    private AppliedTurn(string screw, double clockwiseTurns)
    {
        Screw = screw;
        ClockwiseTurns = clockwiseTurns;
    }

    /// <summary>Name of the screw.</summary>
    public string Screw { get; }

    /// <summary>Turns, positive clockwise as seen from the hand, a ratio.</summary>
    public double ClockwiseTurns { get; }

    /// <summary>The sense of the turn.</summary>
    public TurnSense Sense => ClockwiseTurns == 0 ? TurnSense.None : ClockwiseTurns > 0 ? TurnSense.Clockwise : TurnSense.Counterclockwise;

    /// <summary>A turn clockwise.</summary>
    /// <param name="screw">Name of the screw; not empty.</param>
    /// <param name="rotation">How far, zero or more.</param>
    /// <returns>The turn.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rotation is negative or not finite.</exception>
    public static AppliedTurn Clockwise(string screw, Angle rotation)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(screw);
        return new AppliedTurn(screw, Guard.NonNegative(rotation.Revolutions, nameof(rotation)));
    }

    /// <summary>A turn counterclockwise.</summary>
    /// <param name="screw">Name of the screw; not empty.</param>
    /// <param name="rotation">How far, zero or more.</param>
    /// <returns>The turn.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rotation is negative or not finite.</exception>
    public static AppliedTurn Counterclockwise(string screw, Angle rotation)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(screw);
        return new AppliedTurn(screw, -Guard.NonNegative(rotation.Revolutions, nameof(rotation)));
    }

    /// <summary>A planned turn that was made as planned.</summary>
    /// <param name="turn">The planned turn.</param>
    /// <returns>The turn.</returns>
    /// <exception cref="ArgumentNullException">No turn.</exception>
    public static AppliedTurn AsPlanned(ScrewTurn turn) => new(
        Guard.NotNull(turn).Name,
        turn.Sense == TurnSense.None ? 0 : turn.Turns.SiValue * (turn.Sense == TurnSense.Clockwise ? 1 : -1));

    /// <summary>Invariant text.</summary>
    /// <returns>Name, degrees and sense.</returns>
    public override string ToString() => Sense == TurnSense.None
        ? $"{Screw}: not turned"
        : string.Create(CultureInfo.InvariantCulture, $"{Screw}: {Math.Abs(ClockwiseTurns) * 360:0.#}° {(Sense == TurnSense.Clockwise ? "clockwise" : "counterclockwise")}");
}
