using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Force that a motor's belt must transmit to accelerate the moving parts.</summary>
/// <remarks>
/// Crossed drive, by virtual work with a = x + y, b = x − y: F_A = (m_x·a_x + m_y·a_y)/2, F_B = (m_x·a_x − m_y·a_y)/2; m_x moves along x, m_y along y (the beam with all that
/// it carries). Friction is added to the magnitude.
/// Source: I. Sollmann, M. K. Jouaneh, D. Lavender 2010, IEEE/ASME Trans. Mechatronics 15(2), 280-290 (kinematics); the principle of virtual work.
/// </remarks>
/// <example><code>
/// Force worst = DriveForce.WorstCrossed(Mass.FromKilograms(0.5), Mass.FromKilograms(0.5), Acceleration.FromMetersPerSecondSquared(10));   // 3.54 N
/// </code></example>
public static class DriveForce
{
    /// <summary>F_A = (m_x·a_x + m_y·a_y)/2, without friction; positive pulls the head along +x and +y.</summary>
    /// <param name="massX">Mass m_x that moves along x, greater than zero.</param>
    /// <param name="massY">Mass m_y that moves along y, greater than zero.</param>
    /// <param name="accelerationX">Acceleration a_x, of either sign.</param>
    /// <param name="accelerationY">Acceleration a_y, of either sign.</param>
    /// <returns>The force.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A mass is not positive.</exception>
    public static Force CrossedA(Mass massX, Mass massY, Acceleration accelerationX, Acceleration accelerationY) => Force.FromNewtons(
        ((Guard.Positive(massX.Kilograms, nameof(massX)) * accelerationX.MetersPerSecondSquared)
            + (Guard.Positive(massY.Kilograms, nameof(massY)) * accelerationY.MetersPerSecondSquared)) / 2);

    /// <summary>F_B = (m_x·a_x − m_y·a_y)/2, without friction; positive pulls the head along +x and −y.</summary>
    /// <param name="massX">Mass m_x that moves along x, greater than zero.</param>
    /// <param name="massY">Mass m_y that moves along y, greater than zero.</param>
    /// <param name="accelerationX">Acceleration a_x, of either sign.</param>
    /// <param name="accelerationY">Acceleration a_y, of either sign.</param>
    /// <returns>The force.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A mass is not positive.</exception>
    public static Force CrossedB(Mass massX, Mass massY, Acceleration accelerationX, Acceleration accelerationY) =>
        CrossedA(massX, massY, accelerationX, -accelerationY);

    /// <summary>(a/2)·√(m_x² + m_y²): the largest force on either belt, over all directions of an acceleration.</summary>
    /// <param name="massX">Mass m_x that moves along x, greater than zero.</param>
    /// <param name="massY">Mass m_y that moves along y, greater than zero.</param>
    /// <param name="acceleration">Magnitude a, zero or more.</param>
    /// <returns>The force, without friction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A mass is not positive or the acceleration is negative.</exception>
    public static Force WorstCrossed(Mass massX, Mass massY, Acceleration acceleration) => Force.FromNewtons(
        Guard.NonNegative(acceleration.MetersPerSecondSquared, nameof(acceleration))
        * CrossedMass(Guard.Positive(massX.Kilograms, nameof(massX)), Guard.Positive(massY.Kilograms, nameof(massY)), 0));

    /// <summary>F = m·a + F_friction of an axis with a motor of its own.</summary>
    /// <param name="mass">Moving mass m, greater than zero.</param>
    /// <param name="acceleration">Magnitude a, zero or more.</param>
    /// <param name="friction">Friction, zero or more.</param>
    /// <returns>The force.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive, or acceleration or friction is negative.</exception>
    public static Force Single(Mass mass, Acceleration acceleration, Force friction) => Force.FromNewtons(
        (Guard.Positive(mass.Kilograms, nameof(mass)) * Guard.NonNegative(acceleration.MetersPerSecondSquared, nameof(acceleration)))
        + Guard.NonNegative(friction.Newtons, nameof(friction)));

    /// <summary>Force per acceleration at one motor, worst over direction: √((m_x/2 + J')² + (m_y/2 + J')²), J' = J/r² turning with a_x ± a_y.</summary>
    internal static double CrossedMass(double massX, double massY, double rotor)
    {
        double x = (massX / 2) + rotor;
        double y = (massY / 2) + rotor;
        return Math.Sqrt((x * x) + (y * y));
    }
}
