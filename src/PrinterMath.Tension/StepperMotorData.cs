using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>What a data sheet and a driver's setting say of a stepping motor.</summary>
public sealed record StepperMotorData
{
    /// <summary>Holding torque with both phases at the rated current.</summary>
    /// <value>Required, greater than zero. Makers state ±10 % at best (common practice, no source).</value>
    public required Measured<Torque> HoldingTorque { get; init; }

    /// <summary>Current at which the holding torque is rated: the data sheet's amperes per phase, both phases on, are <see cref="WindingCurrent.FromRms"/>.</summary>
    /// <value>Required, greater than zero.</value>
    public required WindingCurrent RatedCurrent { get; init; }

    /// <summary>Current that the driver is set to.</summary>
    /// <value>The rated current, if null.</value>
    public WindingCurrent? RunCurrent { get; init; }

    /// <summary>Resistance R of one phase.</summary>
    /// <value>Required, greater than zero.</value>
    public required Measured<ElectricResistance> Resistance { get; init; }

    /// <summary>Inductance L of one phase.</summary>
    /// <value>Anywhere between 1 and 6 mH, if null (common practice, no source): it decides the torque at speed.</value>
    public Measured<ElectricInductance>? Inductance { get; init; }

    /// <summary>Voltage V of the driver's supply.</summary>
    /// <value>Required, greater than zero.</value>
    public required ElectricPotential SupplyVoltage { get; init; }

    /// <summary>Number N_r of rotor teeth.</summary>
    /// <value>50: 1.8° a step.</value>
    public int RotorTeeth { get; init; } = 50;

    /// <summary>Inertia J of the rotor; the pulley's is the drive's.</summary>
    /// <value>Anywhere between 30 and 90 g·cm², if null (common practice, no source).</value>
    public Measured<MassMomentOfInertia>? RotorInertia { get; init; }

    /// <summary>Friction of the motor's own bearings with what the detent takes on average.</summary>
    /// <value>Anywhere between 2 and 15 mN·m, if null (common practice, no source).</value>
    public Measured<Torque>? FrictionTorque { get; init; }
}
