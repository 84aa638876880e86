using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>What is known of belt and motor as springs. What is not stated is a range that widens every answer.</summary>
public sealed record AxisOptions
{
    /// <summary>Axial stiffness EA of the belt for each length of width.</summary>
    /// <value>Anywhere from 1.5 to 3 kN/mm, if null (glass fibre, 2 or 3 mm pitch; common practice, no source).</value>
    public Measured<ForcePerLength>? StiffnessPerWidth { get; init; }

    /// <summary>Holding torque at the run current, see <see cref="StepperMotor.TorqueAtRunCurrent"/>: it makes the motor a spring in series.</summary>
    /// <value>Anywhere from 0.15 to 0.5 N·m, if null (motor with a 42 mm face; common practice, no source).</value>
    public Measured<Torque>? MotorTorque { get; init; }

    /// <summary>Rotor teeth N_r of the motor.</summary>
    /// <value>50: 1.8° a step.</value>
    public int RotorTeeth { get; init; } = 50;
}
