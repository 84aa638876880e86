using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Slope of the surface at a place: ∂z/∂x and ∂z/∂y, plain ratios of length to length, positive where the height grows with the coordinate.</summary>
/// <remarks>Equality by value; the default is level.</remarks>
/// <param name="AlongX">∂z/∂x, a ratio.</param>
/// <param name="AlongY">∂z/∂y, a ratio.</param>
public readonly record struct SurfaceGradient(double AlongX, double AlongY)
{
    /// <summary>Angle of steepest slope, arctan √(zₓ² + z_y²), zero or more.</summary>
    public Angle Steepest => Angle.FromRadians(Math.Atan(double.Hypot(AlongX, AlongY)));

    /// <summary>Invariant text.</summary>
    /// <returns>Both slopes.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({AlongX:G4}, {AlongY:G4})");
}
