using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A rectangle of the print surface with its sides along x and y, borders included.</summary>
/// <example><code>
/// SurfaceRectangle bed = SurfaceRectangle.Between(Length.Zero, Length.Zero, Length.FromMillimeters(220), Length.FromMillimeters(220));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SurfaceRectangle
{
    internal SurfaceRectangle(double left, double front, double right, double rear)
    {
        LeftMeters = left;
        FrontMeters = front;
        RightMeters = right;
        RearMeters = rear;
    }

    /// <summary>Smallest x.</summary>
    public Length Left => Length.FromMeters(LeftMeters);

    /// <summary>Smallest y.</summary>
    public Length Front => Length.FromMeters(FrontMeters);

    /// <summary>Largest x.</summary>
    public Length Right => Length.FromMeters(RightMeters);

    /// <summary>Largest y.</summary>
    public Length Rear => Length.FromMeters(RearMeters);

    internal double LeftMeters { get; }

    internal double FrontMeters { get; }

    internal double RightMeters { get; }

    internal double RearMeters { get; }

    /// <summary>A rectangle from two opposite corners.</summary>
    /// <param name="left">Smallest x.</param>
    /// <param name="front">Smallest y.</param>
    /// <param name="right">Largest x, above <paramref name="left"/>.</param>
    /// <param name="rear">Largest y, above <paramref name="front"/>.</param>
    /// <returns>The rectangle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or two of them are not in order.</exception>
    public static SurfaceRectangle Between(Length left, Length front, Length right, Length rear)
    {
        double x = Guard.Finite(left.Meters, nameof(left));
        double y = Guard.Finite(front.Meters, nameof(front));
        return Guard.Finite(right.Meters, nameof(right)) <= x ? throw Guard.Out(nameof(right), right.Meters, "above left, in metres")
            : Guard.Finite(rear.Meters, nameof(rear)) <= y ? throw Guard.Out(nameof(rear), rear.Meters, "above front, in metres")
            : new SurfaceRectangle(x, y, right.Meters, rear.Meters);
    }

    /// <summary>Whether a place lies inside or on the border.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>Whether it does.</returns>
    public bool Contains(Length x, Length y) =>
        x.Meters >= LeftMeters && x.Meters <= RightMeters && y.Meters >= FrontMeters && y.Meters <= RearMeters;

    /// <summary>Invariant text in millimetres.</summary>
    /// <returns>Both ranges.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"x {LeftMeters * 1e3:0.###} to {RightMeters * 1e3:0.###} mm, y {FrontMeters * 1e3:0.###} to {RearMeters * 1e3:0.###} mm");
}
