using System.Numerics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class TransmissibilityTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(1000);
    private static readonly WelchOptions Short = new() { SegmentLength = 256 };

    // A response of −2.5 times the command: ratio −2.5 and coherence 1 everywhere, rounding only.
    [Fact]
    public void A_scaled_copy_is_fully_coherent()
    {
        double[] u = WelchTests.Noise(8192, 1);
        Transmissibility h = Transmissibility.Estimate(
            SampledSignal.FromSamples(u, Rate), SampledSignal.FromSamples([.. u.Select(v => -2.5 * v)], Rate), Short);
        for (int i = 1; i < h.Response.Count; i++)
        {
            Assert.Equal(-2.5, h.Response.Values[i].Real, 1e-10);
            Assert.Equal(0, h.Response.Values[i].Imaginary, 1e-10);
            Assert.Equal(1, h.Response.Coherences[i], 1e-12);
        }
    }

    // Response = command + independent noise of the same density: γ² = 1/2, H = 1. Half-overlapping Hann segments; averages over 120 bins: γ² within its bias of 1/n and 0.02.
    [Fact]
    public void Noise_in_the_response_lowers_the_coherence_and_not_the_ratio()
    {
        double[] u = WelchTests.Noise(16384, 2), e = WelchTests.Noise(16384, 3);
        Transmissibility h = Transmissibility.Estimate(
            SampledSignal.FromSamples(u, Rate), SampledSignal.FromSamples([.. u.Zip(e, (a, b) => a + b)], Rate), Short);
        double coherence = 0, real = 0;
        for (int i = 4; i < 124; i++)
        {
            coherence += h.Response.Coherences[i] / 120;
            real += h.Response.Values[i].Real / 120;
        }

        Assert.Equal(0.5, coherence, 0.02 + (1 / h.Response.EffectiveAverages));
        Assert.Equal(1, real, 0.03);
    }

    [Fact]
    public void One_segment_is_refused()
    {
        SampledSignal signal = SampledSignal.FromSamples(WelchTests.Noise(300, 1), Rate);
        Assert.Equal("options", Assert.Throws<ArgumentException>(() => Transmissibility.Estimate(signal, signal, Short)).ParamName);
    }

    // gamma² = 0.9 and n = 16: relative random error √(0.1/(2·0.9·16)) = 0.058926 (Bendat, Piersol, table 9.6).
    [Fact]
    public void Given_coherences_give_random_errors()
    {
        Transmissibility h = Transmissibility.FromValues([10, 30], [new Complex(0, 2), new Complex(3, 4)], [0, 0.9], 16);
        Assert.Equal(30, h.Response.FrequencyAt(1).Hertz);
        Assert.False(h.Response.TryGetMagnitude(0, out _));
        Assert.True(h.Response.TryGetMagnitude(1, out Measured<double> size));
        Assert.Equal(5, size.SiValue, 1e-12);
        Assert.Equal(0.058926, size.RelativeStandardUncertainty, 1e-6);
    }

    [Fact]
    public void Without_coherence_there_are_no_random_errors()
    {
        Transmissibility h = Transmissibility.FromValues([10, 20], [Complex.One, Complex.ImaginaryOne]);
        Assert.False(h.Response.HasCoherence);
        Assert.True(h.Response.Coherences.IsEmpty);
        Assert.False(h.Response.TryGetMagnitude(1, out _));
        Assert.Equal(SpectrumFindings.NoCoherence, Assert.Throws<IndeterminateException>(() => h.Response.EffectiveAverages).Finding!.Code);
        Assert.Contains("without coherence", h.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Given_values_are_checked()
    {
        Complex[] two = [Complex.One, Complex.One];
        Assert.Equal("frequencies", Assert.Throws<ArgumentException>(() => Transmissibility.FromValues([1], two)).ParamName);
        Assert.Equal("frequencies", Assert.Throws<ArgumentException>(() => Transmissibility.FromValues([2, 2], two)).ParamName);
        Assert.Equal("frequencies", Assert.Throws<ArgumentOutOfRangeException>(() => Transmissibility.FromValues([-1, 2], two)).ParamName);
        Assert.Equal("values", Assert.Throws<ArgumentOutOfRangeException>(() => Transmissibility.FromValues([1, 2], [Complex.One, new Complex(double.NaN, 0)])).ParamName);
        Assert.Equal("coherences", Assert.Throws<ArgumentException>(() => Transmissibility.FromValues([1, 2], two, [1], 4)).ParamName);
        Assert.Equal("coherences", Assert.Throws<ArgumentOutOfRangeException>(() => Transmissibility.FromValues([1, 2], two, [1, 1.1], 4)).ParamName);
        Assert.Equal("effectiveAverages", Assert.Throws<ArgumentOutOfRangeException>(() => Transmissibility.FromValues([1, 2], two, [1, 1], 1)).ParamName);
    }
}
