using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class MotorMarginTests
{
    private const double Rounding = 1e-9;

    private static readonly StepperMotor Motor = Make(3);

    private static StepperMotor Make(double millihenries) => new(new StepperMotorData
    {
        HoldingTorque = Measured.Exact(Torque.FromNewtonMeters(0.4)),
        RatedCurrent = WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.5)),
        Resistance = Measured.Exact(ElectricResistance.FromOhms(2)),
        Inductance = Measured.Exact(ElectricInductance.FromMillihenries(millihenries)),
        SupplyVoltage = ElectricPotential.FromVolts(24),
        RotorInertia = Measured.Exact(MassMomentOfInertia.FromKilogramSquareMeters(5.4e-6)),
        FrictionTorque = Measured.Exact(Torque.FromNewtonMeters(0.004)),
    });

    private static readonly BeltDriveOptions Known = new()
    {
        MassX = Measured.Exact(Mass.FromKilograms(0.5)),
        MassY = Measured.Exact(Mass.FromKilograms(0.5)),
        Friction = Measured.Exact(Force.FromNewtons(2)),
        PulleyInertia = Measured.Exact(MassMomentOfInertia.FromKilogramSquareMeters(3.6e-7)),
        BearingFriction = Measured.Exact(0.0),
        BendingLoss = Measured.Exact(0.0),
    };

    private static BeltDrive Crossed(BeltDriveOptions options) => BeltDrive.Crossed(BeltPathTests.Crossed(300, 350, 40, 6, 6), options);

    private static MotorMarginOptions Toward(double degrees, double share = 0.5) => new()
    {
        Direction = Angle.FromDegrees(degrees),
        UsableShare = share,
        Tension = Measured.Exact(Force.FromNewtons(20)),
    };

    private static Speed Mms(double v) => Speed.FromMillimetersPerSecond(v);

    private static Acceleration A(double a) => Acceleration.FromMetersPerSecondSquared(a);

    // r = 6 mm, J = 5.76e-6: J/r² = 0.16 kg. On a diagonal motor A: a_belt = √2·10, F = 3.535534 + 2 N: τ = 6e-3·5.535534 + 5.76e-6·14.142136/6e-3 + 0.004
    // = 0.033213203 + 0.01357645 + 0.004 = 0.05078965 N·m. Along x: F = 4.5 N, a_belt = 10: 0.027 + 0.0096 + 0.004 = 0.0406.
    [Theory]
    [InlineData(45, 0.050789653)]
    [InlineData(-45, 0.050789653)]
    [InlineData(225, 0.050789653)]
    [InlineData(0, 0.0406)]
    [InlineData(90, 0.0406)]
    public void Demand_by_hand(double degrees, double newtonMeters)
    {
        Assert.Equal(newtonMeters, Crossed(Known).MotorMargin(Motor, Mms(100), A(10), Toward(degrees)).Required.Result.SiValue, 1e-8);
        Torque closed = MotorTorque.Required(
            Force.FromNewtons(4.5), A(10), MassMomentOfInertia.FromKilogramSquareMeters(5.76e-6), Length.FromMillimeters(6), Torque.FromNewtonMeters(0.004));
        Assert.Equal(0.0406, closed.NewtonMeters, Rounding);
        Assert.Equal(0.16, MotorTorque.MassAtBelt(MassMomentOfInertia.FromKilogramSquareMeters(5.76e-6), Length.FromMillimeters(6)).Kilograms, Rounding);
    }

    // With equal masses the worst direction is the diagonal, so "any" must agree with it; with unequal ones it must not lie below any direction.
    [Theory]
    [InlineData(0.5)]
    [InlineData(1.2)]
    public void Any_direction_is_no_better_than_each(double massY)
    {
        BeltDrive drive = Crossed(Known with { MassY = Measured.Exact(Mass.FromKilograms(massY)) });
        MotorMarginOptions any = Toward(0) with { Direction = null };
        double worst = drive.MotorMargin(Motor, Mms(300), A(10), any).Reserve.Result.SiValue;
        double least = Enumerable.Range(0, 72).Min(i => drive.MotorMargin(Motor, Mms(300), A(10), Toward(5 * i)).Reserve.Result.SiValue);
        Assert.True(worst <= least + Rounding);
        if (massY == 0.5)
        {
            Assert.Equal(worst, least, Rounding);
        }
    }

    // The largest acceleration is the one that leaves no reserve.
    [Theory]
    [InlineData(50, 0)]
    [InlineData(300, 30)]
    [InlineData(500, 45)]
    public void Largest_acceleration_leaves_no_reserve(double speed, double degrees)
    {
        BeltDrive drive = Crossed(Known);
        Assert.True(drive.LargestAcceleration(Motor, Mms(speed), Toward(degrees)).TryGetValue(out Measured<Acceleration> largest));
        Assert.Equal(0, drive.MotorMargin(Motor, Mms(speed), largest.Value, Toward(degrees)).Reserve.Result.SiValue, Rounding);
    }

    [Fact]
    public void Verdict_predicts_a_layer_shift()
    {
        BeltDrive drive = Crossed(Known);
        Assert.Equal(Conclusion.Within, drive.MotorMargin(Motor, Mms(100), A(10), Toward(45)).Verdict.Conclusion);
        Assert.Equal(Conclusion.Outside, drive.MotorMargin(Motor, Mms(100), A(100), Toward(45)).Verdict.Conclusion);
        Assert.Equal(Conclusion.Within, drive.LargestAcceleration(Motor, Mms(100), Toward(45)).Judge(A(10)).Conclusion);
        Assert.Equal(Conclusion.Outside, drive.LargestAcceleration(Motor, Mms(100), Toward(45)).Judge(A(100)).Conclusion);
        BeltDrive unknown = Crossed(new BeltDriveOptions());
        double edge = unknown.LargestAcceleration(Motor, Mms(100)).Budget.Result.SiValue;
        Verdict<Acceleration> open = unknown.LargestAcceleration(Motor, Mms(100)).Judge(A(edge * 0.95));
        Assert.Equal(Conclusion.Undecided, open.Conclusion);
        Assert.NotNull(open.Limitation);
    }

    [Fact]
    public void Without_torque_there_is_a_finding()
    {
        BeltDrive drive = Crossed(Known);
        AccelerationLimit none = drive.LargestAcceleration(Motor, Speed.FromMetersPerSecond(20));
        Assert.Equal(DriveFindings.NoTorque, Assert.Single(none.Findings).Code);
        Assert.False(none.TryGetValue(out _));
        Assert.Throws<IndeterminateException>(() => none.Budget);
        Assert.Equal(Conclusion.Outside, none.Judge(A(1)).Conclusion);

        // 0.3 mH: no field weakening within 2.12 A (K/(N_r·L) = 12.6 A), so at 20 m/s the EMF of 630 V leaves nothing.
        Assert.False(drive.MotorMargin(Make(0.3), Speed.FromMetersPerSecond(20), A(1)).TryGetUtilization(out _));
        Assert.True(drive.MotorMargin(Motor, Mms(100), A(10), Toward(0)).TryGetUtilization(out double utilization));
        Assert.Equal(0.0406 / 0.4, utilization, Rounding);
        Assert.Throws<IndeterminateException>(() => drive.BestTension(Motor, Speed.FromMetersPerSecond(20)).Tension);
        Assert.Throws<ArgumentOutOfRangeException>(() => drive.MotorMargin(Motor, Mms(-1), A(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => drive.MotorMargin(Motor, Mms(1), A(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => drive.LargestAcceleration(Motor, Mms(1), new MotorMarginOptions { UsableShare = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => MotorTorque.MassAtBelt(MassMomentOfInertia.FromKilogramSquareMeters(1), Length.Zero));
    }

    // Single axis with a motor pulley and an idler of r = 6 mm, wraps π: B = 2·5/6·sin(π/2), n = 2; 0.003·1.6667 + 0.002·2 = 0.009: 0.18 N at 20 N.
    [Fact]
    public void Drag_by_hand()
    {
        BeltDrive drive = Single(Known with { BearingFriction = Measured.Exact(0.003), BendingLoss = Measured.Exact(0.002) });
        Assert.Equal(0.18, drive.DragAt(Force.FromNewtons(20)).Result.SiValue, Rounding);
        Assert.Throws<ArgumentOutOfRangeException>(() => drive.DragAt(Force.FromNewtons(-1)));
    }

    // Capstan (Euler 1769, Eytelwein 1808): a belt over one pin of wrap π with µ = 0.2: e^(0.2π) − 1 = 0.874456 of the tension.
    [Fact]
    public void A_pin_drags_by_the_capstan_law()
    {
        Length r = Length.FromMillimeters(6);
        var belt = new BeltPath(
            "b",
            new BeltEnd("first", HeadPosition.FromMillimeters(-20, 6)),
            [
                new BeltPulley("motor", PulleyKind.Motor, default, r, WrapSide.Left),
                new BeltPulley("pin", PulleyKind.SlidingPin, HeadPosition.FromMillimeters(400, 0), r, WrapSide.Left),
            ],
            new BeltEnd("second", HeadPosition.FromMillimeters(20, 6)));
        var layout = new SingleAxisLayout(belt, HeadTravel.Along(Length.FromMillimeters(50), Length.FromMillimeters(350)));
        BeltDrive drive = BeltDrive.SingleAxis(layout, Known with { SlidingFriction = Measured.Exact(0.2) });
        Assert.Equal(0.874456, drive.DragAt(Force.FromNewtons(1)).Result.SiValue, 5e-7);
    }

    // The optimum against a search in steps of 0.001 N over min(belt, motor), both written out here.
    [Fact]
    public void Best_tension_against_a_search()
    {
        BeltDrive drive = Single(Known with { BearingFriction = Measured.Exact(0.003), BendingLoss = Measured.Exact(0.002) });
        TensionOptimum best = drive.BestTension(Motor, Mms(100), Measured.Exact(0.2));
        double torque = Motor.LargestTorqueEstimate(RotationalSpeed.FromRadiansPerSecond(0.1 / 0.006)).NewtonMeters;
        double found = 0;
        double at = 0;
        for (int i = 1; i < 100_000; i++)
        {
            double t = i * 0.001;
            double friction = 2 + (0.009 * t);
            double belt = ((t / (0.2 + (748.849556 / 778.849556))) - friction) / 0.5;
            double motor = ((((0.5 * torque) - 0.004) / 0.006) - friction) / 0.66;
            (found, at) = Math.Min(belt, motor) > found ? (Math.Min(belt, motor), t) : (found, at);
        }

        Assert.Equal(at, best.Tension.Result.SiValue, 0.001);
        Assert.Equal(found, best.Acceleration.Result.SiValue, 0.005);
        Assert.True(best.TryGetTension(out _));
    }

    // Worst strand 748.849556 of 778.849556 mm: q = 0.2 + 0.961482 = 1.161482; κ = 0.009; (20·(1/1.161482 − 0.009) − 2)/0.5 = (17.219385 − 0.18 − 2)/0.5 = 30.07877 m/s².
    // With u(T) = 0.5 N that alone is worth 0.5·0.8519685/0.5 = 0.85197 m/s².
    [Fact]
    public void Acceleration_served_by_hand()
    {
        BeltDrive drive = Single(Known with { BearingFriction = Measured.Exact(0.003), BendingLoss = Measured.Exact(0.002) });
        AccelerationLimit served = drive.AccelerationServedBy(Measured.Of(Force.FromNewtons(20), Force.FromNewtons(0.5)), Measured.Exact(0.2));
        Assert.Equal(30.07877, served.Budget.Result.SiValue, 5e-6);
        Assert.Equal(0.85197, served.Budget.Result.SiStandardUncertainty, 5e-6);
        Assert.True(served.TryGetValue(out _));
        Assert.Equal(Conclusion.Within, served.Judge(A(25)).Conclusion);
        Assert.Equal(Conclusion.Outside, served.Judge(A(35)).Conclusion);
        Verdict<Acceleration> open = served.Judge(A(29.2));
        Assert.Equal((Conclusion.Undecided, "tension"), (open.Conclusion, open.Limitation!.InputName));
    }

    [Fact]
    public void A_slack_belt_serves_no_acceleration()
    {
        BeltDrive drive = Single(Known);
        AccelerationLimit none = drive.AccelerationServedBy(Measured.Exact(Force.FromNewtons(1)));
        Assert.Equal(DriveFindings.TooSlack, Assert.Single(none.Findings).Code);
        Assert.False(none.TryGetValue(out _));
        Assert.Throws<IndeterminateException>(() => none.Budget);
        Assert.Equal(Conclusion.Outside, none.Judge(A(1)).Conclusion);
        Assert.Throws<ArgumentOutOfRangeException>(() => drive.AccelerationServedBy(Measured.Exact(Force.Zero)));
        Assert.Throws<ArgumentOutOfRangeException>(() => drive.AccelerationServedBy(Measured.Exact(Force.FromNewtons(20)), Measured.Exact(-0.1)));
    }

    // Sharing of variances: a tension from a budget keeps its lines and has the uncertainty of the plain one.
    [Fact]
    public void A_budget_of_the_tension_keeps_its_lines()
    {
        var span = new BeltSpan(
            Measured.Of(Length.FromMillimeters(200), Length.FromMillimeters(0.5)), Measured.Of(LinearDensity.FromGramsPerMeter(8.4), LinearDensity.FromGramsPerMeter(0.1)));
        UncertaintyBudget<Force> tension = span.TensionFor(Measured.Of(Frequency.FromHertz(120), Frequency.FromHertz(0.5))).Budget;
        BeltDrive drive = Crossed(Known);
        UncertaintyBudget<Acceleration> whole = drive.AccelerationServedBy(tension).Budget;
        UncertaintyBudget<Acceleration> plain = drive.AccelerationServedBy(tension.Result).Budget;
        Assert.Equal(plain.Result.SiValue, whole.Result.SiValue, Rounding);
        Assert.Equal(plain.Result.SiStandardUncertainty, whole.Result.SiStandardUncertainty, Rounding);
        Assert.Contains(whole.Lines, line => line.Input.Name == "linear density");
        Assert.DoesNotContain(plain.Lines, line => line.Input.Name == "linear density");
    }

    private static BeltDrive Single(BeltDriveOptions options) => BeltDrive.SingleAxis(
        SingleAxisLayout.From(new SingleAxisDimensions
        {
            CentreDistance = Length.FromMillimeters(400),
            CarriageLength = Length.FromMillimeters(40),
            PulleyRadius = Length.FromMillimeters(6),
            Travel = HeadTravel.Along(Length.FromMillimeters(50), Length.FromMillimeters(350)),
        }),
        options);
}
