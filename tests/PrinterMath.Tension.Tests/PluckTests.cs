using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public class PluckTests
{
    private static readonly PluckScene Plain = new() { SampleRate = 22_050, LowestFundamental = 110, HighestFundamental = 110.0001, LowestQuality = 90 };

    [Fact]
    public void AnswerCarriesEverything()
    {
        PluckReading reading = Pluck.Read(SimulatedPluck.Make(Plain, 1).Signal);
        Assert.True(reading.TryGetFundamental(out Measured<Frequency> heard));
        Assert.Equal(heard, reading.Fundamental);
        Assert.Equal(110, heard.SiValue, 0.1);
        Assert.Equal(heard.SiValue, reading.StringFundamental.SiValue * Math.Sqrt(1 + reading.Inharmonicity.SiValue), 1e-9);
        Assert.Equal(1, reading.Partials[0].Number);
        Assert.True(reading.Partials.Count > 5);
        Assert.Equal(0, reading.Partials.Max(p => p.Level.Decibels), 1e-9);
        Assert.True(reading.SignalToNoise.Decibels > 10);
        Assert.InRange(reading.Window.Start.Seconds, 0.08, 0.16);
        Assert.Single(reading.Plucks);
    }

    // The fundamental decays with τ = Q/(π·f); Q lies between 90 and 100. 15 %: Hann blocks and the neighbour's beat.
    [Fact]
    public void DecayIsMeasured()
    {
        Partial first = Pluck.Read(SimulatedPluck.Make(Plain, 1).Signal).Partials[0];
        Assert.True(first.TryGetDecayTime(out Duration decay));
        Assert.InRange(decay.Seconds, 0.85 * 90 / (Math.PI * 110), 1.15 * 100 / (Math.PI * 110));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.25)]
    [InlineData(-1.0)]
    public void ConstantHasNoPluck(double level) => Refused(PluckFindings.None, Signal(22_050, 22_050, _ => level));

    [Fact]
    public void SingleSampleHasNoPluck() => Refused(PluckFindings.None, Signal(1, 8_000, _ => 1));

    [Fact]
    public void SteadyToneIsNoPluck() => Refused(PluckFindings.Steady, Signal(44_100, 22_050, t => Math.Sin(2 * Math.PI * 100 * t) + (0.5 * Math.Sin(2 * Math.PI * 200 * t))));

    [Fact]
    public void ClickIsTooShort() => Refused(PluckFindings.TooShort, Signal(300, 8_000, t => Math.Exp(-t / 0.01) * Math.Sin(2 * Math.PI * 200 * t)));

    [Fact]
    public void LowSampleRateIsNamed()
    {
        PluckReading reduced = Pluck.Read(Signal(4_000, 2_000, Decaying(100)));
        Assert.Contains(reduced.Findings, f => f.Code == PluckFindings.RangeReduced);
        Assert.Throws<ArgumentOutOfRangeException>(() => Pluck.Read(Signal(400, 40, Decaying(5))));
    }

    [Fact]
    public void ClippingIsNamedAndTheFrequencySurvives()
    {
        PluckReading reading = Pluck.Read(Signal(22_050, 22_050, t => Math.Clamp(2 * Decaying(120)(t), -0.8, 0.8)));
        Assert.Contains(reading.Findings, f => f.Code == PluckFindings.Clipped && f.Severity == FindingSeverity.Caution);
        Assert.Equal(120, reading.Fundamental.SiValue, 0.2);
    }

    [Fact]
    public void HumIsSetAside()
    {
        PluckScene scene = Plain with { Hum = 0.05, Seconds = 2 };
        PluckReading reading = Pluck.Read(SimulatedPluck.Make(scene, 3).Signal);
        Assert.Contains(reading.Findings, f => f.Code == PluckFindings.Hum);
        Assert.Equal(110, reading.Fundamental.SiValue, 0.3);
    }

    [Fact]
    public void GlideIsNamedAndWidensTheUncertainty()
    {
        PluckReading gliding = Pluck.Read(SimulatedPluck.Make(Plain with { Glide = 0.02 }, 1).Signal);
        Assert.Contains(gliding.Findings, f => f.Code == PluckFindings.Glide && f.Numbers[0].Value < 0);
        Assert.True(gliding.Fundamental.SiStandardUncertainty > 2 * Pluck.Read(SimulatedPluck.Make(Plain, 1).Signal).Fundamental.SiStandardUncertainty);
    }

    [Fact]
    public void SeveralPlucksAreCombined()
    {
        PluckReading reading = Pluck.Read(SimulatedPluck.Make(Plain with { Plucks = 4, Seconds = 5 }, 5).Signal);
        Assert.Equal(4, reading.Plucks.Count(p => p.IsUsed));
        Assert.Contains(reading.Findings, f => f.Code == PluckFindings.Several);
        Assert.Equal(110, reading.Fundamental.SiValue, 0.1);
    }

    [Fact]
    public void DisagreeingPlucksAreNamed()
    {
        Func<double, double> low = Decaying(100), high = Decaying(130);
        SampledSignal two = Signal(66_150, 22_050, t => t < 1.5 ? low(t) : high(t - 1.5));
        Refused(PluckFindings.Disagree, two);
        SampledSignal three = Signal(99_225, 22_050, t => t < 1.5 ? low(t) : t < 3 ? high(t - 1.5) : low(t - 3));
        PluckReading reading = Pluck.Read(three);
        Assert.Contains(reading.Findings, f => f.Code == PluckFindings.Outlier);
        Assert.Equal(100, reading.Fundamental.SiValue, 0.1);
    }

    [Fact]
    public void OptionsAreChecked()
    {
        SampledSignal signal = Signal(22_050, 22_050, Decaying(100));
        Assert.Throws<ArgumentNullException>(() => Pluck.Read(null!));
        Assert.Throws<ArgumentOutOfRangeException>(() => Pluck.Read(signal, new PluckOptions { LowestFundamental = Frequency.FromHertz(1) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Pluck.Read(signal, new PluckOptions { HighestFundamental = Frequency.FromHertz(15) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Pluck.Read(signal, new PluckOptions { LongestWindow = Duration.FromSeconds(60) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Pluck.Read(signal, new PluckOptions { MostPlucks = 0 }));
    }

    // A minute of recording: the answer comes from the one pluck in it.
    [Fact]
    public void PluckInALongRecordingIsFound()
    {
        Func<double, double> pluck = Decaying(140);
        PluckReading reading = Pluck.Read(Signal(60 * 8_000, 8_000, t => t < 30 ? 1e-4 * Math.Sin(7919 * t * t) : pluck(t - 30)));
        Assert.Equal(140, reading.Fundamental.SiValue, 0.1);
        Assert.Equal(30, reading.Window.Start.Seconds, 0.05);
    }

    private static Func<double, double> Decaying(double f) =>
        t => Math.Exp(-t / 0.25) * (Math.Sin(2 * Math.PI * f * t) + (0.6 * Math.Sin(4 * Math.PI * f * t)) + (0.4 * Math.Sin(6 * Math.PI * f * t))
            + (0.3 * Math.Sin(8 * Math.PI * f * t)) + (0.2 * Math.Sin(10 * Math.PI * f * t))) / 2.5;

    private static SampledSignal Signal(int count, double rate, Func<double, double> at) =>
        SampledSignal.FromSamples([.. Enumerable.Range(0, count).Select(i => at(i / rate))], Frequency.FromHertz(rate));

    private static void Refused(string code, SampledSignal signal)
    {
        PluckReading reading = Pluck.Read(signal);
        Assert.False(reading.TryGetFundamental(out _), reading.ToString());
        Assert.Contains(reading.Findings, f => f.Code == code && f.Severity == FindingSeverity.Blocking);
        Assert.Equal(code, Assert.Throws<IndeterminateException>(() => reading.Fundamental).Finding!.Code);
        Assert.Empty(reading.Partials);
    }
}
