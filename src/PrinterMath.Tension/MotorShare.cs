using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>How one motor takes part in a move: its belt's speed as a ratio of the head's, and the mass that it moves.</summary>
/// <param name="Belt">Which belt, from 0.</param>
/// <param name="SpeedRatio">Belt speed over head speed: |cos φ ± sin φ| of a crossed drive.</param>
/// <param name="X">cos φ, or null for the worst direction.</param>
/// <param name="Y">± sin φ.</param>
/// <param name="IsCrossed">Whether both motors share the movement.</param>
internal sealed record MotorShare(int Belt, double SpeedRatio, double? X, double Y, bool IsCrossed)
{
    internal static IEnumerable<MotorShare> Of(BeltDrive drive, Angle? direction)
    {
        if (!drive.IsCrossed)
        {
            return [new MotorShare(0, 1, 1, 0, false)];
        }

        if (direction is not { } angle)
        {
            return [new MotorShare(0, Math.Sqrt(2), null, 0, true), new MotorShare(1, Math.Sqrt(2), null, 0, true)];
        }

        (double sin, double cos) = Math.SinCos(Guard.Finite(angle.Radians, nameof(direction)));
        return [new MotorShare(0, Math.Abs(cos + sin), cos, sin, true), new MotorShare(1, Math.Abs(cos - sin), cos, -sin, true)];
    }

    /// <summary>Force at the belt per acceleration of the head: |(m_x/2 + J')·cos φ ± (m_y/2 + J')·sin φ|, J' = J/r²; m + J' of a single axis.</summary>
    internal double Mass(ReadOnlySpan<double> x, double rotor) => (IsCrossed, X) switch
    {
        (false, _) => x[0] + rotor,
        (true, null) => DriveForce.CrossedMass(x[0], x[1], rotor),
        (true, { } cos) => Math.Abs((((x[0] / 2) + rotor) * cos) + (((x[1] / 2) + rotor) * Y)),
    };
}
