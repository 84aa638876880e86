using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class DriveAllocationTests
{
    private static readonly BeltPath Belt = BeltPathTests.Crossed(300, 350, 40, 6, 6).BeltA;

    private static readonly StepperMotor Motor = new(new StepperMotorData
    {
        HoldingTorque = Measured.Exact(Torque.FromNewtonMeters(0.4)),
        RatedCurrent = WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.5)),
        Resistance = Measured.Exact(ElectricResistance.FromOhms(2)),
        SupplyVoltage = ElectricPotential.FromVolts(24),
    });

    [Fact]
    public void A_belt_force_allocates_nothing() => Allocation.None(i => DriveForce.WorstCrossed(
        Mass.FromKilograms(0.1 + (i * 1e-4)), Mass.FromKilograms(0.9), Acceleration.FromMetersPerSecondSquared(10)).Newtons);

    [Fact]
    public void A_hub_load_allocates_nothing() => Allocation.None(i => HubLoad.Of(Force.FromNewtons(1 + i), Force.FromNewtons(20), Angle.FromRadians(3)).Newtons);

    [Fact]
    public void Strands_allocate_nothing() => Allocation.None(i =>
        AxisStiffness.OfStrands(Force.FromNewtons(12_000), Length.FromMeters(0.1 + (i * 1e-4)), Length.FromMeters(0.9)).NewtonsPerMeter);

    [Fact]
    public void A_motor_torque_allocates_nothing() => Allocation.None(i => MotorTorque.Required(
        Force.FromNewtons(i), Acceleration.FromMetersPerSecondSquared(10), MassMomentOfInertia.FromKilogramSquareMeters(6e-6), Length.FromMeters(0.006), Torque.Zero).NewtonMeters);

    [Fact]
    public void The_envelope_allocates_nothing() => Allocation.None(i => Motor.LargestTorqueEstimate(RotationalSpeed.FromRadiansPerSecond(i)).NewtonMeters);

    [Fact]
    public void The_lower_mode_allocates_nothing() => Allocation.None(i => CrossedModes.LowerFrequency(
        ForcePerLength.FromNewtonsPerMeter(1e5 + i), ForcePerLength.FromNewtonsPerMeter(8e4), Mass.FromKilograms(0.4), Mass.FromKilograms(0.9)).Hertz);

    [Fact]
    public void A_belt_path_allocates_nothing() => Allocation.None(i =>
        Belt.SpanLength(0, HeadPosition.FromMillimeters(100 + (i * 0.01), 100)).Meters + Belt.Wrap(0, HeadPosition.FromMillimeters(100 + (i * 0.01), 100)).Radians);
}
