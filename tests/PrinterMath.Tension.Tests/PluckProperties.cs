using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>A seed for the simulator.</summary>
public readonly record struct PluckSeed(int Value);

public static class PluckArbitraries
{
    public static Arbitrary<PluckSeed> Seeds() => Arb.From(Gen.Choose(0, 1_000_000).Select(i => new PluckSeed(i)));
}

[Properties(Arbitrary = [typeof(PluckArbitraries)], MaxTest = 40)]
public class PluckProperties
{
    private static readonly PluckScene Scene = new() { SampleRate = 16_000, Seconds = 1, LowestFundamental = 60, Stray = 0.001 };

    // A power of two scales every product exactly, so nothing may change.
    [Property]
    public bool LoudnessDoesNotMatter(PluckSeed seed)
    {
        SampledSignal signal = SimulatedPluck.Make(Scene, seed.Value).Signal;
        double[] softer = [.. signal.Samples.ToArray().Select(v => v / 64)];
        return Same(Pluck.Read(signal), Pluck.Read(SampledSignal.FromSamples(softer, signal.SampleRate)), 1e-12);
    }

    // Sign and a constant offset carry no pitch; the offset is taken off with rounding of 1e-16 of it, far below 1e-6 of the frequency.
    [Property]
    public bool SignAndOffsetDoNotMatter(PluckSeed seed)
    {
        SampledSignal signal = SimulatedPluck.Make(Scene, seed.Value).Signal;
        double[] moved = [.. signal.Samples.ToArray().Select(v => 0.5 - v)];
        return Same(Pluck.Read(signal), Pluck.Read(SampledSignal.FromSamples(moved, signal.SampleRate)), 1e-6);
    }

    // Reading the same bits again gives the same bits.
    [Property]
    public bool ReadingIsDeterministic(PluckSeed seed)
    {
        SampledSignal signal = SimulatedPluck.Make(Scene, seed.Value).Signal;
        return Same(Pluck.Read(signal), Pluck.Read(signal), 0);
    }

    // The same sound sampled at twice the rate: the windows differ by a frame and the noise is another one, hence within both intervals.
    [Property]
    public bool SampleRateDoesNotMatter(PluckSeed seed)
    {
        PluckScene quiet = Scene with { NoiseDecibels = 90, Stray = 0 };
        PluckReading slow = Pluck.Read(SimulatedPluck.Make(quiet, seed.Value).Signal);
        PluckReading fast = Pluck.Read(SimulatedPluck.Make(quiet with { SampleRate = 32_000 }, seed.Value).Signal);
        return !slow.TryGetFundamental(out Measured<Frequency> a)
            || !fast.TryGetFundamental(out Measured<Frequency> b)
            || Math.Abs(a.SiValue - b.SiValue) <= 2 * (a.SiStandardUncertainty + b.SiStandardUncertainty);
    }

    // The same samples said to be taken a little faster: everything scales but the 5 ms frames that bound the window and the 5 kHz edge of the band, so
    // another window and other partials give the answer, and the two agree as two readings of one span do: within three of each one's uncertainties.
    [Property]
    public bool FrequencyScalesWithTime(PluckSeed seed)
    {
        SampledSignal signal = SimulatedPluck.Make(Scene with { Stray = 0 }, seed.Value).Signal;
        SampledSignal faster = SampledSignal.FromSamples(signal.Samples, Frequency.FromHertz(1.25 * signal.SampleRateHertz));
        return !Pluck.Read(signal).TryGetFundamental(out Measured<Frequency> a)
            || !Pluck.Read(faster).TryGetFundamental(out Measured<Frequency> b)
            || Math.Abs((b.SiValue / 1.25) - a.SiValue) <= 3 * (a.SiStandardUncertainty + (b.SiStandardUncertainty / 1.25));
    }

    /// <summary>Both refuse, or both answer with the same frequency.</summary>
    private static bool Same(PluckReading one, PluckReading other, double tolerance)
    {
        bool first = one.TryGetFundamental(out Measured<Frequency> a), second = other.TryGetFundamental(out Measured<Frequency> b);
        return first && second ? Math.Abs((b.SiValue / a.SiValue) - 1) <= tolerance : first == second;
    }
}
