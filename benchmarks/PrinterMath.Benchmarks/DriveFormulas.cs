using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class DriveFormulas
{
    private readonly BeltPath _belt = SingleAxisLayout.From(new SingleAxisDimensions
    {
        CentreDistance = Length.FromMillimeters(400),
        CarriageLength = Length.FromMillimeters(40),
        PulleyRadius = Length.FromMillimeters(6),
        Travel = HeadTravel.Along(Length.FromMillimeters(50), Length.FromMillimeters(350)),
    }).Belt;

    private readonly StepperMotor _motor = new(new StepperMotorData
    {
        HoldingTorque = Measured.Exact(Torque.FromNewtonMeters(0.4)),
        RatedCurrent = WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.5)),
        Resistance = Measured.Exact(ElectricResistance.FromOhms(2)),
        SupplyVoltage = ElectricPotential.FromVolts(24),
    });

    [Params(0.2, 0.3)]
    public double Meters { get; set; }

    [Benchmark]
    public Force BeltForce() => DriveForce.WorstCrossed(Mass.FromKilograms(Meters), Mass.FromKilograms(0.9), Acceleration.FromMetersPerSecondSquared(10));

    [Benchmark]
    public Force Hub() => HubLoad.Of(Force.FromNewtons(20), Force.FromNewtons(20), Angle.FromRadians(10 * Meters));

    [Benchmark]
    public ForcePerLength Strands() => AxisStiffness.OfStrands(Force.FromNewtons(12_000), Length.FromMeters(Meters), Length.FromMeters(0.9));

    [Benchmark]
    public Torque Envelope() => _motor.LargestTorqueEstimate(RotationalSpeed.FromRadiansPerSecond(500 * Meters));

    [Benchmark]
    public Frequency LowerMode() => CrossedModes.LowerFrequency(
        ForcePerLength.FromNewtonsPerMeter(1e5), ForcePerLength.FromNewtonsPerMeter(8e4), Mass.FromKilograms(Meters), Mass.FromKilograms(0.9));

    [Benchmark]
    public Length Span() => _belt.SpanLength(0, HeadPosition.FromMillimeters(1000 * Meters, 0));

    [Benchmark]
    public Angle Wrap() => _belt.Wrap(0, HeadPosition.FromMillimeters(1000 * Meters, 0));
}
