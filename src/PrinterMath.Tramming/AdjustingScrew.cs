using System.Diagnostics;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>A screw that carries the bed at one place: its name, where it is, its thread, and what turning it clockwise does.</summary>
/// <example><code>
/// ScrewThread m4 = ScrewThread.IsoCoarse("M4");
/// AdjustingScrew screw = AdjustingScrew.At("rear left", x, y, m4, m4.Clockwise(HandPosition.BelowBed, TurnedPart.StaysWithFrame));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class AdjustingScrew
{
    private AdjustingScrew(string name, double x, double y, ScrewThread thread, BedMotion clockwise)
    {
        Name = name;
        XMeters = x;
        YMeters = y;
        Thread = thread;
        Clockwise = clockwise;
    }

    /// <summary>What the person calls it.</summary>
    public string Name { get; }

    /// <summary>Position along x.</summary>
    public Length X => Length.FromMeters(XMeters);

    /// <summary>Position along y.</summary>
    public Length Y => Length.FromMeters(YMeters);

    /// <summary>Its thread.</summary>
    public ScrewThread Thread { get; }

    /// <summary>What turning it clockwise, as seen from the hand, does to the bed.</summary>
    public BedMotion Clockwise { get; }

    internal double XMeters { get; }

    internal double YMeters { get; }

    /// <summary>A screw.</summary>
    /// <param name="name">What the person calls it; not empty.</param>
    /// <param name="x">Position along x, in the frame of the probe points.</param>
    /// <param name="y">Position along y, in the frame of the probe points.</param>
    /// <param name="thread">Its thread.</param>
    /// <param name="clockwise">What turning it clockwise, as seen from the hand, does to the bed; see <see cref="ScrewThread.Clockwise"/>.</param>
    /// <returns>The screw.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite, or the motion is not one of its values.</exception>
    public static AdjustingScrew At(string name, Length x, Length y, ScrewThread thread, BedMotion clockwise)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        return clockwise is BedMotion.Raises or BedMotion.Lowers
            ? new AdjustingScrew(name, Guard.Finite(x.Meters, nameof(x)), Guard.Finite(y.Meters, nameof(y)), Guard.NotNull(thread), clockwise)
            : throw Guard.Out(nameof(clockwise), clockwise, "Raises or Lowers");
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Name and place.</returns>
    public override string ToString() => FormattableString.Invariant($"{Name} at ({XMeters * 1e3:0.###}, {YMeters * 1e3:0.###}) mm");
}
