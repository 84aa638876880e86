using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>One round piece of the way of the melt: a cylinder (barrel, capillary) or a taper.</summary>
/// <example><code>MeltPassage land = MeltPassage.Cylinder("land", Measured.Of(Length.FromMillimeters(0.4), Length.FromMillimeters(0.01)), Measured.Exact(Length.FromMillimeters(0.8)));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MeltPassage
{
    private MeltPassage(string name, Measured<Length> inlet, Measured<Length> outlet, Measured<Length> length)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
        Inlet = inlet;
        Outlet = outlet;
        Length = length;
    }

    /// <summary>What it is, unique along a path.</summary>
    public string Name { get; }

    /// <summary>Diameter where the melt enters.</summary>
    public Measured<Length> Inlet { get; }

    /// <summary>Diameter where it leaves; that of the inlet for a cylinder.</summary>
    public Measured<Length> Outlet { get; }

    /// <summary>Length along the axis.</summary>
    public Measured<Length> Length { get; }

    /// <summary>Whether the diameter changes.</summary>
    public bool IsTaper => Inlet.SiValue != Outlet.SiValue;

    /// <summary>Angle between axis and wall, zero for a cylinder.</summary>
    public Angle HalfAngle => Angle.FromRadians(Math.Atan2(Math.Abs(Inlet.SiValue - Outlet.SiValue) / 2, Length.SiValue));

    /// <summary>A piece of constant diameter.</summary>
    /// <param name="name">What it is; not empty.</param>
    /// <param name="diameter">Diameter, greater than zero.</param>
    /// <param name="length">Length, greater than zero.</param>
    /// <returns>The piece.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A length is not positive.</exception>
    /// <exception cref="InvalidOperationException">A length was never measured.</exception>
    public static MeltPassage Cylinder(string name, Measured<Length> diameter, Measured<Length> length)
    {
        Guard.Positive(diameter.SiValue, nameof(diameter));
        Guard.Positive(length.SiValue, nameof(length));
        return new MeltPassage(name, diameter, diameter, length);
    }

    /// <summary>A piece whose diameter changes linearly.</summary>
    /// <param name="name">What it is; not empty.</param>
    /// <param name="inlet">Diameter where the melt enters, greater than zero.</param>
    /// <param name="outlet">Diameter where it leaves, greater than zero and another than at the inlet.</param>
    /// <param name="length">Length along the axis, greater than zero.</param>
    /// <returns>The piece.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A length is not positive, or both diameters are the same.</exception>
    /// <exception cref="InvalidOperationException">A length was never measured.</exception>
    public static MeltPassage Taper(string name, Measured<Length> inlet, Measured<Length> outlet, Measured<Length> length)
    {
        double wide = Guard.Positive(inlet.SiValue, nameof(inlet));
        double narrow = Guard.Positive(outlet.SiValue, nameof(outlet));
        Guard.Positive(length.SiValue, nameof(length));
        return Math.Abs(wide - narrow) > 1e-6 * wide
            ? new MeltPassage(name, inlet, outlet, length)
            : throw Guard.Out(nameof(outlet), outlet, "another diameter than at the inlet; use a cylinder");
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Name and dimensions.</returns>
    public override string ToString() => IsTaper
        ? string.Create(CultureInfo.InvariantCulture, $"{Name}: taper {Inlet.SiValue * 1e3:G4} to {Outlet.SiValue * 1e3:G4} mm, {Length.SiValue * 1e3:G4} mm long")
        : string.Create(CultureInfo.InvariantCulture, $"{Name}: {Inlet.SiValue * 1e3:G4} mm, {Length.SiValue * 1e3:G4} mm long");
}
