using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

/// <summary>A move, a sequence for one frequency and a mode at another.</summary>
public sealed record MoveCase(double Millimeters, double Speed, double Acceleration, double Jerk, string Family, double Design, double Hertz, double Zeta);

public static class MoveArbitrary
{
    public static Arbitrary<MoveCase> Cases() => Arb.From(
        from way in Gen.Choose(-60_000, 60_000)
        from speed in Gen.Choose(20, 400)
        from acceleration in Gen.Choose(500, 20_000)
        from jerk in Gen.Choose(20, 2000)
        from family in Gen.Elements("ZV", "ZVD", "ZVDD", "EI")
        from design in Gen.Choose(200, 1200)
        from hertz in Gen.Choose(150, 1500)
        from zeta in Gen.Choose(0, 250)
        select new MoveCase(way == 0 ? 1 : way / 1000.0, speed, acceleration, jerk, family, design / 10.0, hertz / 10.0, zeta / 1000.0));
}

[Properties(Arbitrary = [typeof(MoveArbitrary)], MaxTest = 100)]
public sealed class MotionSimulationTests
{
    // For any command: ringing after the shaped move, over that after the bare one, is V.
    [Property]
    public bool Ringing_is_reduced_by_the_residual_ratio(MoveCase c)
    {
        ImpulseSequence s = Sequence(c);
        ModeShare mode = ModeShare.Of(Frequency.FromHertz(c.Hertz), c.Zeta);
        foreach (MotionProfile move in new[] { Trapezoid(c), Limited(c) })
        {
            double bare = MotionSimulation.Run(move, [mode]).Residuals[0].Amplitude.Meters;
            double shaped = MotionSimulation.Run(move.ShapedBy(s), [mode]).Residuals[0].Amplitude.Meters;

            // Where the bare move happens to leave next to nothing, rounding of the way that it went (a·10⁻¹⁶/ω²) is all that is left.
            double scale = c.Acceleration * 1e-3 / Math.Pow(2 * Math.PI * c.Hertz, 2);
            if (Math.Abs(shaped - (s.ResidualVibration(mode.Frequency, c.Zeta) * bare)) > (1e-10 * bare) + (1e-13 * scale))
            {
                return false;
            }
        }

        return true;
    }

    // An independent fine integration of q″ + 2ζωq′ + ω²q = −u″ by the classical Runge-Kutta method, piece by piece between the changes of the command.
    [Property(MaxTest = 25)]
    public bool The_state_transition_agrees_with_a_fine_integration(MoveCase c)
    {
        MotionProfile move = Limited(c).ShapedBy(Sequence(c));
        ModeShare[] modes = [ModeShare.Of(Frequency.FromHertz(c.Hertz), c.Zeta, 0.7), ModeShare.Of(Frequency.FromHertz(1.7 * c.Hertz), c.Zeta / 2, 0.3)];
        MotionSimulation simulation = MotionSimulation.Run(move, modes);
        double[] breaks = [.. BreakTimes(c, Sequence(c))];
        var first = new FineOscillator(c.Hertz, c.Zeta);
        var second = new FineOscillator(1.7 * c.Hertz, c.Zeta / 2);
        double scale = c.Acceleration * 1e-3 / Math.Pow(2 * Math.PI * c.Hertz, 2);
        for (int i = 1; i < breaks.Length; i++)
        {
            double from = breaks[i - 1], to = breaks[i], middle = (from + to) / 2;

            // Between breaks the acceleration is a straight line, known from its middle.
            double a = move.AccelerationAt(Duration.FromSeconds(middle)).MetersPerSecondSquared;
            double quarter = move.AccelerationAt(Duration.FromSeconds(from + ((to - from) / 4))).MetersPerSecondSquared;
            double jerk = to > from ? (a - quarter) / ((to - from) / 4) : 0;
            double Acceleration(double t) => a + (jerk * (t - middle));
            first.Advance(Acceleration, from, to);
            second.Advance(Acceleration, from, to);
            double expected = (0.7 * first.Deflection) + (0.3 * second.Deflection);
            if (Math.Abs(simulation.DeflectionAt(Duration.FromSeconds(to)).Meters - expected) > 1e-8 * scale)
            {
                return false;
            }
        }

        return true;
    }

    [Property]
    public bool Moves_arrive_and_shaping_delays_them(MoveCase c)
    {
        ImpulseSequence s = Sequence(c);
        foreach (MotionProfile move in new[] { Trapezoid(c), Limited(c) })
        {
            MotionProfile shaped = move.ShapedBy(s);
            bool limits = Enumerable.Range(0, 50).All(k =>
            {
                Duration t = move.Duration * k / 50.0;
                return Math.Abs(move.SpeedAt(t).MillimetersPerSecond) <= c.Speed * (1 + 1e-9)
                    && Math.Abs(move.AccelerationAt(t).MillimetersPerSecondSquared) <= c.Acceleration * (1 + 1e-9);
            });
            if (!limits
                || Math.Abs(move.EndPosition.Millimeters - c.Millimeters) > 1e-9 || Math.Abs(shaped.EndPosition.Millimeters - c.Millimeters) > 1e-9
                || Math.Abs(shaped.EndSpeed.MillimetersPerSecond) > 1e-9
                || Math.Abs(shaped.Duration.Seconds - move.Duration.Seconds - s.Duration.Seconds) > 1e-12)
            {
                return false;
            }
        }

        return true;
    }

