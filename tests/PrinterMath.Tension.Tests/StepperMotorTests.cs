using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class StepperMotorTests
{
    private static StepperMotor Motor(double volts, double r = 2, double millihenries = 3, double share = 1) => new(new StepperMotorData
    {
        HoldingTorque = Measured.Exact(Torque.FromNewtonMeters(0.4)),
        RatedCurrent = WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.5)),
        RunCurrent = WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.5 * share)),
        Resistance = Measured.Exact(ElectricResistance.FromOhms(r)),
        Inductance = Measured.Exact(ElectricInductance.FromMillihenries(millihenries)),
        SupplyVoltage = ElectricPotential.FromVolts(volts),
    });

    private static double At(StepperMotor motor, double rpm) =>
        motor.LargestTorque(RotationalSpeed.FromRevolutionsPerMinute(rpm)).Result.SiValue;

    // Pull-out of the phasor model K[V/Z − K·ω·R/Z²] evaluated with SciPy 1.10.1; five digits given. 0.4 N·m, 1.5 A, 2 Ω, 3 mH, 24 V. Its current, √(I_d² + I_q²) with
    // I_d = K·ω·X/Z², is 1.95, 1.68 and 1.46 A here, below I_m = 2.12 A, so the current limit is inactive and the envelope is the closed form.
    [Theory]
    [Trait("Evidence", "Published")]
    [InlineData(900, 0.28408)]
    [InlineData(1200, 0.21387)]
    [InlineData(1800, 0.14297)]
    public void Pull_out_above_the_corner(double rpm, double newtonMeters) => Assert.Equal(newtonMeters, At(Motor(24), rpm), 5e-6);

    // At 600 rpm the closed form gives 0.42158 N·m (0.4 after its cap) with a current above I_m: the envelope lies below the cap, by no more than the 4 % that the cap over-reads.
    [Fact]
    public void Near_the_corner_the_closed_form_over_reads() => Assert.InRange(At(Motor(24), 600), 0.4 * 0.96, 0.4 - 1e-4);

    // Corner speeds of the same computation: full torque up to there (a five-digit number of rpm), less just above.
    [Theory]
    [Trait("Evidence", "Published")]
    [InlineData(12, 239.29)]
    [InlineData(24, 556.58)]
    [InlineData(48, 1179.83)]
    public void Full_torque_up_to_the_corner_speed(double volts, double rpm)
    {
        Assert.Equal(0.4, At(Motor(volts), rpm - 0.01), 1e-12);
        Assert.True(At(Motor(volts), rpm + 0.01) < 0.4);
    }

    // Brute force over both currents on a polar grid of 400 by 2000: the grid misses the optimum by at most 1/400 of I_m radially and π/1000 of it along the circle.
    [Theory]
    [InlineData(24, 2, 3, 1, 0)]
    [InlineData(24, 2, 3, 1, 500)]
    [InlineData(24, 2, 3, 1, 620)]
    [InlineData(24, 2, 3, 1, 900)]
    [InlineData(24, 2, 3, 0.5, 1500)]
    [InlineData(12, 2, 8, 1, 700)]
    [InlineData(12, 10, 1, 1, 300)]
    [InlineData(4, 2, 3, 1, 10)]
    [InlineData(24, 2, 0.5, 0.3, 4000)]
    public void Against_a_search_over_both_currents(double volts, double r, double millihenries, double share, double rpm)
    {
        double im = 1.5 * Math.Sqrt(2) * share;
        double k = 0.4 / (1.5 * Math.Sqrt(2));
        double w = rpm * Math.PI / 30;
        double x = 50 * w * millihenries / 1000;
        double best = 0;
        for (int i = 0; i <= 400; i++)
        {
            for (int j = 0; j < 2000; j++)
            {
                double id = im * i / 400 * Math.Cos(j * Math.PI / 1000);
                double iq = im * i / 400 * Math.Sin(j * Math.PI / 1000);
                double vq = (k * w) + (r * iq) - (x * id);
                double vd = (r * id) + (x * iq);
                best = (vq * vq) + (vd * vd) <= volts * volts ? Math.Max(best, k * iq) : best;
            }
        }

        Assert.InRange(At(Motor(volts, r, millihenries, share), rpm), best - 1e-12, best + (k * im * ((1 / 400.0) + (Math.PI / 1000))));
    }

    [Property(MaxTest = 500)]
    public Property Never_negative_never_rising_with_speed(byte volts, byte ohms, byte henries, byte share, ushort speed)
    {
        StepperMotor motor = Motor(5 + (volts / 4.0), 0.5 + (ohms / 20.0), 0.5 + (henries / 25.0), 0.1 + (share / 255.0));
        double rpm = speed / 10.0;
        double here = At(motor, rpm);
        double faster = At(motor, (rpm * 1.01) + 0.1);
        return (here >= 0 && faster <= here + 1e-12).ToProperty().Label($"{here} then {faster}");
    }

    // At rest K·min(I_m, V/R): 0.4 N·m, or with 2 V on 2 Ω 0.4·1/(1.5·√2) = 0.18856. At very high speed nothing is left.
    [Fact]
    public void Limits()
    {
        Assert.Equal(0.4, At(Motor(24), 0), 1e-12);
        Assert.Equal(0.1885618, At(Motor(2), 0), 1e-7);
        Assert.InRange(At(Motor(24), 1e9), 0, 1e-6);
    }

    // 2·1.5²·2 = 9 W; 5 ± 6/√12 K for each watt: 45 K, u = 9·1.732 = 15.59 K.
    [Fact]
    public void Heat()
    {
        StepperMotor motor = Motor(24);
        Assert.Equal(9, motor.CopperLoss.SiValue, 1e-12);
        Assert.Equal(45, motor.CaseRise().Result.SiValue, 1e-12);
        Assert.Equal(15.588, motor.CaseRise().Result.SiStandardUncertainty, 1e-3);
        Assert.Equal(Conclusion.Within, motor.JudgeCaseRise(Temperature.FromDegreesCelsius(25), Temperature.FromDegreesCelsius(130)).Conclusion);
        Assert.Equal(1.5 * Math.Sqrt(2), WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.5)).Peak.Amperes, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Motor(-1));
    }

    // An unknown inductance must widen the answer at speed and not at rest.
    [Fact]
    public void Unknown_inductance_widens_the_torque_at_speed()
    {
        var motor = new StepperMotor(new StepperMotorData
        {
            HoldingTorque = Measured.Exact(Torque.FromNewtonMeters(0.4)),
            RatedCurrent = WindingCurrent.FromRms(ElectricCurrent.FromAmperes(1.5)),
            Resistance = Measured.Exact(ElectricResistance.FromOhms(2)),
            SupplyVoltage = ElectricPotential.FromVolts(24),
        });
        Assert.True(motor.LargestTorque(RotationalSpeed.FromRevolutionsPerMinute(1200)).Result.RelativeStandardUncertainty > 0.2);
        Assert.Equal(0, motor.LargestTorque(RotationalSpeed.Zero).Result.SiStandardUncertainty);
    }

    // By hand from a = x + y, b = x − y (Sollmann, Jouaneh, Lavender 2010, eqs 12-19) and virtual work; m = 0.5 kg, a = 10 m/s²: x 2.5/2.5 N, y 2.5/−2.5 N, 45° 3.5355/0 N.
    [Theory]
    [InlineData(10, 0, 2.5, 2.5)]
    [InlineData(0, 10, 2.5, -2.5)]
    [InlineData(7.0710678, 7.0710678, 3.5355, 0)]
    public void Belt_forces(double ax, double ay, double a, double b)
    {
        Mass m = Mass.FromKilograms(0.5);
        var x = Acceleration.FromMetersPerSecondSquared(ax);
        var y = Acceleration.FromMetersPerSecondSquared(ay);
        Assert.Equal(a, DriveForce.CrossedA(m, m, x, y).Newtons, 5e-5);
        Assert.Equal(b, DriveForce.CrossedB(m, m, x, y).Newtons, 5e-5);
        Assert.Equal(3.5355, DriveForce.WorstCrossed(m, m, Acceleration.FromMetersPerSecondSquared(10)).Newtons, 5e-5);
        Assert.Throws<ArgumentOutOfRangeException>(() => DriveForce.WorstCrossed(-m, m, x));
    }
}
