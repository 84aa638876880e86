using System.Diagnostics;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>A place at which the bed is held at a height that cannot be changed, free to tilt about it.</summary>
/// <example><code>FixedSupport post = FixedSupport.At("front left", x, y);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FixedSupport : BedSupport
{
    private readonly Place[] _place;

    private FixedSupport(string name, double x, double y)
        : base(name) =>
        _place = [new Place(x, y, 1)];

    /// <summary>Position along x.</summary>
    public Length X => Length.FromMeters(_place[0].X);

    /// <summary>Position along y.</summary>
    public Length Y => Length.FromMeters(_place[0].Y);

    internal override ReadOnlySpan<Place> Places => _place;

    /// <summary>A fixed support.</summary>
    /// <param name="name">What the person calls it; not empty.</param>
    /// <param name="x">Position along x, in the frame of the probe points.</param>
    /// <param name="y">Position along y, in the frame of the probe points.</param>
    /// <returns>The support.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    public static FixedSupport At(string name, Length x, Length y) =>
        new(name, Guard.Finite(x.Meters, nameof(x)), Guard.Finite(y.Meters, nameof(y)));

    /// <summary>Invariant text.</summary>
    /// <returns>Name and place.</returns>
    public override string ToString() => FormattableString.Invariant($"{Name}, fixed, at ({_place[0].X * 1e3:0.###}, {_place[0].Y * 1e3:0.###}) mm");
}