    // In steady motion the shaped position lags by the mean delay, and the shaped position at any time is the weighted sum of delayed ones.
    [Property]
    public bool Shaping_is_a_weighted_sum_of_delayed_moves(MoveCase c)
    {
        ImpulseSequence s = Sequence(c);
        MotionProfile move = Limited(c), shaped = move.ShapedBy(s);
        for (int k = 0; k <= 20; k++)
        {
            double t = shaped.Duration.Seconds * k / 19, sum = 0;
            for (int i = 0; i < s.Count; i++)
            {
                sum += s.Amplitudes[i] * move.PositionAt(Duration.FromSeconds(t - s.Times[i])).Meters;
            }

            if (Math.Abs(sum - shaped.PositionAt(Duration.FromSeconds(t)).Meters) > 1e-12)
            {
                return false;
            }
        }

        return true;
    }

    [Fact]
    public void Residual_ripple_has_its_wavelength_and_decay()
    {
        MotionSimulation simulation = MotionSimulation.Run(
            MotionProfile.FromSegments([MotionSegment.Of(Duration.Zero, Acceleration.Zero, default, Speed.FromMillimetersPerSecond(-100))]),
            [ModeShare.Of(Frequency.FromHertz(50), 0.05)]);
        ModeResidual residual = Assert.Single(simulation.Residuals);
        Duration period = Duration.FromSeconds(1 / residual.DampedFrequency.Hertz);
        Assert.Equal(residual.RatioOfSuccessiveRipples, residual.AmplitudeAfter(period) / residual.Amplitude, 1e-12);
        Length crest = simulation.DeflectionAt(period / 4), next = simulation.DeflectionAt(period * 1.25);
        Assert.Equal(residual.RatioOfSuccessiveRipples, next / crest, 1e-9);
        Assert.Equal(0.03, residual.Wavelength(Speed.FromMetersPerSecond(0.03 * residual.DampedFrequency.Hertz)).Meters, 1e-12);
    }

    [Fact]
    public void Many_positions_at_once_are_those_one_by_one()
    {
        MotionSimulation simulation = MotionSimulation.Run(
            MotionProfile.Trapezoid(Length.FromMillimeters(12), Speed.FromMillimetersPerSecond(150), Acceleration.FromMetersPerSecondSquared(4)),
            [ModeShare.Of(Frequency.FromHertz(45), 0.06)]);
        double[] times = [-0.01, 0, 0.02, 0.05, 0.2], positions = new double[5];
        simulation.ToolPositions(times, positions);
        for (int i = 0; i < 5; i++)
        {
            Assert.Equal(simulation.ToolPositionAt(Duration.FromSeconds(times[i])).Meters, positions[i], 1e-16);
        }

        Assert.Equal(0, positions[0]);
        Assert.Equal("12 mm in 117.5 ms", simulation.Command.ToString());
    }

    [Fact]
    public void Bad_arguments_name_themselves()
    {
        MotionProfile move = MotionProfile.Trapezoid(Length.FromMillimeters(12), Speed.FromMillimetersPerSecond(150), Acceleration.FromMetersPerSecondSquared(4));
        ModeShare half = ModeShare.Of(Frequency.FromHertz(45), 0.06, 0.5);
        Assert.Equal("modes", Assert.Throws<ArgumentException>(() => MotionSimulation.Run(move, [half])).ParamName);
        Assert.Equal("modes", Assert.Throws<ArgumentException>(() => MotionSimulation.Run(move, [])).ParamName);
        Assert.Equal("segments", Assert.Throws<ArgumentException>(() => MotionProfile.FromSegments([])).ParamName);
        Assert.Equal("distance", Assert.Throws<ArgumentException>(
            () => MotionProfile.Trapezoid(Length.Zero, Speed.FromMillimetersPerSecond(150), Acceleration.FromMetersPerSecondSquared(4))).ParamName);
        Assert.Equal("acceleration", Assert.Throws<ArgumentOutOfRangeException>(
            () => MotionProfile.Trapezoid(Length.FromMillimeters(1), Speed.FromMillimetersPerSecond(150), Acceleration.Zero)).ParamName);
        Assert.Equal("jerk", Assert.Throws<ArgumentOutOfRangeException>(
            () => MotionProfile.JerkLimited(Length.FromMillimeters(1), Speed.FromMillimetersPerSecond(150), Acceleration.FromMetersPerSecondSquared(4), default)).ParamName);
        Assert.Equal("duration", Assert.Throws<ArgumentOutOfRangeException>(() => MotionSegment.Of(Duration.FromSeconds(-1), Acceleration.Zero)).ParamName);
        Assert.Equal("dampingRatio", Assert.Throws<ArgumentOutOfRangeException>(() => ModeShare.Of(Frequency.FromHertz(45), 1)).ParamName);
        Assert.Equal("positions", Assert.Throws<ArgumentException>(() => MotionSimulation.Run(move, [ModeShare.Of(Frequency.FromHertz(45), 0)]).ToolPositions([0, 1], new double[1])).ParamName);
    }

