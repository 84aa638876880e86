using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>A place in the plane of the belts: x to the right, y to the rear, as seen from above, in metres.</summary>
/// <remarks>Equality by value; the default is the origin. Which point is the origin is the caller's choice, the same for pulleys and head.</remarks>
/// <example><code>HeadPosition middle = HeadPosition.FromMillimeters(150, 120);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public readonly record struct HeadPosition
{
    internal HeadPosition(double x, double y) => (MetersX, MetersY) = (x, y);

    /// <summary>Distance to the right, x.</summary>
    public Length X => Length.FromMeters(MetersX);

    /// <summary>Distance to the rear, y.</summary>
    public Length Y => Length.FromMeters(MetersY);

    internal double MetersX { get; }

    internal double MetersY { get; }

    /// <summary>A place from its coordinates.</summary>
    /// <param name="x">To the right.</param>
    /// <param name="y">To the rear.</param>
    /// <returns>The place.</returns>
    public static HeadPosition Of(Length x, Length y) => new(x.Meters, y.Meters);

    /// <summary>A place from millimetres.</summary>
    /// <param name="x">To the right, finite.</param>
    /// <param name="y">To the rear, finite.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is not finite.</exception>
    public static HeadPosition FromMillimeters(double x, double y) => new(Guard.Finite(x) / 1000, Guard.Finite(y) / 1000);

    /// <summary>Invariant text in millimetres.</summary>
    /// <returns>Both coordinates.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({MetersX * 1000:0.#}, {MetersY * 1000:0.#}) mm");
}
