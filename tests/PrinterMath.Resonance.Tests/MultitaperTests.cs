using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class MultitaperTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(1000);

    // SciPy's tapers and NumPy's transform, by data/multitaper_numpy.py: 1e-12 of the largest density, and 1e-9 relative above 1e-9 of the largest.
    // Adaptive weights know 1 − λ to the rounding of transforms only, 1e-14 on either side, which counts by the noise over the density.
    [Theory]
    [InlineData(TaperWeighting.Concentration)]
    [InlineData(TaperWeighting.Adaptive)]
    [Trait("Evidence", "Published")]
    public void Equals_SciPy_and_NumPy(TaperWeighting weighting)
    {
        double[][] expected = [.. File.ReadLines(DataFile.Path("multitaper_numpy.csv")).Skip(1)
            .Select(line => (double[])[.. line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))])];
        SampledSignal hammer = DataFile.HammerResponse();
        MultitaperSpectrum spectrum = Multitaper.Estimate(
            SampledSignal.FromSamples(hammer.Samples[..1000], hammer.SampleRate), new MultitaperOptions { Weighting = weighting });
        int column = weighting == TaperWeighting.Adaptive ? 2 : 1;
        double largest = expected.Max(row => row[column]);
        double noise = weighting == TaperWeighting.Adaptive ? expected.Average(row => row[column]) : 0;
        Assert.Equal(expected.Length, spectrum.Count);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i][column], spectrum.Densities[i], 1e-12 * largest);
            if (expected[i][column] > 1e-9 * largest)
            {
                double rounding = 2e-14 * noise / expected[i][column];
                Assert.Equal(1, spectrum.Densities[i] / expected[i][column], 1e-9 + rounding);
                Assert.Equal(1, weighting == TaperWeighting.Adaptive ? spectrum.DegreesOfFreedom[i] / expected[i][3] : 1, 1e-9 + (10 * rounding));
            }
        }
    }

    // White noise of variance 1 has 2/rate everywhere. Lines farther apart than 2W are nearly independent; the 99.9 % binomial limits of evidence from 500 records of 12 lines.
    [Theory]
    [InlineData(TaperWeighting.Concentration)]
    [InlineData(TaperWeighting.Adaptive)]
    public void Confidence_band_holds_the_truth(TaperWeighting weighting)
    {
        const int records = 500, lines = 12;
        int held = 0;
        for (int seed = 0; seed < records; seed++)
        {
            MultitaperSpectrum spectrum = Multitaper.Estimate(
                SampledSignal.FromSamples(WelchTests.Noise(256, 300_000 + seed), Rate), new MultitaperOptions { Weighting = weighting });
            for (int j = 1; j <= lines; j++)
            {
                (double low, double high) = spectrum.ConfidenceFactors(j * 9);
                held += spectrum.Densities[j * 9] * low <= 0.002 && 0.002 <= spectrum.Densities[j * 9] * high ? 1 : 0;
            }
        }

        double allowed = 3.29 * Math.Sqrt(0.95 * 0.05 / (records * lines));
        Assert.InRange(held / (double)(records * lines), 0.95 - allowed, 0.95 + allowed);
    }

    // A strong low tone of 1e5 times the noise's root: far from it, Slepian tapers leak 1e-10 of its power at most by the first, and 1e-3 by the seventh; adaptive weights leave the seventh out.
    [Fact]
    public void Adaptive_weights_keep_leakage_out()
    {
        double[] samples = WelchTests.Noise(1024, 77);
        for (int n = 0; n < samples.Length; n++)
        {
            samples[n] += 1e5 * Math.Sin(0.1 * n);
        }

        SampledSignal signal = SampledSignal.FromSamples(samples, Rate);
        double Floor(TaperWeighting weighting) => Multitaper.Estimate(signal, new MultitaperOptions { Weighting = weighting }).Densities[300..500].ToArray().Average();
        Assert.InRange(Floor(TaperWeighting.Adaptive), 0.0015, 0.0025);
        Assert.True(Floor(TaperWeighting.Concentration) > 0.01);
    }

    // Σw² = 1 for each taper: of white noise the total power is the mean square, but for the end samples, which tapers weigh less: 4096 values of variance 9, seven tapers, one standard deviation is 0.0047.
    [Fact]
    public void Total_power_is_the_mean_square()
    {
        double[] noise = [.. WelchTests.Noise(4096, 5).Select(v => 3 * v)];
        MultitaperSpectrum spectrum = Multitaper.Estimate(SampledSignal.FromSamples(noise, Rate));
        double sum = spectrum.Densities.ToArray().Sum() * spectrum.Spacing.Hertz;
        Assert.Equal(1, sum / noise.Average(v => v * v), 0.015);
    }

    [Fact]
    public void Scales_with_the_square_of_the_signal()
    {
        double[] noise = WelchTests.Noise(333, 6);
        var options = new MultitaperOptions { Weighting = TaperWeighting.Adaptive, TimeBandwidth = 2.5 };
        MultitaperSpectrum one = Multitaper.Estimate(SampledSignal.FromSamples(noise, Rate), options);
        MultitaperSpectrum thousand = Multitaper.Estimate(SampledSignal.FromSamples([.. noise.Select(v => 1000 * v)], Rate), options);
        for (int i = 1; i < one.Count; i++)
        {
            Assert.Equal(1e6, thousand.Densities[i] / one.Densities[i], 1e-3);
        }
    }

    [Fact]
    public void A_constant_signal_holds_nothing_and_no_NaN()
    {
        SampledSignal constant = SampledSignal.FromSamples([.. Enumerable.Repeat(9.81, 100)], Rate);
        foreach (TaperWeighting weighting in Enum.GetValues<TaperWeighting>())
        {
            MultitaperSpectrum spectrum = Multitaper.Estimate(constant, new MultitaperOptions { Weighting = weighting });
            Assert.All(spectrum.Densities.ToArray(), density => Assert.InRange(density, 0, 1e-25));
            Assert.All(spectrum.DegreesOfFreedom.ToArray(), freedom => Assert.InRange(freedom, 1, 14.0000001));
        }
    }

    [Fact]
    public void Bad_options_are_refused()
    {
        SampledSignal signal = SampledSignal.FromSamples(WelchTests.Noise(100, 1), Rate);
        Assert.Equal("signal", Assert.Throws<ArgumentOutOfRangeException>(() => Multitaper.Estimate(SampledSignal.FromSamples(new double[7], Rate))).ParamName);
        foreach (MultitaperOptions bad in (MultitaperOptions[])
            [new() { TimeBandwidth = 0.5 }, new() { TimeBandwidth = double.NaN }, new() { Tapers = 9 }, new() { Tapers = 0 }, new() { Weighting = (TaperWeighting)7 }, new() { Detrend = (Detrending)7 }])
        {
            Assert.Equal("options", Assert.Throws<ArgumentOutOfRangeException>(() => Multitaper.Estimate(signal, bad)).ParamName);
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => Multitaper.Estimate(signal).ConfidenceFactors(51));
    }

    [Fact]
    public void Text_says_over_what_it_smooths() =>
        Assert.Equal("0 to 500 Hz in steps of 10 Hz, each over ±40 Hz, 7 tapers", Multitaper.Estimate(SampledSignal.FromSamples(WelchTests.Noise(100, 1), Rate)).ToString());
}
