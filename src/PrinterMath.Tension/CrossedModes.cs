using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Stiffness and modes of the head on a crossed two-motor drive, whose belts couple x and y when they are not equally stiff.</summary>
/// <remarks>
/// Belt A is stretched by x + y, belt B by x − y: k_xx = k_yy = k_A + k_B, k_xy = k_A − k_B. With masses m_x and m_y
/// ω² = ½·[k_xx·(1/m_x + 1/m_y) ± √(k_xx²·(1/m_x − 1/m_y)² + 4·k_xy²/(m_x·m_y))]. No damping, motors held, the frame rigid. Allocates nothing.
/// Source: kinematics I. Sollmann, M. K. Jouaneh, D. Lavender 2010, IEEE/ASME Trans. Mechatronics 15(2), 280-290; eigenvalues of two coupled oscillators, any textbook of vibration.
/// </remarks>
/// <example><code>
/// Frequency first = CrossedModes.LowerFrequency(beltA, beltB, Mass.FromKilograms(0.4), Mass.FromKilograms(0.9));
/// </code></example>
public static class CrossedModes
{
    /// <summary>k_xx = k_yy = k_A + k_B.</summary>
    /// <param name="beltA">Stiffness k_A of belt A with its motor, greater than zero.</param>
    /// <param name="beltB">Stiffness k_B of belt B with its motor, greater than zero.</param>
    /// <returns>The stiffness.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A stiffness is not positive.</exception>
    public static ForcePerLength Direct(ForcePerLength beltA, ForcePerLength beltB) => ForcePerLength.FromNewtonsPerMeter(
        Guard.Positive(beltA.NewtonsPerMeter, nameof(beltA)) + Guard.Positive(beltB.NewtonsPerMeter, nameof(beltB)));

    /// <summary>k_xy = k_A − k_B: force along y for each length of deflection along x.</summary>
    /// <param name="beltA">Stiffness k_A of belt A with its motor, greater than zero.</param>
    /// <param name="beltB">Stiffness k_B of belt B with its motor, greater than zero.</param>
    /// <returns>The stiffness, of either sign; zero where both belts are alike.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A stiffness is not positive.</exception>
    public static ForcePerLength Coupling(ForcePerLength beltA, ForcePerLength beltB) => ForcePerLength.FromNewtonsPerMeter(
        Guard.Positive(beltA.NewtonsPerMeter, nameof(beltA)) - Guard.Positive(beltB.NewtonsPerMeter, nameof(beltB)));

    /// <summary>Natural frequency of the lower mode.</summary>
    /// <param name="beltA">Stiffness k_A of belt A with its motor, greater than zero.</param>
    /// <param name="beltB">Stiffness k_B of belt B with its motor, greater than zero.</param>
    /// <param name="massX">Mass m_x that moves along x, greater than zero.</param>
    /// <param name="massY">Mass m_y that moves along y, greater than zero.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public static Frequency LowerFrequency(ForcePerLength beltA, ForcePerLength beltB, Mass massX, Mass massY) =>
        Frequency.FromHertz(Checked(beltA, beltB, massX, massY, false));

    /// <summary>Natural frequency of the higher mode.</summary>
    /// <param name="beltA">Stiffness k_A of belt A with its motor, greater than zero.</param>
    /// <param name="beltB">Stiffness k_B of belt B with its motor, greater than zero.</param>
    /// <param name="massX">Mass m_x that moves along x, greater than zero.</param>
    /// <param name="massY">Mass m_y that moves along y, greater than zero.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public static Frequency HigherFrequency(ForcePerLength beltA, ForcePerLength beltB, Mass massX, Mass massY) =>
        Frequency.FromHertz(Checked(beltA, beltB, massX, massY, true));

    /// <summary>The lower root as product over the higher one, ω₁²·ω₂² = 4·k_A·k_B/(m_x·m_y): no cancellation.</summary>
    internal static double Hertz(double a, double b, double x, double y, bool higher)
    {
        double sum = (a + b) * ((1 / x) + (1 / y));
        double difference = (a + b) * ((1 / x) - (1 / y));
        double root = Math.Sqrt((difference * difference) + (4 * (a - b) * (a - b) / (x * y)));
        double high = (sum + root) / 2;
        return Math.Sqrt(higher ? high : 4 * a * b / (x * y * high)) / (2 * Math.PI);
    }

    private static double Checked(ForcePerLength beltA, ForcePerLength beltB, Mass massX, Mass massY, bool higher) => Hertz(
        Guard.Positive(beltA.NewtonsPerMeter, nameof(beltA)),
        Guard.Positive(beltB.NewtonsPerMeter, nameof(beltB)),
        Guard.Positive(massX.Kilograms, nameof(massX)),
        Guard.Positive(massY.Kilograms, nameof(massY)),
        higher);
}
