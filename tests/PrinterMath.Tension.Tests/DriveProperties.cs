using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>A drive anywhere in the range that machines use; the head as a share of its travel.</summary>
public sealed record AnyDrive(double MassX, double MassY, double Friction, double Acceleration, double Speed, double ShareX, double ShareY)
{
    internal BeltDriveOptions Options => new()
    {
        MassX = Measured.Exact(Mass.FromKilograms(MassX)),
        MassY = Measured.Exact(Mass.FromKilograms(MassY)),
        Friction = Measured.Of(Force.FromNewtons(Friction), Force.FromNewtons(Friction / 10)),
    };

    internal HeadPosition Head(bool mirrored = false) => HeadPosition.FromMillimeters(50 + (200 * (mirrored ? 1 - ShareX : ShareX)), 30 + (280 * ShareY));

    internal BeltDrive Crossed() => BeltDrive.Crossed(BeltPathTests.Crossed(300, 350, 40, 6, 6), Options);
}

public static class DriveArbitrary
{
    public static Arbitrary<AnyDrive> Drives() => Arb.From(
        from x in Gen.Choose(200, 700)
        from y in Gen.Choose(500, 1500)
        from friction in Gen.Choose(1, 40)
        from acceleration in Gen.Choose(1, 200)
        from speed in Gen.Choose(0, 300)
        from shareX in Gen.Choose(0, 100)
        from shareY in Gen.Choose(0, 100)
        select new AnyDrive(x / 1000.0, y / 1000.0, friction / 10.0, acceleration / 10.0, speed / 1000.0, shareX / 100.0, shareY / 100.0));
}

[Properties(Arbitrary = [typeof(DriveArbitrary)], MaxTest = 60)]
public sealed class DriveProperties
{
    private const double Rounding = 1e-9;

    private static readonly BeltSpan Span = new(
        Measured.Of(Length.FromMillimeters(200), Length.FromMillimeters(0.5)), Measured.Of(LinearDensity.FromGramsPerMeter(8.4), LinearDensity.FromGramsPerMeter(0.1)));

