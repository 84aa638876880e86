using System.Globalization;
using System.Numerics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class CrossSpectrumTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(1000);
    private static readonly WelchOptions Short = new() { SegmentLength = 256 };

    // SciPy 1.10.1, scipy.signal.csd and scipy.signal.coherence, by data/csd_scipy.py: 1e-12 of the largest density, and 1e-9 relative above 1e-9 of the largest.
    // A coherence is a quotient of such densities: 1e-9.
    [Theory]
    [InlineData("hann512", SpectralWindow.Hann, 512, 0.5, Detrending.Mean)]
    [InlineData("hamming333", SpectralWindow.Hamming, 333, 0.5, Detrending.Mean)]
    [InlineData("blackman500", SpectralWindow.Blackman, 500, 0.75, Detrending.Line)]
    [Trait("Evidence", "Published")]
    public void Equals_SciPy(string name, SpectralWindow window, int length, double overlap, Detrending detrend)
    {
        double[][] expected = [.. File.ReadLines(DataFile.Path("csd_scipy.csv"))
            .Select(line => line.Split(','))
            .Where(cells => cells[0] == name)
            .Select(cells => (double[])[.. cells.Skip(2).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))])];
        CrossSpectrum spectrum = CrossSpectrum.Estimate(
            DataFile.HammerForce(),
            DataFile.HammerResponse(),
            new WelchOptions { SegmentLength = length, Overlap = overlap, Window = window, Detrend = detrend });
        Assert.Equal(expected.Length, spectrum.Count);
        double largest = expected.Max(row => new Complex(row[0], row[1]).Magnitude);
        for (int i = 0; i < expected.Length; i++)
        {
            var density = new Complex(expected[i][0], expected[i][1]);
            double off = (spectrum.Densities[i] - density).Magnitude;
            Assert.InRange(off, 0, 1e-12 * largest);
            if (density.Magnitude > 1e-9 * largest)
            {
                Assert.InRange(off / density.Magnitude, 0, 1e-9);
                Assert.Equal(expected[i][2], spectrum.Coherences[i], 1e-9);
            }
        }
    }

    [Fact]
    public void Of_a_signal_with_itself_it_is_the_power_spectrum()
    {
        SampledSignal noise = SampledSignal.FromSamples(WelchTests.Noise(4096, 5), Rate);
        PowerSpectrum power = Welch.Estimate(noise, Short);
        CrossSpectrum both = CrossSpectrum.Estimate(noise, noise, Short);
        for (int i = 0; i < power.Count; i++)
        {
            Assert.Equal(power.Densities[i], both.First.Densities[i]);
            Assert.Equal(power.Densities[i], both.Second.Densities[i]);
            Assert.Equal(power.Densities[i], both.Densities[i].Real, 1e-15 * power.Densities[1]);
            Assert.Equal(0, both.Densities[i].Imaginary);
        }
    }

    [Fact]
    public void Exchange_conjugates_the_densities_and_keeps_the_coherence()
    {
        SampledSignal a = SampledSignal.FromSamples(WelchTests.Noise(4096, 6), Rate), b = SampledSignal.FromSamples(WelchTests.Noise(4096, 7), Rate);
        CrossSpectrum ab = CrossSpectrum.Estimate(a, b, Short), ba = CrossSpectrum.Estimate(b, a, Short);
        for (int i = 0; i < ab.Count; i++)
        {
            Assert.Equal(ab.Densities[i], Complex.Conjugate(ba.Densities[i]));
            Assert.Equal(ab.Coherences[i], ba.Coherences[i], 1e-15);
        }
    }

    // A second signal three samples late: phase -2π·f·3/rate where the window is much longer than the delay; positive would mean that it leads.
    [Fact]
    public void A_late_second_signal_has_a_negative_phase()
    {
        double[] noise = WelchTests.Noise(65539, 8);
        CrossSpectrum both = CrossSpectrum.Estimate(
            SampledSignal.FromSamples(noise.AsSpan(3), Rate), SampledSignal.FromSamples(noise.AsSpan(0, 65536), Rate), new WelchOptions { SegmentLength = 1024 });
        for (int i = 10; i < 100; i++)
        {
            Assert.Equal(-2 * Math.PI * 3 * i / 1024, both.Densities[i].Phase, 0.03);
        }
    }

    // Bendat and Piersol 2010, table 9.6 (from memory): γ² = 0.9 and n = 16 give u(γ²) = √2·0.1·√0.9/4 = 0.0335. Here: 4000 records of 16 separate segments, whose scatter
    // is known to 2 %, and the large-sample formula to some 1/n.
    [Fact]
    public void Coherence_scatters_as_stated()
    {
        const int records = 4000;
        var options = new WelchOptions { SegmentLength = 16, Overlap = 0, Detrend = Detrending.None, Window = SpectralWindow.Rectangular };
        double[] coherences = new double[records];
        double stated = 0;
        for (int k = 0; k < records; k++)
        {
            double[] u = WelchTests.Noise(256, 10_000 + k), e = WelchTests.Noise(256, 50_000 + k);
            CrossSpectrum both = CrossSpectrum.Estimate(
                SampledSignal.FromSamples(u, Rate), SampledSignal.FromSamples([.. u.Zip(e, (a, b) => a + (b / 3))], Rate), options);
            Assert.True(both.TryGetCoherence(3, out Measured<double> coherence));
            coherences[k] = coherence.SiValue;
            stated += coherence.StandardUncertainty / records;
        }

        double mean = coherences.Average();
        double scatter = Math.Sqrt(coherences.Sum(c => (c - mean) * (c - mean)) / (records - 1));
        Assert.Equal(0.9, mean, 0.01);
        Assert.InRange(scatter, 0.0335 * 0.9, 0.0335 * 1.1);
        Assert.InRange(stated / scatter, 0.9, 1.1);
    }

    [Fact]
    public void One_segment_has_no_coherence()
    {
        SampledSignal signal = SampledSignal.FromSamples(WelchTests.Noise(300, 1), Rate);
        CrossSpectrum both = CrossSpectrum.Estimate(signal, signal, Short);
        Assert.False(both.TryGetCoherence(3, out _));
        Assert.Equal(SpectrumFindings.OneSegment, Assert.Throws<IndeterminateException>(() => both.Coherences.Length).Finding!.Code);
        Assert.True(both.Densities[3].Real > 0);
    }

    [Fact]
    public void A_dead_channel_has_coherence_nil_and_not_NaN()
    {
        SampledSignal dead = SampledSignal.FromSamples(new double[1024], Rate), noise = SampledSignal.FromSamples(WelchTests.Noise(1024, 1), Rate);
        CrossSpectrum both = CrossSpectrum.Estimate(dead, noise, Short);
        Assert.All(both.Coherences.ToArray(), coherence => Assert.Equal(0, coherence));
        Assert.False(both.TryGetCoherence(3, out _));
    }

    // 1e-150 of the signals' size: the product of two densities would vanish.
    [Fact]
    public void Tiny_signals_keep_their_coherence()
    {
        double[] u = WelchTests.Noise(4096, 1), e = WelchTests.Noise(4096, 2);
        CrossSpectrum Of(double scale) => CrossSpectrum.Estimate(
            SampledSignal.FromSamples([.. u.Select(v => v * scale)], Rate), SampledSignal.FromSamples([.. u.Zip(e, (a, b) => (a + b) * scale)], Rate), Short);
        CrossSpectrum plain = Of(1), tiny = Of(1e-140);
        for (int i = 0; i < plain.Count; i++)
        {
            Assert.Equal(plain.Coherences[i], tiny.Coherences[i], 1e-12);
        }
    }

    [Fact]
    public void Signals_of_unlike_length_or_rate_are_refused()
    {
        SampledSignal signal = SampledSignal.FromSamples(new double[512], Rate);
        Assert.Equal("second", Assert.Throws<ArgumentException>(() => CrossSpectrum.Estimate(signal, SampledSignal.FromSamples(new double[513], Rate), Short)).ParamName);
        Assert.Equal("second", Assert.Throws<ArgumentException>(() => CrossSpectrum.Estimate(signal, SampledSignal.FromSamples(new double[512], Rate * 2), Short)).ParamName);
    }
}
