using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Torque that a motor must give to move its belt, τ = r·F + J·a_belt/r + τ_friction.</summary>
/// <remarks>
/// On a crossed drive a_belt = a_x + a_y at motor A and a_x − a_y at motor B: up to √2·a on a diagonal, while the other motor stands still. Rotor inertia is not small: J/r² of a common
/// motor is 0.1 to 0.2 kg seen at the belt. Source: Newton's second law for pulley and rotor. Allocates nothing.
/// </remarks>
/// <example><code>
/// Torque needed = MotorTorque.Required(force, acceleration, MassMomentOfInertia.FromKilogramSquareMeters(6e-6), Length.FromMillimeters(6.37), friction);
/// </code></example>
public static class MotorTorque
{
    /// <summary>The torque τ.</summary>
    /// <param name="beltForce">Force F that the belt transmits, see <see cref="DriveForce"/>; of the sign of the movement when driving, of the other when braking.</param>
    /// <param name="beltAcceleration">Acceleration a_belt of the belt at the pulley, of either sign.</param>
    /// <param name="inertia">Inertia J of rotor and pulley together, zero or more.</param>
    /// <param name="pulleyRadius">Pitch radius r, greater than zero.</param>
    /// <param name="friction">Friction torque of the motor itself, zero or more.</param>
    /// <returns>The torque.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static Torque Required(Force beltForce, Acceleration beltAcceleration, MassMomentOfInertia inertia, Length pulleyRadius, Torque friction)
    {
        double r = Guard.Positive(pulleyRadius.Meters, nameof(pulleyRadius));
        return Torque.FromNewtonMeters(
            (r * Guard.Finite(beltForce.Newtons, nameof(beltForce)))
            + (Guard.NonNegative(inertia.KilogramSquareMeters, nameof(inertia)) * Guard.Finite(beltAcceleration.MetersPerSecondSquared, nameof(beltAcceleration)) / r)
            + Guard.NonNegative(friction.NewtonMeters, nameof(friction)));
    }

    /// <summary>J/r², the moving mass that an inertia looks like from the belt.</summary>
    /// <param name="inertia">Inertia J, zero or more.</param>
    /// <param name="pulleyRadius">Pitch radius r, greater than zero.</param>
    /// <returns>The mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static Mass MassAtBelt(MassMomentOfInertia inertia, Length pulleyRadius)
    {
        double r = Guard.Positive(pulleyRadius.Meters, nameof(pulleyRadius));
        return Mass.FromKilograms(Guard.NonNegative(inertia.KilogramSquareMeters, nameof(inertia)) / (r * r));
    }
}
