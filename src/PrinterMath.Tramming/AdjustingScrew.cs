using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>A screw that carries the bed at one place and is turned by hand: its name, where it is, its thread, and what turning it clockwise does.</summary>
/// <example><code>
/// ScrewThread m4 = ScrewThread.IsoCoarse("M4");
/// AdjustingScrew screw = AdjustingScrew.At("rear left", x, y, m4, m4.Clockwise(HandPosition.BelowBed, TurnedPart.StaysWithFrame));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class AdjustingScrew : AdjustableSupport
{
    private AdjustingScrew(string name, Length x, Length y, ScrewThread thread, BedMotion clockwise)
        : base(name, x, y)
    {
        Thread = thread;
        Clockwise = clockwise;
    }

    /// <summary>Its thread.</summary>
    public ScrewThread Thread { get; }

    /// <summary>What turning it clockwise, as seen from the hand, does to the bed.</summary>
    public BedMotion Clockwise { get; }

    internal override Measured<Length> TurnLead => Thread.Lead;

    /// <summary>A screw.</summary>
    /// <param name="name">What the person calls it; not empty.</param>
    /// <param name="x">Position along x, in the frame of the probe points.</param>
    /// <param name="y">Position along y, in the frame of the probe points.</param>
    /// <param name="thread">Its thread.</param>
    /// <param name="clockwise">What turning it clockwise, as seen from the hand, does to the bed; see <see cref="ScrewThread.Clockwise"/>.</param>
    /// <returns>The screw.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite, or the motion is not one of its values.</exception>
    public static AdjustingScrew At(string name, Length x, Length y, ScrewThread thread, BedMotion clockwise) =>
        clockwise is BedMotion.Raises or BedMotion.Lowers
            ? new AdjustingScrew(name, x, y, Guard.NotNull(thread), clockwise)
            : throw Guard.Out(nameof(clockwise), clockwise, "Raises or Lowers");
}