    private static ImpulseSequence Sequence(MoveCase c) => ImpulseSequenceReferenceTests.Make(c.Family, Frequency.FromHertz(c.Design), 0.05);

    private static MotionProfile Trapezoid(MoveCase c) => MotionProfile.Trapezoid(
        Length.FromMillimeters(c.Millimeters), Speed.FromMillimetersPerSecond(c.Speed), Acceleration.FromMillimetersPerSecondSquared(c.Acceleration));

    private static MotionProfile Limited(MoveCase c) => MotionProfile.JerkLimited(
        Length.FromMillimeters(c.Millimeters), Speed.FromMillimetersPerSecond(c.Speed), Acceleration.FromMillimetersPerSecondSquared(c.Acceleration), Jerk.FromMetersPerSecondCubed(c.Jerk));

    /// <summary>Moments at which the shaped jerk-limited move changes, found from its acceleration alone: ends of the ramps of the bare move, each delayed by each impulse.</summary>
    private static IEnumerable<double> BreakTimes(MoveCase c, ImpulseSequence s)
    {
        double way = Math.Abs(c.Millimeters) * 1e-3, v = c.Speed * 1e-3, a = c.Acceleration * 1e-3, j = c.Jerk;

        // The peak speed by bisection on the way that speeding up and slowing down take.
        double Needed(double peak) => peak * (peak * j >= a * a ? (peak / a) + (a / j) : 2 * Math.Sqrt(peak / j));
        double low = 0, high = v;
        for (int i = 0; i < 200; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Needed(middle) <= way ? (middle, high) : (low, middle);
        }

        double top = Needed(v) <= way ? v : low;
        double ramp = top * j >= a * a ? a / j : Math.Sqrt(top / j), steady = Math.Max(0, (top / (ramp * j)) - ramp), cruise = Math.Max(0, (way / top) - (2 * ramp) - steady);
        double[] bare = [0, ramp, ramp + steady, (2 * ramp) + steady, (2 * ramp) + steady + cruise, (3 * ramp) + steady + cruise, (3 * ramp) + (2 * steady) + cruise, (4 * ramp) + (2 * steady) + cruise];
        return bare.SelectMany(time => s.Times.ToArray().Select(delay => time + delay)).Order();
    }

    /// <summary>
    /// An oscillator shaken at its base, by the classical Runge-Kutta method with 400 and with 800 steps a period, extrapolated to none (Richardson):
    /// the method alone is 3·10⁻⁹ of the swing off after each period, which a mode without damping adds up over the move.
    /// </summary>
    private sealed class FineOscillator(double hertz, double zeta)
    {
        private readonly RungeKutta _coarse = new(hertz, zeta), _fine = new(hertz, zeta);

        internal double Deflection => ((16 * _fine.Deflection) - _coarse.Deflection) / 15;

        internal void Advance(Func<double, double> acceleration, double from, double to)
        {
            int steps = Math.Max(1, (int)Math.Ceiling((to - from) * hertz * 400));
            _coarse.Advance(acceleration, from, to, steps);
            _fine.Advance(acceleration, from, to, 2 * steps);
        }
    }

    private sealed class RungeKutta(double hertz, double zeta)
    {
        private readonly double _omega = 2 * Math.PI * hertz;
        private double _rate;

        internal double Deflection { get; private set; }

        internal void Advance(Func<double, double> acceleration, double from, double to, int steps)
        {
            double h = (to - from) / steps;
            double Pull(double q, double rate, double t) => -acceleration(t) - (2 * zeta * _omega * rate) - (_omega * _omega * q);
            for (int i = 0; i < steps; i++)
            {
                double t = from + (i * h), q = Deflection, r = _rate;
                double q1 = r, r1 = Pull(q, r, t);
                double q2 = r + (h / 2 * r1), r2 = Pull(q + (h / 2 * q1), r + (h / 2 * r1), t + (h / 2));
                double q3 = r + (h / 2 * r2), r3 = Pull(q + (h / 2 * q2), r + (h / 2 * r2), t + (h / 2));
                double q4 = r + (h * r3), r4 = Pull(q + (h * q3), r + (h * r3), t + h);
                Deflection += h / 6 * (q1 + (2 * q2) + (2 * q3) + q4);
                _rate += h / 6 * (r1 + (2 * r2) + (2 * r3) + r4);
            }
        }
    }
}
