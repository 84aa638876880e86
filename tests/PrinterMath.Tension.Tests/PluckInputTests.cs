using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>Recordings that nobody should pass, and very long ones.</summary>
public sealed class PluckInputTests
{
    private static readonly Belt Usual = new(120, 60, 1e-4, 0.2);

    [Theory]
    [InlineData(2_000)]
    [InlineData(48_000)]
    [InlineData(192_000)]
    public void TenMillisecondsHoldNoAnswer(double rate)
    {
        double[] x = new double[(int)(0.01 * rate)];
        SpoiltRecording.Strike(x, rate, 0, Usual, 1, new Random(5001));
        PluckReading reading = Pluck.Read(Signal(x, rate));
        Assert.False(reading.TryGetFundamental(out _));
        Assert.Contains(reading.Findings, f => f.Severity == FindingSeverity.Blocking && f.Code is PluckFindings.None or PluckFindings.TooShort);
    }

    [Theory]
    [InlineData(0.0, 1)]
    [InlineData(0.0, 48_000)]
    [InlineData(0.3, 48_000)]
    [InlineData(-1e300, 48_000)]
    [InlineData(5e-324, 48_000)]
    public void ConstantsHoldNoPluck(double level, int count)
    {
        double[] x = new double[count];
        Array.Fill(x, level);
        Finding blocking = Assert.Single(Pluck.Read(Signal(x, 48_000)).Findings, f => f.Severity == FindingSeverity.Blocking);
        Assert.Equal(PluckFindings.None, blocking.Code);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void WhatIsNoNumberIsRefusedWithItsPlace(double value)
    {
        double[] x = new double[1000];
        x[617] = value;
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => Signal(x, 48_000));
        Assert.Equal("samples[617]", refused.ParamName);
    }

    // 48 kHz said to be 48 Hz or 48 MHz.
    [Theory]
    [InlineData(48)]
    [InlineData(1_999.9)]
    [InlineData(192_000.1)]
    [InlineData(48_000_000)]
    public void RateOutOfRangeIsRefused(double rate)
    {
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => Pluck.Read(Signal(new double[1000], rate)));
        Assert.Equal("signal.SampleRate", refused.ParamName);
        Assert.Equal(rate, refused.ActualValue);
        Assert.Contains("from 2000 to 192000", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ClippedAttackLeavesTheDecay()
    {
        double[] x = Struck(48_000, 1.5, 0.2);
        double limit = 0.97 * x.Max();
        PluckReading reading = Pluck.Read(Signal([.. x.Select(v => Math.Clamp(v, -limit, limit))], 48_000));
        Finding clipped = Assert.Single(reading.Findings, f => f.Code == PluckFindings.Clipped);
        Assert.InRange(clipped.Numbers[2].Value, 0, 0.03);
        Assert.Equal(120, reading.Fundamental.SiValue, 0.2);
        Assert.Contains(reading.Partials, p => p.TryGetDecayTime(out _));
    }

    [Fact]
    public void HardClippingIsMeasuredAndAnswered()
    {
        double[] x = Struck(48_000, 1.5, 0.2);
        double limit = 0.08 * x.Max();
        PluckReading reading = Pluck.Read(Signal([.. x.Select(v => Math.Clamp(v, -limit, limit))], 48_000));
        Finding clipped = Assert.Single(reading.Findings, f => f.Code == PluckFindings.Clipped);
        Assert.InRange(clipped.Numbers[1].Value, 0.02, 0.9);
        Assert.True(clipped.Numbers[2].Value > 0.1);
        Assert.Equal(120, reading.Fundamental.SiValue, 0.5);
        Assert.DoesNotContain(reading.Partials, p => p.TryGetDecayTime(out _));
    }

    [Fact]
    public void ReadingCanBeCalledOffAndSaysHowFarItIs()
    {
        SampledSignal signal = Signal(Struck(22_050, 1, 0.2), 22_050);
        using CancellationTokenSource off = new();
        off.Cancel();
        Assert.Throws<OperationCanceledException>(() => Pluck.Read(signal, cancellation: off.Token));
        Told told = new();
        Pluck.Read(signal, progress: told);
        Assert.Equal(1, told.Done[^1]);
        Assert.Equal(told.Done.Order(), told.Done);
    }

    // Ten minutes at 48 kHz are 230 MB. Envelope, its running mean and a sorted copy are 8 bytes for each 5 ms: 3 MB, and plucks take turns in rented memory.
    [Fact]
    public void TenMinutesTakeLittleMemoryAndNothingIsLostSilently()
    {
        const double rate = 48_000;
        SampledSignal signal = Signal(Repeated(600, 2, rate), rate);
        long before = GC.GetAllocatedBytesForCurrentThread();
        PluckReading reading = Pluck.Read(signal);
        long used = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.True(used < 20_000_000, $"{used} bytes");
        Assert.Equal(120, reading.Fundamental.SiValue, 0.2);
        Finding leftOut = Assert.Single(reading.Findings, f => f.Code == PluckFindings.LeftOut);
        Assert.Equal(300, leftOut.Numbers[0].Value + reading.Plucks.Count);
        Assert.Equal(8, reading.Plucks.Count);
    }

    // Four times the length, at most eight times the time: quadratic growth would be sixteen times. The faster of three runs each.
    [Fact]
    public void TimeGrowsWithTheLengthOnly()
    {
        SampledSignal shorter = Signal(Repeated(60, 2, 48_000), 48_000), longer = Signal(Repeated(240, 2, 48_000), 48_000);
        Pluck.Read(shorter);
        double one = Fastest(shorter), four = Fastest(longer);
        Assert.True(four < 8 * one, $"{four} s and {one} s");

        static double Fastest(SampledSignal signal)
        {
            double best = double.PositiveInfinity;
            for (int run = 0; run < 3; run++)
            {
                Stopwatch watch = Stopwatch.StartNew();
                Pluck.Read(signal);
                best = Math.Min(best, watch.Elapsed.TotalSeconds);
            }

            return best;
        }
    }

    internal static double[] Struck(double rate, double seconds, double start)
    {
        Random random = new(5001);
        double[] x = new double[(int)(seconds * rate)];
        SpoiltRecording.Strike(x, rate, start, Usual, 1, random);
        double[] noise = SpoiltRecording.Noise(x.Length, rate, 0, random);
        double scale = 1e-3 * x.Max(Math.Abs);
        for (int i = 0; i < x.Length; i++)
        {
            x[i] += scale * noise[i];
        }

        return x;
    }

    /// <summary>The same pluck again and again, each with a level of its own.</summary>
    private static double[] Repeated(int seconds, int apart, double rate)
    {
        double[] one = Struck(rate, apart, 0.2), x = new double[(int)(seconds * rate)];
        for (int i = 0; i < x.Length; i++)
        {
            x[i] = one[i % one.Length] * (1 - (1e-3 * (i / one.Length % 37)));
        }

        return x;
    }

    private static SampledSignal Signal(double[] x, double rate) => SampledSignal.FromSamples(x, Frequency.FromHertz(rate));

    private sealed class Told : IProgress<double>
    {
        internal List<double> Done { get; } = [];

        public void Report(double value) => Done.Add(value);
    }
}
