using System.Numerics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class FrequencyResponseTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(1000);

    // A mass of 2 kg on a spring of 8000 N/m with 12 N·s/m: α = 1/(k − mω² + jcω), by hand at 5 Hz. Y = jωα, A = −ω²α.
    [Fact]
    public void Three_responses_over_force_by_hand()
    {
        double omega = 2 * Math.PI * 5;
        Complex receptance = 1 / new Complex(8000 - (2 * omega * omega), 12 * omega);
        Receptance alpha = Receptance.FromValues([5], [receptance]);
        Assert.Equal(omega * receptance.Magnitude, alpha.ToMobility().Response.Values[0].Magnitude, 1e-15);
        Assert.Equal(receptance.Phase + (Math.PI / 2), alpha.ToMobility().Response.Values[0].Phase, 1e-12);
        Complex acceleration = alpha.ToAccelerance().Response.Values[0];
        Assert.Equal(-omega * omega * receptance.Real, acceleration.Real, 1e-12);
        Assert.Equal(-omega * omega * receptance.Imaginary, acceleration.Imaginary, 1e-12);
    }

    [Fact]
    public void There_and_back_is_the_same_but_for_zero_frequency()
    {
        double[] frequencies = [0, 1, 7.5, 120];
        Complex[] values = [1, new Complex(0, 3), new Complex(-2, 0.1), new Complex(1e-3, -4)];
        Accelerance a = Accelerance.FromValues(frequencies, values, [0.5, 0.6, 0.7, 0.8], 9);
        Accelerance back = a.ToReceptance().ToAccelerance(), other = a.ToMobility().ToAccelerance(), third = a.ToMobility().ToReceptance().ToMobility().ToAccelerance();
        Assert.Equal(3, back.Response.Count);
        Assert.Equal(9, back.Response.EffectiveAverages);
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(frequencies[i + 1], back.Response.FrequencyAt(i).Hertz);
            Assert.Equal(a.Response.Coherences[i + 1], back.Response.Coherences[i]);
            Assert.InRange((back.Response.Values[i] - values[i + 1]).Magnitude / values[i + 1].Magnitude, 0, 1e-15 * 8);
            Assert.InRange((other.Response.Values[i] - values[i + 1]).Magnitude / values[i + 1].Magnitude, 0, 1e-15 * 8);
            Assert.InRange((third.Response.Values[i] - values[i + 1]).Magnitude / values[i + 1].Magnitude, 0, 1e-15 * 8);
        }
    }

    [Fact]
    public void Conversion_keeps_relative_errors()
    {
        Accelerance a = Accelerance.FromValues([10, 20], [new Complex(1, 1), new Complex(2, -1)], [0.9, 0.5], 16);
        Assert.True(a.Response.TryGetMagnitude(1, out Measured<double> before));
        Assert.True(a.ToReceptance().Response.TryGetMagnitude(1, out Measured<double> after));
        Assert.Equal(before.RelativeStandardUncertainty, after.RelativeStandardUncertainty, 1e-15);
    }

    // Gain 2, noise of the signal's own size first on the output, then on the input. Biases: H1 low by S_uu/(S_uu + S_nn) = 1/2, H2 high by 2; S_yy = 4 + 4 in the first case.
    // J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 9.3 (from memory). Scatter of the mean over 100 bins of 60 averages: about 1 %.
    [Theory]
    [InlineData(ResponseEstimator.H1, 2.0, 1.0)]
    [InlineData(ResponseEstimator.H2, 4.0, 2.0)]
    [InlineData(ResponseEstimator.Hv, 2.8284271, 1.4142136)]
    [Trait("Evidence", "Published")]
    public void Noise_biases_each_estimator_as_published(ResponseEstimator estimator, double noisyOutput, double noisyInput)
    {
        double[] u = WelchTests.Noise(16384, 31), n = WelchTests.Noise(16384, 32);
        var options = new WelchOptions { SegmentLength = 256 };
        Accelerance OfSignals(IEnumerable<double> input, IEnumerable<double> output) => Accelerance.Estimate(
            SampledSignal.FromSamples([.. input], Rate), SampledSignal.FromSamples([.. output], Rate), options, estimator);
        Accelerance output = OfSignals(u, u.Zip(n, (a, b) => (2 * a) + (2 * b)));
        Accelerance input = OfSignals(u.Zip(n, (a, b) => a + b), u.Select(a => 2 * a));
        Assert.Equal(1, MeanSize(output) / noisyOutput, 0.04);
        Assert.Equal(1, MeanSize(input) / noisyInput, 0.04);
    }

    [Fact]
    public void Estimators_stand_in_order_and_their_quotient_is_the_coherence()
    {
        double[] u = WelchTests.Noise(8192, 41), n = WelchTests.Noise(8192, 42);
        SampledSignal force = SampledSignal.FromSamples(u, Rate), motion = SampledSignal.FromSamples([.. u.Zip(n, (a, b) => a - b)], Rate);
        Mobility Of(ResponseEstimator estimator) => Mobility.Estimate(force, motion, new WelchOptions { SegmentLength = 512 }, estimator);
        Mobility one = Of(ResponseEstimator.H1), two = Of(ResponseEstimator.H2), middle = Of(ResponseEstimator.Hv);
        for (int i = 1; i < one.Response.Count; i++)
        {
            Assert.Equal(one.Response.Coherences[i], one.Response.Values[i].Magnitude / two.Response.Values[i].Magnitude, 1e-12);
            Assert.Equal(Math.Sqrt(one.Response.Values[i].Magnitude * two.Response.Values[i].Magnitude), middle.Response.Values[i].Magnitude, 1e-12);
            Assert.Equal(one.Response.Values[i].Phase, middle.Response.Values[i].Phase, 1e-12);
            Assert.Equal(one.Response.Values[i].Phase, two.Response.Values[i].Phase, 1e-12);
        }
    }

    // Bendat and Piersol 2010, table 9.6 (from memory): γ² = 0.5, n = 32 give 12.5 % of |H1|; of |H2| the same, of |Hv| 12.5 %·γ = 8.84 %; of the phase 0.125 rad.
    // The scatter of 4000 records is known to 1.1 %; large-sample theory to some 1/n.
    [Theory]
    [InlineData(ResponseEstimator.H1, 0.125)]
    [InlineData(ResponseEstimator.H2, 0.125)]
    [InlineData(ResponseEstimator.Hv, 0.0884)]
    public void Size_and_phase_scatter_as_stated(ResponseEstimator estimator, double relative)
    {
        const int records = 4000;
        var options = new WelchOptions { SegmentLength = 16, Overlap = 0, Detrend = Detrending.None, Window = SpectralWindow.Rectangular };
        double[] logs = new double[records], phases = new double[records];
        double statedSize = 0, statedPhase = 0;
        for (int k = 0; k < records; k++)
        {
            double[] u = WelchTests.Noise(512, 100_000 + k), e = WelchTests.Noise(512, 200_000 + k);
            Receptance h = Receptance.Estimate(
                SampledSignal.FromSamples(u, Rate), SampledSignal.FromSamples([.. u.Zip(e, (a, b) => a + b)], Rate), options, estimator);
            Assert.True(h.Response.TryGetMagnitude(5, out Measured<double> size));
            Assert.True(h.Response.TryGetPhase(5, out Measured<Angle> phase));
            logs[k] = Math.Log(size.SiValue);
            phases[k] = phase.Value.Radians;
            statedSize += size.RelativeStandardUncertainty / records;
            statedPhase += phase.SiStandardUncertainty / records;
        }

        Assert.InRange(Scatter(logs), relative * 0.93, relative * 1.1);
        Assert.InRange(statedSize / Scatter(logs), 0.9, 1.1);
        Assert.InRange(Scatter(phases), 0.125 * 0.93, 0.125 * 1.1);
        Assert.InRange(statedPhase / Scatter(phases), 0.9, 1.1);
    }

    // The blow of a hammer (open data, see data/README.md): its highest peak at 212.09 Hz, within half a line.
    [Fact]
    [Trait("Evidence", "Published")]
    public void A_struck_structure_peaks_at_its_known_mode()
    {
        var options = new WelchOptions { SegmentLength = 2048, Window = SpectralWindow.Rectangular, Overlap = 0 };
        Accelerance a = Accelerance.Estimate(DataFile.HammerForce(), DataFile.HammerResponse(), options);
        int peak = Enumerable.Range(1, a.Response.Count - 1).MaxBy(i => a.Response.Values[i].Magnitude);
        Assert.Equal(212.09, a.Response.FrequencyAt(peak).Hertz, 0.32);
    }

    [Fact]
    public void Estimators_not_named_and_single_segments_are_refused()
    {
        SampledSignal signal = SampledSignal.FromSamples(WelchTests.Noise(300, 1), Rate);
        Assert.Equal("options", Assert.Throws<ArgumentException>(() => Receptance.Estimate(signal, signal, new WelchOptions { SegmentLength = 256 })).ParamName);
        Assert.Equal("estimator", Assert.Throws<ArgumentOutOfRangeException>(() => Receptance.Estimate(signal, signal, new WelchOptions { SegmentLength = 64 }, (ResponseEstimator)9)).ParamName);
    }

    [Fact]
    public void A_dead_input_has_no_size()
    {
        SampledSignal dead = SampledSignal.FromSamples(new double[1024], Rate), noise = SampledSignal.FromSamples(WelchTests.Noise(1024, 1), Rate);
        Mobility h = Mobility.Estimate(dead, noise, new WelchOptions { SegmentLength = 64 });
        Assert.False(h.Response.TryGetMagnitude(3, out _));
        Assert.False(h.Response.TryGetPhase(3, out _));
        Assert.All(h.Response.Values.ToArray(), value => Assert.Equal(Complex.Zero, value));
    }

    [Fact]
    public void Text_says_which_response_it_is()
    {
        Assert.Equal("receptance in m/N, 2 values from 1 to 2 Hz, without coherence", Receptance.FromValues([1, 2], [1, 1]).ToString());
        Assert.StartsWith("accelerance in 1/kg, 2 values from 1 to 2 Hz, 4.0 effective averages", Accelerance.FromValues([1, 2], [1, 1], [1, 1], 4).ToString(), StringComparison.Ordinal);
    }

    private static double MeanSize(Accelerance accelerance) => Enumerable.Range(10, 100).Average(i => accelerance.Response.Values[i].Magnitude);

    private static double Scatter(double[] values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
    }
}
