using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>How stiffly belt and motor hold an axis, and what tension does to its scale.</summary>
/// <remarks>Formulas as at the members; static: no damping, the frame rigid. Source: springs side by side and in series; Hooke's law.</remarks>
/// <example><code>
/// ForcePerLength belt = AxisStiffness.OfStrands(Force.FromKilonewtons(12), Length.FromMeters(0.3), Length.FromMeters(0.9));   // 53 333 N/m
/// </code></example>
public static class AxisStiffness
{
    /// <summary>k = EA·(1/L₁ + 1/L₂), both strands.</summary>
    /// <param name="axialStiffness">Axial stiffness EA of the belt, greater than zero.</param>
    /// <param name="first">Length L₁ of one strand, greater than zero.</param>
    /// <param name="second">Length L₂ of the other, greater than zero.</param>
    /// <returns>The stiffness; least where both strands are equally long.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public static ForcePerLength OfStrands(Force axialStiffness, Length first, Length second) => ForcePerLength.FromNewtonsPerMeter(
        Guard.Positive(axialStiffness.Newtons, nameof(axialStiffness))
        * ((1 / Guard.Positive(first.Meters, nameof(first))) + (1 / Guard.Positive(second.Meters, nameof(second)))));

    /// <summary>k_m = N_r·T/r², the motor's restoring force at the belt for small angles.</summary>
    /// <param name="torque">Holding torque T at the run current, greater than zero.</param>
    /// <param name="pulleyRadius">Pitch radius r, greater than zero.</param>
    /// <param name="rotorTeeth">Rotor teeth N_r, 1 or more; 50 for 1.8° a step.</param>
    /// <returns>The stiffness.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static ForcePerLength OfMotor(Torque torque, Length pulleyRadius, int rotorTeeth = 50)
    {
        double r = Guard.Positive(pulleyRadius.Meters, nameof(pulleyRadius));
        return ForcePerLength.FromNewtonsPerMeter(Guard.AtLeast(rotorTeeth, 1) * Guard.Positive(torque.NewtonMeters, nameof(torque)) / (r * r));
    }

    /// <summary>k₁·k₂/(k₁ + k₂), belt and motor one after the other.</summary>
    /// <param name="first">One stiffness, greater than zero.</param>
    /// <param name="second">The other, greater than zero.</param>
    /// <returns>The stiffness, less than either.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A stiffness is not positive.</exception>
    public static ForcePerLength InSeries(ForcePerLength first, ForcePerLength second) => ForcePerLength.FromNewtonsPerMeter(
        1 / ((1 / Guard.Positive(first.NewtonsPerMeter, nameof(first))) + (1 / Guard.Positive(second.NewtonsPerMeter, nameof(second)))));

    /// <summary>f = √(k/m)/(2π) of a single axis; for a crossed drive see <see cref="CrossedModes"/>.</summary>
    /// <param name="stiffness">Stiffness k, greater than zero.</param>
    /// <param name="mass">Moving mass m, greater than zero.</param>
    /// <returns>The natural frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public static Frequency NaturalFrequency(ForcePerLength stiffness, Mass mass) => Frequency.FromHertz(
        Math.Sqrt(Guard.Positive(stiffness.NewtonsPerMeter, nameof(stiffness)) / Guard.Positive(mass.Kilograms, nameof(mass))) / (2 * Math.PI));

    /// <summary>F/k: static deflection under a force; with the friction as force, the head stops anywhere within ± this of where it should (lost motion).</summary>
    /// <param name="force">Force F, of either sign.</param>
    /// <param name="stiffness">Stiffness k, greater than zero.</param>
    /// <returns>The deflection, of the sign of the force.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The stiffness is not positive.</exception>
    public static Length Deflection(Force force, ForcePerLength stiffness) =>
        Length.FromMeters(Guard.Finite(force.Newtons, nameof(force)) / Guard.Positive(stiffness.NewtonsPerMeter, nameof(stiffness)));

    /// <summary>Full steps times microsteps for each length of travel, N·m/(p·z·(1 + T/EA)): a tight belt has a longer pitch. Check the scale again after each change of tension.</summary>
    /// <param name="stepsPerTurn">Full steps N of one turn, 1 or more.</param>
    /// <param name="microsteps">Microsteps m of a step, 1 or more.</param>
    /// <param name="pitch">Pitch p of the slack belt, greater than zero.</param>
    /// <param name="teeth">Teeth z of the motor pulley, 6 or more.</param>
    /// <param name="tension">Tension T, zero or more.</param>
    /// <param name="axialStiffness">Axial stiffness EA, greater than zero.</param>
    /// <returns>Steps for each metre, as a reciprocal length.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static ReciprocalLength StepsPerLength(int stepsPerTurn, int microsteps, Length pitch, int teeth, Force tension, Force axialStiffness)
    {
        double strain = Guard.NonNegative(tension.Newtons, nameof(tension)) / Guard.Positive(axialStiffness.Newtons, nameof(axialStiffness));
        double turn = Guard.Positive(pitch.Meters, nameof(pitch)) * Guard.AtLeast(teeth, 6) * (1 + strain);
        return ReciprocalLength.FromInverseMeters((double)Guard.AtLeast(stepsPerTurn, 1) * Guard.AtLeast(microsteps, 1) / turn);
    }
}
