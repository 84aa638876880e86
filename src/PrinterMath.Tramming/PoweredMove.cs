using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>How far to drive one powered screw: the height change it is for (positive raises the bed), and the whole steps nearest to it.</summary>
/// <remarks>Caution: lift the nozzle clear first; motors move without warning; keep fingers out of the gap that closes.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PoweredMove
{
    internal PoweredMove(PoweredScrew screw, Measured<Length> heightChange)
    {
        Screw = screw;
        HeightChange = heightChange;
        Steps = (long)Math.Round(heightChange.SiValue / screw.Grain);
    }

    /// <summary>The screw.</summary>
    public PoweredScrew Screw { get; }

    /// <summary>The screw's name.</summary>
    public string Name => Screw.Name;

    /// <summary>Height change at the screw, positive raises the bed.</summary>
    public Measured<Length> HeightChange { get; }

    /// <summary>The nearest whole number of <see cref="PoweredScrew.Step"/>, positive raises the bed.</summary>
    public long Steps { get; }

    /// <summary>The same in microsteps.</summary>
    public long Microsteps => Steps * (Screw.WholeFullSteps ? Screw.Drive.Microsteps : 1);

    /// <summary>What whole steps leave undone: the height change less the steps, half a step at most; positive where the bed ends too low.</summary>
    public Length Remainder => Length.FromMeters(HeightChange.SiValue - (Steps * Screw.Grain));

    /// <summary>Whether to make the move: it is a step at least, and the height change can be told from none at 95 %.</summary>
    public bool WorthMoving =>
        Steps != 0 && TwoSidedTest.IsSignificant(HeightChange.SiValue, HeightChange.SiStandardUncertainty, HeightChange.DegreesOfFreedom);

    /// <summary>Invariant text.</summary>
    /// <returns>Name, steps and height change.</returns>
    public override string ToString() => FormattableString.Invariant(
        $"{Name}: {Steps:+0;-0;0} {(Screw.WholeFullSteps ? "full steps" : "microsteps")}, {HeightChange}{(WorthMoving ? string.Empty : ", not worth moving")}");
}