    private static readonly StepperMotor Motor = new(new StepperMotorData
    {
        HoldingTorque = Measured.Of(Torque.FromNewtonMeters(0.4), Torque.FromNewtonMeters(0.02)),
        RatedCurrent = WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.5)),
        Resistance = Measured.Exact(ElectricResistance.FromOhms(2)),
        SupplyVoltage = ElectricPotential.FromVolts(24),
    });

    [Property]
    public bool At_the_lower_limit_the_slack_side_keeps_its_share(AnyDrive d)
    {
        TensionWindow window = Window(d, d.Acceleration);
        return Math.Abs(window.SlackSideShareAt(window.Lower.Result.Value) - 0.2) < Rounding;
    }

    [Property]
    public bool More_acceleration_narrows_the_window(AnyDrive d)
    {
        TensionWindow slow = Window(d, d.Acceleration);
        TensionWindow fast = Window(d, d.Acceleration * 1.1);
        return fast.Lower.Result.SiValue > slow.Lower.Result.SiValue
            && fast.Upper.Result.SiValue < slow.Upper.Result.SiValue
            && fast.Room.Result.SiValue < slow.Room.Result.SiValue
            && fast.Opening.ProbabilityOfConformity <= slow.Opening.ProbabilityOfConformity + Rounding;
    }

    // The worst force over direction is symmetric in the two masses.
    [Property]
    public bool Masses_may_change_places(AnyDrive d)
    {
        double one = Window(d, d.Acceleration).Lower.Result.SiValue;
        double other = Window(d with { MassX = d.MassY, MassY = d.MassX }, d.Acceleration).Lower.Result.SiValue;
        return Math.Abs(one - other) < Rounding * one;
    }

    [Property]
    public bool Largest_acceleration_falls_with_speed_and_tension_and_leaves_no_reserve(AnyDrive d)
    {
        BeltDrive drive = d.Crossed();
        MotorMarginOptions At(double tension) => new() { Tension = Measured.Exact(Force.FromNewtons(tension)) };
        if (!drive.LargestAcceleration(Motor, Speed.FromMetersPerSecond(d.Speed), At(20)).TryGetValue(out Measured<Acceleration> largest))
        {
            return true;
        }

        double reserve = drive.MotorMargin(Motor, Speed.FromMetersPerSecond(d.Speed), largest.Value, At(20)).Reserve.Result.SiValue;
        bool tighter = drive.LargestAcceleration(Motor, Speed.FromMetersPerSecond(d.Speed), At(25)).TryGetValue(out Measured<Acceleration> tight);
        bool faster = drive.LargestAcceleration(Motor, Speed.FromMetersPerSecond(d.Speed * 1.1), At(20)).TryGetValue(out Measured<Acceleration> fast);
        return Math.Abs(reserve) < Rounding
            && (!tighter || tight.SiValue < largest.SiValue)
            && (!faster || fast.SiValue <= largest.SiValue + Rounding);
    }

    // At the best tension belt and motor allow the same acceleration: the window's lower limit for it is that tension.
    [Property]
    public bool Best_tension_is_the_lower_limit_of_its_own_acceleration(AnyDrive d)
    {
        TensionOptimum best = d.Crossed().BestTension(Motor, Speed.FromMetersPerSecond(d.Speed), Measured.Exact(0.2));
        return !best.Exists
            || Math.Abs(Window(d, best.Acceleration.Result.SiValue).Lower.Result.SiValue - best.Tension.Result.SiValue) < Rounding * best.Tension.Result.SiValue;
    }

    // The acceleration served by the window's lower limit is the one the window was made for, and the verdicts agree.
    [Property]
    public bool The_lower_limit_serves_its_own_acceleration(AnyDrive d)
    {
        Measured<Force> lower = Window(d, d.Acceleration).Lower.Result;
        BeltDrive drive = d.Crossed();
        double served = drive.AccelerationServedBy(Measured.Exact(lower.Value), Measured.Exact(0.2)).Budget.Result.SiValue;
        bool tighter = drive.AccelerationServedBy(Measured.Exact(lower.Value * 1.1), Measured.Exact(0.2)).Budget.Result.SiValue > served;
        return Math.Abs(served - d.Acceleration) < Rounding * (1 + d.Acceleration) && tighter;
    }

    [Property]
    public bool Mirrored_places_respond_alike(AnyDrive d)
    {
        BeltDrive drive = d.Crossed();
        AxisResponse here = drive.AxesAt(d.Head());
        AxisResponse there = drive.AxesAt(d.Head(mirrored: true));
        double k = here.Stiffness.Result.SiValue;
        return Math.Abs(here.Coupling!.Result.SiValue + there.Coupling!.Result.SiValue) < Rounding * k
            && Math.Abs(k - there.Stiffness.Result.SiValue) < Rounding * k
            && Math.Abs(here.LowestFrequency.Result.SiValue - there.LowestFrequency.Result.SiValue) < Rounding * here.LowestFrequency.Result.SiValue;
    }

    // Belts may change places; the modes bracket both uncoupled frequencies (Rayleigh); ω₁²·ω₂² = det K/det M; stiffer is higher.
    [Property]
    public bool Laws_of_two_coupled_modes(AnyDrive d)
    {
        double ka = 1e4 + (1e5 * d.ShareX);
        double kb = 1e4 + (1e5 * d.ShareY);
        (double low, double high) = Modes(ka, kb, d);
        (double swappedLow, double swappedHigh) = Modes(kb, ka, d);
        (double stiffLow, double stiffHigh) = Modes(ka * 1.1, kb, d);
        double fx = Math.Sqrt((ka + kb) / d.MassX) / (2 * Math.PI);
        double fy = Math.Sqrt((ka + kb) / d.MassY) / (2 * Math.PI);
        double product = Math.Pow(2 * Math.PI, 4) * low * low * high * high;
        return Close(low, swappedLow) && Close(high, swappedHigh)
            && low <= Math.Min(fx, fy) * (1 + Rounding) && high >= Math.Max(fx, fy) * (1 - Rounding)
            && Close(product, 4 * ka * kb / (d.MassX * d.MassY))
            && stiffLow >= low * (1 - Rounding) && stiffHigh > high;
    }

    // T + gain·turns is the target.
    [Property]
    public bool Turns_lead_to_the_target(AnyDrive d)
    {
        Tensioner tensioner = Tensioner.FromStiffness(
            Measured.Exact(Length.FromMillimeters(0.3 + d.ShareX)), 1, Measured.Exact(Length.FromMillimeters(1200)), Length.FromMillimeters(6));
        double from = 5 + (20 * d.ShareY);
        TensionerTurn turn = tensioner.Toward(Force.FromNewtons(5 + d.Acceleration), Measured.Exact(Force.FromNewtons(from)));
        return Close(5 + d.Acceleration, from + (tensioner.GainPerTurn.SiValue * turn.Turns.Result.SiValue))
            && Math.Abs(turn.Now) <= Math.Abs(turn.Turns.Result.SiValue) + Rounding && Math.Abs(turn.Now) <= tensioner.LargestAdjustment;
    }

    // Naming belt A belt B changes nothing but the names.
    [Property(MaxTest = 20)]
    public bool Belts_of_a_pair_may_change_places(AnyDrive d)
    {
        double[] more = [0, 3 + d.ShareX, 3 + d.ShareX + d.ShareY];
        double[] other = [0, d.ShareX, d.ShareX + 4];
        (double A, double B)[] turns = [(0, 0), (0.5, 0), (0.5, 0.6)];
        PairReading[] readings = [.. turns.Select((n, i) => new PairReading(Measured.Exact(n.A), Measured.Exact(n.B), Heard(15 + more[i]), Heard(12 + other[i])))];
        PairReading[] swapped = [.. readings.Select(r => new PairReading(r.TurnsB, r.TurnsA, r.FrequencyB, r.FrequencyA))];
        PairBalance one = TensionerPair.FromReadings(Span, Span, readings).BalanceFromLast(Force.FromNewtons(20));
        PairBalance two = TensionerPair.FromReadings(Span, Span, swapped).BalanceFromLast(Force.FromNewtons(20));
        return Close(one.TurnA.Turns.Result.SiValue, two.TurnB.Turns.Result.SiValue)
            && Close(one.TurnB.Turns.Result.SiStandardUncertainty, two.TurnA.Turns.Result.SiStandardUncertainty)
            && Close(one.RemainderA.Result.SiStandardUncertainty, two.RemainderB.Result.SiStandardUncertainty)
            && one.Equality == two.Equality;
    }

    private static Measured<Frequency> Heard(double tension) =>
        Measured.Of(Span.FrequencyAt(Measured.Exact(Force.FromNewtons(tension))).Result.Value, Frequency.FromHertz(0.2));

    private static (double Low, double High) Modes(double a, double b, AnyDrive d)
    {
        ForcePerLength beltA = ForcePerLength.FromNewtonsPerMeter(a);
        ForcePerLength beltB = ForcePerLength.FromNewtonsPerMeter(b);
        Mass x = Mass.FromKilograms(d.MassX);
        Mass y = Mass.FromKilograms(d.MassY);
        return (CrossedModes.LowerFrequency(beltA, beltB, x, y).Hertz, CrossedModes.HigherFrequency(beltA, beltB, x, y).Hertz);
    }

    private static TensionWindow Window(AnyDrive d, double acceleration) => d.Crossed().TensionWindow(
        Span, new TensionWindowOptions { Acceleration = Acceleration.FromMetersPerSecondSquared(acceleration), SlackSideShare = Measured.Exact(0.2) });

    // Sensitivities are found numerically, 1e-7 of scale.
    private static bool Close(double expected, double actual) => Math.Abs(actual - expected) <= 1e-7 * Math.Abs(expected);
}
