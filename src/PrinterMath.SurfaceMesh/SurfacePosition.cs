using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A place of the nozzle above the print surface: x and y.</summary>
/// <remarks>Equality by value; the default is the origin.</remarks>
/// <example><code>SurfacePosition from = SurfacePosition.At(Length.FromMillimeters(20), Length.FromMillimeters(35));</code></example>
public readonly record struct SurfacePosition
{
    private SurfacePosition(double x, double y)
    {
        XMeters = x;
        YMeters = y;
    }

    /// <summary>Position along x.</summary>
    public Length X => Length.FromMeters(XMeters);

    /// <summary>Position along y.</summary>
    public Length Y => Length.FromMeters(YMeters);

    /// <summary>Position along x in metres.</summary>
    public double XMeters { get; }

    /// <summary>Position along y in metres.</summary>
    public double YMeters { get; }

    /// <summary>A place.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is not finite.</exception>
    public static SurfacePosition At(Length x, Length y) => FromMeters(x.Meters, y.Meters);

    /// <summary>A place from numbers in metres.</summary>
    /// <param name="x">Position along x in metres.</param>
    /// <param name="y">Position along y in metres.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is not finite.</exception>
    public static SurfacePosition FromMeters(double x, double y) => new(Guard.Finite(x), Guard.Finite(y));

    /// <summary>Invariant text in millimetres.</summary>
    /// <returns>Both coordinates.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({XMeters * 1e3:0.###}, {YMeters * 1e3:0.###}) mm");
}
