using System.Diagnostics;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>A line about which the bed turns and along which its height cannot be changed.</summary>
/// <remarks>No screw reaches the tilt along the line: a plan says how much of it there is.</remarks>
/// <example><code>BedHinge rear = BedHinge.Between("rear", Length.Zero, depth, width, depth);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class BedHinge : BedSupport
{
    private readonly Place[] _ends;

    private BedHinge(string name, Place first, Place second)
        : base(name) =>
        _ends = [first, second];

    /// <summary>Position of the first end along x.</summary>
    public Length FirstX => Length.FromMeters(_ends[0].X);

    /// <summary>Position of the first end along y.</summary>
    public Length FirstY => Length.FromMeters(_ends[0].Y);

    /// <summary>Position of the second end along x.</summary>
    public Length SecondX => Length.FromMeters(_ends[1].X);

    /// <summary>Position of the second end along y.</summary>
    public Length SecondY => Length.FromMeters(_ends[1].Y);

    internal override ReadOnlySpan<Place> Places => _ends;

    /// <summary>A hinge between two ends.</summary>
    /// <param name="name">What the person calls it; not empty.</param>
    /// <param name="firstX">First end along x, in the frame of the probe points.</param>
    /// <param name="firstY">First end along y.</param>
    /// <param name="secondX">Second end along x; more than 1 mm from the first.</param>
    /// <param name="secondY">Second end along y.</param>
    /// <returns>The hinge.</returns>
    /// <exception cref="ArgumentException">The name is empty, or the ends are one place.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    public static BedHinge Between(string name, Length firstX, Length firstY, Length secondX, Length secondY)
    {
        var first = new Place(Guard.Finite(firstX.Meters, nameof(firstX)), Guard.Finite(firstY.Meters, nameof(firstY)), 1);
        var second = new Place(Guard.Finite(secondX.Meters, nameof(secondX)), Guard.Finite(secondY.Meters, nameof(secondY)), 1);
        return SupportMotion.Distance(first, second) > SupportMotion.SamePlace
            ? new BedHinge(name, first, second)
            : throw Guard.Refused(nameof(secondX), $"The ends of hinge '{name}' lie within 1 mm of each other; a line needs two places.");
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Name and ends.</returns>
    public override string ToString() => FormattableString.Invariant(
        $"{Name}, hinge, from ({_ends[0].X * 1e3:0.###}, {_ends[0].Y * 1e3:0.###}) to ({_ends[1].X * 1e3:0.###}, {_ends[1].Y * 1e3:0.###}) mm");
}
