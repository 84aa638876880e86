using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>How to turn one screw: the height change it is for (positive raises the bed), how far, and which way as seen from the hand.</summary>
/// <remarks>
/// <para>n = (|Δh| + b)/P turns, P the lead and b the play that the turn first takes up, with u²(n) = (u(Δh)/P)² + (u(b)/P)² + (n·u(P)/P)².</para>
/// <para>Caution: never turn a screw while the nozzle touches the bed; a hot bed burns; keep fingers out of the gap that closes.</para>
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ScrewTurn
{
    private readonly double _degreesOfFreedom;
    private readonly double _smallestTurns;

    internal ScrewTurn(AdjustingScrew screw, Measured<Length> heightChange, double smallestTurns)
        : this(screw, heightChange, smallestTurns, Measured.Exact(Length.Zero))
    {
    }

    internal ScrewTurn(AdjustingScrew screw, Measured<Length> heightChange, double smallestTurns, Measured<Length> playTakenUp)
    {
        Screw = screw;
        HeightChange = heightChange;
        PlayTakenUp = playTakenUp;
        _smallestTurns = smallestTurns;
        double lead = screw.Thread.Lead.SiValue;
        double turns = (Math.Abs(heightChange.SiValue) + playTakenUp.SiValue) / lead;
        double fromHeight = Math.Sqrt(Math.Pow(heightChange.SiStandardUncertainty, 2) + Math.Pow(playTakenUp.SiStandardUncertainty, 2)) / lead;
        double fromLead = turns * screw.Thread.Lead.SiStandardUncertainty / lead;
        _degreesOfFreedom = Effective(fromHeight, heightChange.DegreesOfFreedom, fromLead, screw.Thread.Lead.DegreesOfFreedom);
        Turns = Measured<double>.FromSi(turns, Math.Sqrt((fromHeight * fromHeight) + (fromLead * fromLead)), _degreesOfFreedom);
    }

    /// <summary>The screw.</summary>
    public AdjustingScrew Screw { get; }

    /// <summary>The screw's name.</summary>
    public string Name => Screw.Name;

    /// <summary>Height change at the screw, positive raises the bed; exactly zero for a screw that is kept still.</summary>
    /// <remarks>Its uncertainty holds the error of the fitted plane at this screw and at the reference together: they are correlated.</remarks>
    public Measured<Length> HeightChange { get; }

    /// <summary>Play b that the turn takes up before the bed moves: zero and exact where none is known, or where the screw stands at that flank already.</summary>
    /// <remarks>In a plan of one pass always zero: see <see cref="TrammingSequenceOptions.Play"/>.</remarks>
    public Measured<Length> PlayTakenUp { get; }

    /// <summary>Full turns in the direction of <see cref="Sense"/>, a ratio, zero or more.</summary>
    public Measured<double> Turns { get; }

    /// <summary>The same as an angle, 2π times <see cref="Turns"/>.</summary>
    public Measured<Angle> Rotation =>
        Measured<Angle>.FromSi(2 * Math.PI * Turns.SiValue, 2 * Math.PI * Turns.SiStandardUncertainty, _degreesOfFreedom);

    /// <summary>Which way to turn, as seen from the hand; <see cref="TurnSense.None"/> when the change is exactly zero.</summary>
    public TurnSense Sense => HeightChange.SiValue == 0
        ? TurnSense.None
        : (HeightChange.SiValue > 0) == (Screw.Clockwise == BedMotion.Raises) ? TurnSense.Clockwise : TurnSense.Counterclockwise;

    /// <summary>
    /// Whether to make the turn: the height change can be told from none at 95 %, and the turn is not smaller than
    /// <see cref="TrammingOptions.SmallestUsefulTurn"/>. When false, leave the screw as it is.
    /// </summary>
    public bool WorthTurning =>
        Turns.SiValue > 0
        && Turns.SiValue >= _smallestTurns
        && TwoSidedTest.IsSignificant(HeightChange.SiValue, HeightChange.SiStandardUncertainty, HeightChange.DegreesOfFreedom);

    /// <summary>Invariant text.</summary>
    /// <returns>Name, turns and sense.</returns>
    public override string ToString() => Sense == TurnSense.None
        ? $"{Name}: leave"
        : FormattableString.Invariant($"{Name}: {Turns} turns {(Sense == TurnSense.Clockwise ? "clockwise" : "counterclockwise")}, {HeightChange}{(PlayTakenUp.SiValue > 0 ? $" after {PlayTakenUp} of play" : string.Empty)}{(WorthTurning ? string.Empty : ", not worth turning")}");

    /// <summary>JCGM 100:2008, equation (G.2b).</summary>
    private static double Effective(double u1, double dof1, double u2, double dof2)
    {
        double variance = (u1 * u1) + (u2 * u2);
        double sum = (u1 * u1 * u1 * u1 / dof1) + (u2 * u2 * u2 * u2 / dof2);
        return sum > 0 ? Math.Max(1, variance * variance / sum) : double.PositiveInfinity;
    }
}
