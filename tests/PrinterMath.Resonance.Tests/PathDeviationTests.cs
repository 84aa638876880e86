using FsCheck.Xunit;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

[Properties(Arbitrary = [typeof(SequenceArbitrary)], MaxTest = 100)]
public sealed class PathDeviationTests
{
    private static readonly ImpulseSequence Sequence = ImpulseSequence.ExtraInsensitive(Frequency.FromHertz(50), 0);

    // (v·MAD + a·var/2)·sin(θ/2) for a symmetric sequence, from a full stop a·var/2·sin(θ/2).
    [Theory]
    [InlineData(0.1, 3, 90)]
    [InlineData(0, 3, 90)]
    [InlineData(0.05, 5, 30)]
    [InlineData(0.05, 5, 180)]
    public void Symmetric_sequences_follow_the_closed_form(double v, double a, double degrees)
    {
        double expected = ((v * Sequence.MeanAbsoluteDeviation.Seconds) + (a * Sequence.VarianceSquareSeconds / 2)) * Math.Sin(degrees * Math.PI / 360);
        var turn = Angle.FromDegrees(degrees);
        Length cut = PathDeviation.AtCorner(Sequence, turn, Speed.FromMetersPerSecond(v), Acceleration.FromMetersPerSecondSquared(a));
        Assert.Equal(expected, cut.Meters, 1e-12 * expected);
        if (v > 0)
        {
            Assert.Equal(v, PathDeviation.LargestCornerSpeed(Sequence, turn, cut, Acceleration.FromMetersPerSecondSquared(a)).MetersPerSecond, 1e-10);
        }
    }

    // The shaped path itself, sampled finely: no point of it is nearer to the corner, and one is as near.
    [Property]
    public bool The_sampled_path_comes_as_near_and_no_nearer(AnyCase c)
    {
        ImpulseSequence s = ImpulseSequenceReferenceTests.Make(c.Family, Frequency.FromHertz(c.Hertz), c.Zeta);
        double v = 0.08, a = 2.5, turn = c.ModeHertz / 300 * Math.PI, nearest = double.PositiveInfinity;
        for (int k = 0; k <= 4000; k++)
        {
            double t = s.Duration.Seconds * k / 4000, x = 0, y = 0;
            for (int i = 0; i < s.Count; i++)
            {
                double since = t - s.Times[i];
                double along = Math.Sign(since) * ((v * Math.Abs(since)) + (a * since * since / 2));
                x += s.Amplitudes[i] * along * (since < 0 ? 1 : Math.Cos(turn));
                y += s.Amplitudes[i] * along * (since < 0 ? 0 : Math.Sin(turn));
            }

            nearest = Math.Min(nearest, Math.Sqrt((x * x) + (y * y)));
        }

        double cut = PathDeviation.AtCorner(s, Angle.FromRadians(turn), Speed.FromMetersPerSecond(v), Acceleration.FromMetersPerSecondSquared(a)).Meters;

        // Between samples the path moves at most half a step nearer.
        return cut <= nearest + 1e-12 && cut >= nearest - (v * s.Duration.Seconds / 4000);
    }

    [Property]
    public bool Gain_is_that_of_a_sampled_sinusoid_and_no_more_than_one(AnyCase c)
    {
        ImpulseSequence s = ImpulseSequenceReferenceTests.Make(c.Family, Frequency.FromHertz(c.Hertz), c.Zeta);
        Frequency f = Frequency.FromHertz(c.ModeHertz);
        double gain = s.Gain(f), phase = s.Phase(f).Radians;
        for (int k = 0; k < 7; k++)
        {
            double t = k / 7.0 / c.ModeHertz, shaped = 0;
            for (int i = 0; i < s.Count; i++)
            {
                shaped += s.Amplitudes[i] * Math.Sin(2 * Math.PI * c.ModeHertz * (t - s.Times[i]));
            }

            if (Math.Abs(shaped - (gain * Math.Sin((2 * Math.PI * c.ModeHertz * t) + phase))) > 1e-11)
            {
                return false;
            }
        }

        return gain <= 1 + 1e-12;
    }

    // Splitting to neighbouring steps leaves sum and mean delay; with a step of a hundredth of the shortest period the residual changes by (ω·step)²/8 of the split impulses at most.
    [Property]
    public bool Rounding_to_steps_keeps_the_mean_delay(AnyCase c)
    {
        ImpulseSequence s = ImpulseSequenceReferenceTests.Make(c.Family, Frequency.FromHertz(c.Hertz), c.Zeta);
        double step = 0.01 / c.Hertz;
        ImpulseSequence rounded = s.RoundedTo(Duration.FromSeconds(step));
        Frequency f = Frequency.FromHertz(c.Hertz);
        double bound = Math.Pow(2 * Math.PI * 0.01, 2) / 8 * 1.1;
        bool onSteps = rounded.Times.ToArray().All(t => Math.Abs((t / step) - Math.Round(t / step)) < 1e-6);
        return onSteps
            && Math.Abs(rounded.MeanDelay.Seconds - s.MeanDelay.Seconds) < 1e-12
            && Math.Abs(rounded.ResidualVibration(f, c.Zeta) - s.ResidualVibration(f, c.Zeta)) <= bound + (c.Zeta * step * 2 * Math.PI * c.Hertz * s.ResidualVibration(f, c.Zeta));
    }

