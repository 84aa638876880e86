using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>What is known of a filament drive, for <see cref="FilamentDrive.Of"/>. What is not stated is not checked.</summary>
public sealed record FilamentDriveData
{
    /// <summary>Diameter d of the filament.</summary>
    /// <value>Must be stated, greater than zero.</value>
    public required Measured<Length> FilamentDiameter { get; init; }

    /// <summary>Effective radius r of the driving wheel: feed for each radian of it, which is less than its outside since teeth bite.</summary>
    /// <value>Null: no torque is computed. Greater than zero otherwise; needed where <see cref="MotorTorque"/> is stated.</value>
    public Measured<Length>? EffectiveRadius { get; init; }

    /// <summary>Torque of the motor at the speed in question, before the gear: fall with speed, warming and a margin taken off.</summary>
    /// <value>Null: torque is not checked. Greater than zero otherwise.</value>
    public Measured<Torque>? MotorTorque { get; init; }

    /// <summary>Turns of the motor for each turn of the driving wheel.</summary>
    /// <value>1. Greater than zero.</value>
    public double GearRatio { get; init; } = 1;

    /// <summary>Part of the torque that the gear passes on.</summary>
    /// <value>0.80 to 0.95, as a range (common practice, no source). Greater than zero, at most 1.</value>
    public Measured<double> GearEfficiency { get; init; } = Measured.FromRange(0.80, 0.95);

    /// <summary>Force at which the wheel slips or grinds on this filament.</summary>
    /// <value>Null: grip is not checked. 40 to 80 N on filament of 1.75 mm is often heard (from memory, no source): measure it by pulling.</value>
    public Measured<Force>? Grip { get; init; }

    /// <summary>Free length of filament between wheel and guide.</summary>
    /// <value>Null: buckling is not checked. Greater than zero otherwise, and stated together with <see cref="Modulus"/>.</value>
    public Measured<Length>? FreeLength { get; init; }

    /// <summary>Young's modulus E of the filament, as warm as it is in the drive.</summary>
    /// <value>Null: buckling is not checked. Greater than zero otherwise.</value>
    public Measured<Pressure>? Modulus { get; init; }

    /// <summary>Compressive yield stress of the filament, as warm as it is in the drive.</summary>
    /// <value>Null: yielding is not checked. Greater than zero otherwise.</value>
    public Measured<Pressure>? YieldStress { get; init; }

    /// <summary>Largest force that something else allows, for example the maker of the hot end.</summary>
    /// <value>Null: none. Greater than zero otherwise.</value>
    public Measured<Force>? StatedForce { get; init; }

    /// <summary>Force lost on the way: guide tube, spool, melt that creeps back.</summary>
    /// <value>2 N, 0 to 4 N as a range (common practice, no source). Zero or more.</value>
    public Measured<Force> Friction { get; init; } = Measured.FromRange(Force.Zero, Force.FromNewtons(4));
}
