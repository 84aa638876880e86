using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>An acceleration in the sensor's own axes.</summary>
/// <remarks>
/// Equality by value of the components in m/s²; the default is zero. At rest a sensor shows the reaction to gravity, so the mean points up.
/// </remarks>
/// <param name="XMetersPerSecondSquared">Component along the sensor's x, m/s².</param>
/// <param name="YMetersPerSecondSquared">Component along the sensor's y, m/s².</param>
/// <param name="ZMetersPerSecondSquared">Component along the sensor's z, m/s².</param>
public readonly record struct AccelerationVector(double XMetersPerSecondSquared, double YMetersPerSecondSquared, double ZMetersPerSecondSquared)
{
    /// <summary>Component along the sensor's x.</summary>
    public Acceleration X => Acceleration.FromMetersPerSecondSquared(XMetersPerSecondSquared);

    /// <summary>Component along the sensor's y.</summary>
    public Acceleration Y => Acceleration.FromMetersPerSecondSquared(YMetersPerSecondSquared);

    /// <summary>Component along the sensor's z.</summary>
    public Acceleration Z => Acceleration.FromMetersPerSecondSquared(ZMetersPerSecondSquared);

    /// <summary>Length of the vector.</summary>
    public Acceleration Magnitude => Acceleration.FromMetersPerSecondSquared(MetersPerSecondSquared);

    internal double MetersPerSecondSquared => Math.Sqrt(
        (XMetersPerSecondSquared * XMetersPerSecondSquared) + (YMetersPerSecondSquared * YMetersPerSecondSquared) + (ZMetersPerSecondSquared * ZMetersPerSecondSquared));

    /// <summary>Angle between this vector and one of the sensor's axes, from 0 to 180°.</summary>
    /// <param name="axis">0 for x, 1 for y, 2 for z.</param>
    /// <returns>The angle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such axis.</exception>
    /// <exception cref="InvalidOperationException">The vector has no length, so no direction.</exception>
    public Angle AngleTo(int axis)
    {
        double component = axis switch
        {
            0 => XMetersPerSecondSquared,
            1 => YMetersPerSecondSquared,
            2 => ZMetersPerSecondSquared,
            _ => throw Guard.Out(nameof(axis), axis, "0, 1 or 2"),
        };
        double length = MetersPerSecondSquared;
        return length > 0
            ? Angle.FromRadians(Math.Acos(Math.Clamp(component / length, -1, 1)))
            : throw new InvalidOperationException("A vector without length has no direction.");
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The three components.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"({XMetersPerSecondSquared:G4}, {YMetersPerSecondSquared:G4}, {ZMetersPerSecondSquared:G4}) m/s²");
}