    [Fact]
    public void Impulses_on_steps_stay()
    {
        ImpulseSequence s = ImpulseSequence.FromImpulses([0, 0.003, 0.007], [0.25, 0.5, 0.25]);
        Assert.Equal(3, s.RoundedTo(Duration.FromMilliseconds(1)).Count);
        Assert.Equal("step", Assert.Throws<ArgumentOutOfRangeException>(() => s.RoundedTo(Duration.Zero)).ParamName);
    }

    // With damping known wrongly it leaves what the residual says at the ends of the range.
    [Property]
    public bool Ends_of_the_range_of_damping_are_at_the_level(AnyCase c)
    {
        ImpulseSequence s = ImpulseSequenceReferenceTests.Make(c.Family, Frequency.FromHertz(c.Hertz), c.Zeta);
        Frequency f = Frequency.FromHertz(c.Hertz);
        if (!s.TryGetInsensitiveDamping(f, c.Zeta, 0.06, out double low, out double high) || low > c.Zeta || high < c.Zeta)
        {
            return false;
        }

        bool atLow = low == 0 || Math.Abs(s.ResidualVibration(f, low) - 0.06) < 1e-9;
        return atLow && (high == 0.95 || Math.Abs(s.ResidualVibration(f, high) - 0.06) < 1e-9);
    }

    // A diagonal at 45° and 100 mm/s with mean delays 2 ms apart is shifted by 0.1 mm. Bead of 0.4 × 0.2 mm² = 0.08 mm² at 100 mm/s through filament of 1.75 mm with 5 ms: 0.01663 mm.
    [Fact]
    public void Delays_are_matched()
    {
        ImpulseSequence x = ImpulseSequence.FromImpulses([0, 0.010], [0.5, 0.5]), y = ImpulseSequence.FromImpulses([0, 0.006], [0.5, 0.5]);
        DelayMatch match = DelayMatch.Of(x, y);
        Assert.Equal(0, match.ExtraDelayX.Seconds);
        Assert.Equal(0.002, match.ExtraDelayY.Seconds, 1e-15);
        Assert.Equal(0.005, match.ExtruderDelay.Seconds, 1e-15);
        Assert.Equal(0.1, match.DiagonalShift(Speed.FromMillimetersPerSecond(100), Angle.FromDegrees(45)).Millimeters, 1e-12);
        Assert.Equal(0, match.DiagonalShift(Speed.FromMillimetersPerSecond(100), Angle.FromDegrees(90)).Millimeters, 1e-12);
        Assert.Equal(
            0.08 * 100 * 0.005 / (Math.PI * 1.75 * 1.75 / 4),
            match.FilamentLead(Area.FromSquareMillimeters(0.08), Speed.FromMillimetersPerSecond(100), Length.FromMillimeters(1.75)).Millimeters,
            1e-12);
        Assert.Equal("delay x by 0.000 ms, y by 2.000 ms, the extruder by 5.000 ms", match.ToString());
        Assert.Throws<ArgumentOutOfRangeException>(() => match.DiagonalShift(Speed.FromMillimetersPerSecond(-1), Angle.Zero));
    }

    [Fact]
    public void Bad_arguments_name_themselves()
    {
        Angle right = Angle.FromDegrees(90);
        Speed v = Speed.FromMillimetersPerSecond(100);
        Assert.Equal("turn", Assert.Throws<ArgumentOutOfRangeException>(() => PathDeviation.AtCorner(Sequence, Angle.FromDegrees(181), v, Acceleration.Zero)).ParamName);
        Assert.Equal("sequence", Assert.Throws<ArgumentException>(
            () => PathDeviation.OnArc(ImpulseSequence.UnityMagnitudeZeroVibration(Frequency.FromHertz(50), 0), Length.FromMillimeters(5), v)).ParamName);
        ArgumentOutOfRangeException tooFast = Assert.Throws<ArgumentOutOfRangeException>(
            () => PathDeviation.LargestCornerSpeed(Sequence, right, Length.FromMicrometers(1), Acceleration.FromMetersPerSecondSquared(10)));
        Assert.Equal("acceleration", tooFast.ParamName);
        Assert.Equal("sequence", Assert.Throws<ArgumentException>(
            () => PathDeviation.LargestCornerSpeed(ImpulseSequence.FromImpulses([0], [1]), right, Length.FromMicrometers(1), Acceleration.Zero)).ParamName);
    }
}
