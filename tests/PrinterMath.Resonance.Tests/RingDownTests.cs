using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class RingDownTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(3200);

    private static readonly RingDownOptions NoClockError = new() { RelativeClockUncertainty = 0 };

    [Theory]
    [InlineData(50, 0.05)]
    [InlineData(37.3, 0.002)]
    [InlineData(120, 0.2)]
    public void A_decay_without_noise_is_read_exactly(double hertz, double zeta)
    {
        double[] decay = DecaySimulator.Decay(1600, 3200, hertz, zeta, 3, 0.3);
        ModeSet found = RingDown.Fit(SampledSignal.FromSamples(decay, Rate));
        Mode mode = Assert.Single(found.Modes);
        Assert.Equal(1, mode.Frequency.SiValue / hertz, 1e-8);
        Assert.Equal(1, mode.DampingRatio.SiValue / zeta, 1e-6);
        Assert.Equal(3, mode.Amplitude.SiValue, 1e-6);
        Assert.Equal(hertz * Math.Sqrt(1 - (zeta * zeta)), mode.DampedFrequency.SiValue, 1e-6 * hertz);
        Assert.Equal(1, found.ExplainedShare, 1e-9);
    }

    // The clock's share stands in the frequency and in nothing else.
    [Fact]
    public void Clock_uncertainty_joins_the_frequency()
    {
        double[] samples = DecaySimulator.Add(DecaySimulator.Decay(1600, 3200, 50, 0.05, 1, 0.3), DecaySimulator.Noise("white", 1600, 1), 0.05);
        Mode without = RingDown.Fit(SampledSignal.FromSamples(samples, Rate), NoClockError).Dominant;
        Mode with = RingDown.Fit(SampledSignal.FromSamples(samples, Rate), new RingDownOptions { RelativeClockUncertainty = 0.01 }).Dominant;
        double clock = 0.01 * with.Frequency.SiValue;
        Assert.Equal(Math.Sqrt(Math.Pow(without.Frequency.SiStandardUncertainty, 2) + (clock * clock)), with.Frequency.SiStandardUncertainty, 1e-12);
        Assert.Equal(without.DampingRatio, with.DampingRatio);
    }

    [Fact]
    public void The_start_sets_the_blow_aside()
    {
        double[] decay = DecaySimulator.Decay(1600, 3200, 50, 0.05, 1, 0.3);
        double[] samples = [.. DecaySimulator.Noise("white", 320, 4).Select(v => 20 * v), .. decay];
        Mode mode = RingDown.Fit(SampledSignal.FromSamples(samples, Rate), new RingDownOptions { Start = Duration.FromSeconds(0.1) }).Dominant;
        Assert.Equal(50, mode.Frequency.SiValue, 1e-6);
    }

    [Fact]
    public void A_steady_tone_is_not_a_mode()
    {
        double[] samples = DecaySimulator.Add(
            DecaySimulator.Add(DecaySimulator.Decay(6400, 3200, 61, 0.03, 1, 0.3), DecaySimulator.Decay(6400, 3200, 100, 0, 0.4, 1), 1),
            DecaySimulator.Noise("white", 6400, 9),
            0.05);
        ModeSet found = RingDown.Fit(SampledSignal.FromSamples(samples, Rate));
        Assert.Equal(61, Assert.Single(found.Modes).Frequency.SiValue, 0.1);
        Finding tone = Assert.Single(found.Findings);
        Assert.Equal(ModeFindings.SteadyTone, tone.Code);
        Assert.Equal(100, tone.Numbers.Single(n => n.Name == "frequency").Value, 0.05);
    }

    [Fact]
    public void Two_close_modes_are_told_apart()
    {
        double[] samples = DecaySimulator.Add(
            DecaySimulator.Add(DecaySimulator.Decay(3200, 3200, 47, 0.03, 1, 0.3), DecaySimulator.Decay(3200, 3200, 55, 0.04, 0.7, 2), 1),
            DecaySimulator.Noise("white", 3200, 11),
            0.01);
        ModeSet found = RingDown.Fit(SampledSignal.FromSamples(samples, Rate), NoClockError);
        Assert.Equal(2, found.Modes.Count);
        Assert.All(found.Modes.Zip([47.0, 55.0]), pair => Assert.True(Math.Abs(pair.First.Frequency.SiValue - pair.Second) < 4 * pair.First.Frequency.SiStandardUncertainty));
    }

    [Fact]
    public void Too_short_and_empty_records_say_so()
    {
        ModeSet empty = RingDown.Fit(SampledSignal.FromSamples(new double[500], Rate));
        Assert.False(empty.TryGetDominant(out _));
        Assert.Equal(ModeFindings.None, Assert.Throws<IndeterminateException>(() => empty.Dominant).Finding!.Code);
        Assert.Equal(ModeFindings.TooShort, Assert.Single(RingDown.Fit(SampledSignal.FromSamples(new double[20], Rate)).Findings).Code);
        Assert.Throws<ArgumentOutOfRangeException>(() => RingDown.Fit(SampledSignal.FromSamples(new double[500], Rate), new RingDownOptions { Start = Duration.FromSeconds(1) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => RingDown.Fit(SampledSignal.FromSamples(new double[500], Rate), new RingDownOptions { MostModes = 0 }));
    }
}
