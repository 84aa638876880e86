using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class WelchTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(3200);

    // Rectangular, no overlap, nothing removed: Parseval's theorem says that the densities integrate to the mean square. Rounding only.
    [Theory]
    [InlineData(64)]
    [InlineData(75)]
    [InlineData(2)]
    public void Densities_integrate_to_the_mean_square(int length)
    {
        double[] noise = Noise(length * 8, 3);
        PowerSpectrum spectrum = Welch.Estimate(
            SampledSignal.FromSamples(noise, Rate),
            new WelchOptions { SegmentLength = length, Overlap = 0, Window = SpectralWindow.Rectangular, Detrend = Detrending.None });
        Assert.Equal(1, spectrum.TotalPower / noise.Average(v => v * v), 1e-13);
    }

    // A tone A·cos on a bin holds A²/2, spread by Hann over three bins: A²/2 in all, and at its bin A²/2 over the noise bandwidth.
    [Fact]
    public void A_tone_keeps_its_power()
    {
        double[] tone = [.. Enumerable.Range(0, 8192).Select(n => 3 * Math.Cos((2 * Math.PI * 64 * n / 1024) + 0.3))];
        PowerSpectrum spectrum = Welch.Estimate(SampledSignal.FromSamples(tone, Rate), new WelchOptions { SegmentLength = 1024 });
        Assert.Equal(4.5, spectrum.TotalPower, 1e-10);
        Assert.Equal(4.5 / spectrum.NoiseBandwidth.Hertz, spectrum.Densities[64], 1e-10);
        Assert.Equal(200, spectrum.FrequencyAt(64).Hertz, 1e-9);
    }

    // White noise of variance 1 has 2/rate everywhere; 95 % of the averaged densities lie in the band, within four binomial standard deviations for correlated bins.
    [Fact]
    public void Confidence_band_holds_the_truth()
    {
        int held = 0, all = 0;
        for (int seed = 1; seed <= 40; seed++)
        {
            PowerSpectrum spectrum = Welch.Estimate(SampledSignal.FromSamples(Noise(4096, seed), Rate), new WelchOptions { SegmentLength = 256 });
            (double low, double high) = spectrum.ConfidenceFactors(0.95);
            for (int i = 4; i < spectrum.Count - 4; i += 3)
            {
                all++;
                held += spectrum.Densities[i] * low <= 2.0 / 3200 && 2.0 / 3200 <= spectrum.Densities[i] * high ? 1 : 0;
            }
        }

        Assert.InRange(held / (double)all, 0.95 - (4 * Math.Sqrt(0.95 * 0.05 / all)), 0.95 + (4 * Math.Sqrt(0.95 * 0.05 / all)));
    }

    [Fact]
    public void Bad_options_are_refused()
    {
        SampledSignal signal = SampledSignal.FromSamples(new double[100], Rate);
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.Estimate(signal));
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.Estimate(signal, new WelchOptions { SegmentLength = 50, Overlap = 1 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.Estimate(signal, new WelchOptions { SegmentLength = 50, Overlap = double.NaN }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.Estimate(signal, new WelchOptions { SegmentLength = 50, Window = (SpectralWindow)99 }));
    }

    internal static double[] Noise(int count, int seed)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(_ => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()))];
    }
}
