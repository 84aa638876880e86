using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class AxisResponseTests
{
    private static readonly AxisOptions Known = new()
    {
        StiffnessPerWidth = Measured.Exact(ForcePerLength.FromNewtonsPerMillimeter(2000)),
        MotorTorque = Measured.Exact(Torque.FromNewtonMeters(0.4)),
    };

    private static readonly BeltDriveOptions Masses = new()
    {
        MassX = Measured.Exact(Mass.FromKilograms(0.5)),
        MassY = Measured.Exact(Mass.FromKilograms(0.9)),
        Friction = Measured.Exact(Force.FromNewtons(2)),
    };

    // Strands at x = 200: 180 and 778.849556 − 180 = 598.849556 mm; EA 12 kN: 86 705.1 N/m. Motor 50·0.4/0.006² = 555 555.6 N/m. In series 74999.9 N/m.
    [Fact]
    public void Single_axis_by_hand()
    {
        BeltDrive drive = BeltDrive.SingleAxis(
            SingleAxisLayout.From(new SingleAxisDimensions
            {
                CentreDistance = Length.FromMillimeters(400),
                CarriageLength = Length.FromMillimeters(40),
                PulleyRadius = Length.FromMillimeters(6),
                Travel = HeadTravel.Along(Length.FromMillimeters(50), Length.FromMillimeters(350)),
            }),
            Masses);
        double strands = 12_000 * ((1 / 0.18) + (1 / 0.598849556));
        double k = 1 / ((1 / strands) + (0.006 * 0.006 / 20));
        AxisResponse axis = drive.AxesAt(HeadPosition.FromMillimeters(200, 0), Known);
        Assert.Equal(k, axis.Stiffness.Result.SiValue, k * 1e-8);
        Assert.Equal(Math.Sqrt(k / 0.5) / (2 * Math.PI), axis.LowestFrequency.Result.SiValue, 1e-5);
        Assert.Equal(2 / k, axis.LostMotion.Result.SiValue, 1e-12);
        Assert.Equal(6 / k, axis.DeflectionX(Force.FromNewtons(6), Force.Zero).Result.SiValue, 1e-12);
        Assert.Null(axis.Coupling);
        Assert.Null(axis.HighestFrequency);
        Assert.False(axis.TryGetDeflectionY(Force.Zero, Force.Zero, out _));

        // The motor lowers the frequency by 5 to 10 %.
        Assert.InRange(Math.Sqrt(k / strands), 0.90, 0.95);
    }

    // Decoupled limit: f = √(k_xx/m)/(2π). Coupled case against the roots of det(K − ω²M), found by hand for k_A = 3, k_B = 1 (×10⁴ N/m), m = 1: ω² = 4 ± 2: 2e4 and 6e4.
    [Fact]
    public void Modes_by_hand()
    {
        ForcePerLength Stiffness(double k) => ForcePerLength.FromNewtonsPerMeter(k);
        Mass M(double m) => Mass.FromKilograms(m);
        Assert.Equal(Math.Sqrt(2e4) / (2 * Math.PI), CrossedModes.LowerFrequency(Stiffness(3e4), Stiffness(1e4), M(1), M(1)).Hertz, 1e-9);
        Assert.Equal(Math.Sqrt(6e4) / (2 * Math.PI), CrossedModes.HigherFrequency(Stiffness(3e4), Stiffness(1e4), M(1), M(1)).Hertz, 1e-9);
        Assert.Equal(Math.Sqrt(4e4 / 0.9) / (2 * Math.PI), CrossedModes.LowerFrequency(Stiffness(2e4), Stiffness(2e4), M(0.5), M(0.9)).Hertz, 1e-9);
        Assert.Equal(Math.Sqrt(4e4 / 0.5) / (2 * Math.PI), CrossedModes.HigherFrequency(Stiffness(2e4), Stiffness(2e4), M(0.5), M(0.9)).Hertz, 1e-9);
        Assert.Equal(2e4, CrossedModes.Coupling(Stiffness(3e4), Stiffness(1e4)).NewtonsPerMeter, 1e-9);
        Assert.Equal(4e4, CrossedModes.Direct(Stiffness(3e4), Stiffness(1e4)).NewtonsPerMeter, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => CrossedModes.Direct(Stiffness(0), Stiffness(1e4)));
        Assert.Throws<ArgumentOutOfRangeException>(() => CrossedModes.LowerFrequency(Stiffness(1), Stiffness(1e4), M(0), M(1)));
    }

    // On the middle line of the frame both belts are mirror images: no coupling; left and right of it equal and opposite coupling.
    [Fact]
    public void Coupling_changes_sign_across_the_middle()
    {
        BeltDrive drive = BeltDrive.Crossed(BeltPathTests.Crossed(300, 350, 40, 6, 6), Masses);
        Assert.Equal(0, drive.AxesAt(HeadPosition.FromMillimeters(150, 150), Known).Coupling!.Result.SiValue, 1e-6);
        AxisResponse left = drive.AxesAt(HeadPosition.FromMillimeters(90, 150), Known);
        AxisResponse right = drive.AxesAt(HeadPosition.FromMillimeters(210, 150), Known);
        Assert.NotEqual(0, left.Coupling!.Result.SiValue);
        Assert.Equal(left.Coupling.Result.SiValue, -right.Coupling!.Result.SiValue, 1e-6);
        Assert.Equal(left.LowestFrequency.Result.SiValue, right.LowestFrequency.Result.SiValue, 1e-9);

        // K·deflection gives the force back.
        double k = left.Stiffness.Result.SiValue;
        double c = left.Coupling.Result.SiValue;
        double x = left.DeflectionX(Force.FromNewtons(5), Force.FromNewtons(-3)).Result.SiValue;
        Assert.True(left.TryGetDeflectionY(Force.FromNewtons(5), Force.FromNewtons(-3), out UncertaintyBudget<Length>? y));
        Assert.Equal(5, (k * x) + (c * y.Result.SiValue), 1e-9);
        Assert.Equal(-3, (c * x) + (k * y.Result.SiValue), 1e-9);
    }

    [Fact]
    public void Range_over_the_travel_holds_every_place()
    {
        BeltDrive drive = BeltDrive.Crossed(BeltPathTests.Crossed(300, 350, 40, 6, 6), Masses);
        FrequencyRange range = drive.FrequencyOverTravel(Known);
        double middle = drive.AxesAt(HeadPosition.FromMillimeters(150, 170), Known).LowestFrequency.Result.SiValue;
        Assert.InRange(middle, range.Lowest.LowestFrequency.Result.SiValue, range.Highest.LowestFrequency.Result.SiValue);
        Assert.True(drive.FrequencyOverTravel().Lowest.LowestFrequency.Result.RelativeStandardUncertainty > 0.05);
        Assert.Throws<ArgumentOutOfRangeException>(() => drive.AxesAt(HeadPosition.FromMillimeters(150, 170), Known with { RotorTeeth = 0 }));
    }
}
