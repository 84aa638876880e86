using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

[Trait("Evidence", "Published")]
public sealed class WelchReferenceTests
{
    // SciPy 1.10.1, scipy.signal.welch, by data/welch_scipy.py: 1e-12 of the largest density, and 1e-9 relative above 1e-9 of the largest.
    [Theory]
    [InlineData("hann512", SpectralWindow.Hann, 512, 0.5, Detrending.Mean)]
    [InlineData("boxcar500", SpectralWindow.Rectangular, 500, 0.0, Detrending.None)]
    [InlineData("hamming333", SpectralWindow.Hamming, 333, 0.5, Detrending.Mean)]
    [InlineData("blackman1000", SpectralWindow.Blackman, 1000, 0.75, Detrending.Line)]
    [InlineData("blackmanharris256", SpectralWindow.BlackmanHarris, 256, 0.5, Detrending.Mean)]
    public void Equals_SciPy(string name, SpectralWindow window, int length, double overlap, Detrending detrend)
    {
        double[] expected = [.. File.ReadLines(DataFile.Path("welch_scipy.csv"))
            .Select(line => line.Split(','))
            .Where(cells => cells[0] == name)
            .Select(cells => double.Parse(cells[2], CultureInfo.InvariantCulture))];
        PowerSpectrum spectrum = Welch.Estimate(
            DataFile.HammerResponse(),
            new WelchOptions { SegmentLength = length, Overlap = overlap, Window = window, Detrend = detrend });
        Assert.Equal(expected.Length, spectrum.Count);
        double largest = expected.Max();
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], spectrum.Densities[i], 1e-12 * largest);
            if (expected[i] > 1e-9 * largest)
            {
                Assert.Equal(1, spectrum.Densities[i] / expected[i], 1e-9);
            }
        }
    }

    // Harris 1978, Proc. IEEE 66(1):51-83, table I (digits from memory, two decimals); the periodic windows of 4096 samples evaluated with NumPy agree to the digits below.
    [Theory]
    [InlineData(SpectralWindow.Rectangular, 1, 1.00000, 3.9224, 0.500, 0.750)]
    [InlineData(SpectralWindow.Hann, 0.5, 1.50000, 1.4236, 0.1667, 0.659)]
    [InlineData(SpectralWindow.Hamming, 0.54, 1.36283, 1.7514, 0.234, 0.707)]
    [InlineData(SpectralWindow.Blackman, 0.42, 1.72676, 1.0989, 0.090, 0.567)]
    [InlineData(SpectralWindow.BlackmanHarris, 0.35875, 2.00435, 0.8256, 0.038, 0.460)]
    public void Window_table(SpectralWindow window, double gain, double noiseBins, double scallopDecibels, double halfOverlap, double quarterOverlap)
    {
        WindowProperties w = WindowProperties.Of(window, 4096);
        Assert.Equal(gain, w.CoherentGain, 1e-12);
        Assert.Equal(noiseBins, w.NoiseBandwidthBins, 5.1e-6);
        Assert.Equal(scallopDecibels, -20 * Math.Log10(w.ScallopingRatio), 5.1e-5);
        Assert.Equal(halfOverlap, w.OverlapCorrelation(2048), 5.1e-4);
        Assert.Equal(quarterOverlap, w.OverlapCorrelation(1024), 5.1e-4);
    }

    // Welch 1967: Hann and half overlap, K/(1 + 2·(1/6)²·(K − 1)/K); three decimals printed.
    [Theory]
    [InlineData(8, 7.629)]
    [InlineData(16, 15.208)]
    [InlineData(64, 60.681)]
    public void Effective_averages_of_half_overlapping_Hann_segments(int segments, double expected)
    {
        SampledSignal signal = SampledSignal.FromSamples(new double[128 * (segments + 1)], Frequency.FromHertz(1000));
        PowerSpectrum spectrum = Welch.Estimate(signal, new WelchOptions { SegmentLength = 256 });
        Assert.Equal(segments, spectrum.Averages);
        Assert.Equal(expected, spectrum.EffectiveAverages, 5.1e-4);
    }

    // Tables of χ²: 20 degrees of freedom, 9.591 and 34.170 at 2.5 and 97.5 % (three decimals; any statistics handbook, NIST/SEMATECH e-Handbook 1.3.6.7.4).
    [Fact]
    public void Confidence_band_is_of_chi_square()
    {
        SampledSignal signal = SampledSignal.FromSamples(new double[2560], Frequency.FromHertz(1000));
        PowerSpectrum ten = Welch.Estimate(signal, new WelchOptions { SegmentLength = 256, Overlap = 0 });
        Assert.Equal(10, ten.EffectiveAverages);
        (double low, double high) = ten.ConfidenceFactors(0.95);
        Assert.Equal(20 / 34.170, low, 2e-5);
        Assert.Equal(20 / 9.591, high, 2e-4);
    }
}
