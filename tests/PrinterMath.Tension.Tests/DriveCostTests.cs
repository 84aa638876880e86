using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>Closed forms allocate nothing and take less than a microsecond.</summary>
public sealed class DriveCostTests
{
    private static readonly BeltPath Belt = BeltPathTests.Crossed(300, 350, 40, 6, 6).BeltA;

    private static readonly StepperMotor Motor = new(new StepperMotorData
    {
        HoldingTorque = Measured.Exact(Torque.FromNewtonMeters(0.4)),
        RatedCurrent = WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.5)),
        Resistance = Measured.Exact(ElectricResistance.FromOhms(2)),
        SupplyVoltage = ElectricPotential.FromVolts(24),
    });

    public static TheoryData<string, Func<double, double>> ClosedForms { get; } = new()
    {
        { "belt force", x => DriveForce.WorstCrossed(Mass.FromKilograms(x), Mass.FromKilograms(0.9), Acceleration.FromMetersPerSecondSquared(10)).Newtons },
        { "hub load", x => HubLoad.Of(Force.FromNewtons(x), Force.FromNewtons(20), Angle.FromRadians(3)).Newtons },
        { "strands", x => AxisStiffness.OfStrands(Force.FromNewtons(12_000), Length.FromMeters(x), Length.FromMeters(0.9)).NewtonsPerMeter },
        { "motor torque", x => MotorTorque.Required(Force.FromNewtons(x), Acceleration.FromMetersPerSecondSquared(10), MassMomentOfInertia.FromKilogramSquareMeters(6e-6), Length.FromMeters(0.006), Torque.Zero).NewtonMeters },
        { "envelope", x => Motor.LargestTorqueEstimate(RotationalSpeed.FromRadiansPerSecond(100 * x)).NewtonMeters },
        { "lower mode", x => CrossedModes.LowerFrequency(ForcePerLength.FromNewtonsPerMeter(1e5 * x), ForcePerLength.FromNewtonsPerMeter(8e4), Mass.FromKilograms(0.4), Mass.FromKilograms(0.9)).Hertz },
        { "span length", x => Belt.SpanLength(0, HeadPosition.FromMillimeters(100 + x, 100)).Meters },
        { "wrap", x => Belt.Wrap(0, HeadPosition.FromMillimeters(100 + x, 100)).Radians },
    };

    [Theory]
    [MemberData(nameof(ClosedForms))]
    public void Closed_forms_allocate_nothing_and_are_quick(string name, Func<double, double> form)
    {
        double sum = Work(form, 1000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        sum += Work(form, 1000);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        // Best of batches: other work on the machine can only lengthen a batch.
        double best = double.PositiveInfinity;
        for (int batch = 0; batch < 200 && best >= 1; batch++)
        {
            long start = Stopwatch.GetTimestamp();
            sum += Work(form, 2000);
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMicroseconds / 2000);
        }

        Assert.True(best < 1 && double.IsFinite(sum), $"{name}: {best:0.000} µs");
    }

    private static double Work(Func<double, double> form, int count)
    {
        double sum = 0;
        for (int i = 0; i < count; i++)
        {
            sum += form(0.1 + (i * 1e-4));
        }

        return sum;
    }
}
