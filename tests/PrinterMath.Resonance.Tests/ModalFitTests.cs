using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class ModalFitTests
{
    private static readonly double[] TwoModes = DecaySimulator.Add(
        DecaySimulator.Add(ShakenMachine.Mode(25600, 800, 48, 0.04, 1, 1), ShakenMachine.Mode(25600, 800, 95, 0.03, 0.5, 2), 1),
        DecaySimulator.Noise("white", 25600, 3),
        0.2);

    [Fact]
    public void Two_modes_are_read_the_larger_first()
    {
        ModalFit fit = Fit(TwoModes);
        Assert.Equal(2, fit.Modes.Count);
        Near(48, fit.Modes[0].Frequency);
        Near(95, fit.Modes[1].Frequency);
        Near(0.04, fit.Modes[0].DampingRatio);
        Near(0.03, fit.Modes[1].DampingRatio);
        Near(1, fit.Modes[0].Amplitude);
        Near(0.5, fit.Modes[1].Amplitude);
        Assert.Empty(fit.Tones);
        Assert.Empty(fit.Findings);
        Assert.Same(fit.Modes[0], fit.Dominant);
        Assert.Contains("Hz", fit.ToString(), StringComparison.Ordinal);
    }

    // The likelihood makes the fitted spectrum as strong as the measured one: its ratio averages to 1 within the scatter of some 460 lines of 49 averages.
    [Fact]
    public void Fitted_densities_follow_the_spectrum()
    {
        PowerSpectrum spectrum = Spectrum(TwoModes, 1024);
        ModalFit fit = ModalFit.FromSpectrum(spectrum);
        int first = (int)Math.Round(fit.Band.LowerHertz / spectrum.Resolution.Hertz);
        double sum = 0;
        for (int i = 0; i < fit.FittedDensities.Length; i++)
        {
            sum += spectrum.Densities[first + i] / fit.FittedDensities[i];
        }

        Assert.Equal(1, sum / fit.FittedDensities.Length, 0.03);
    }

    [Theory]
    [InlineData(1e-3)]
    [InlineData(1e4)]
    public void A_scale_changes_amplitudes_only(double scale)
    {
        ModalFit plain = Fit(TwoModes), scaled = Fit([.. TwoModes.Select(x => scale * x)]);
        for (int i = 0; i < plain.Modes.Count; i++)
        {
            // Iterations stop at a gain of 1e-7 in log-likelihood: about 5e-4 of an uncertainty.
            Assert.Equal(0, (plain.Modes[i].Frequency.SiValue - scaled.Modes[i].Frequency.SiValue) / plain.Modes[i].Frequency.SiStandardUncertainty, 0.01);
            Assert.Equal(0, (plain.Modes[i].DampingRatio.SiValue - scaled.Modes[i].DampingRatio.SiValue) / plain.Modes[i].DampingRatio.SiStandardUncertainty, 0.01);
            Assert.Equal(scale, scaled.Modes[i].Amplitude.SiValue / plain.Modes[i].Amplitude.SiValue, 1e-3 * scale);
        }
    }

    [Fact]
    public void A_faster_clock_changes_frequencies_only()
    {
        ModalFit plain = Fit(TwoModes);
        ModalFit faster = ModalFit.FromSpectrum(Welch.Estimate(
            SampledSignal.FromSamples(TwoModes, Frequency.FromHertz(1600)), new WelchOptions { SegmentLength = 1024 }), NoClock);
        for (int i = 0; i < plain.Modes.Count; i++)
        {
            Assert.Equal(2 * plain.Modes[i].Frequency.SiValue, faster.Modes[i].Frequency.SiValue, 1e-2 * plain.Modes[i].Frequency.SiStandardUncertainty);
            Assert.Equal(plain.Modes[i].DampingRatio.SiValue, faster.Modes[i].DampingRatio.SiValue, 1e-2 * plain.Modes[i].DampingRatio.SiStandardUncertainty);
        }
    }

    [Fact]
    public void Shape_decides_what_is_read_from_a_velocity()
    {
        double[] samples = DecaySimulator.Add(ShakenMachine.Mode(25600, 800, 60, 0.1, 1, 5, velocity: true), DecaySimulator.Noise("white", 25600, 6), 0.1);
        Mode mode = Fit(samples, new ModalFitOptions { Shape = ResponseShape.Mobility, RelativeClockUncertainty = 0 }).Dominant;
        Near(60, mode.Frequency);
        Near(0.1, mode.DampingRatio);
    }

    // Acceleration of a driven mode, by second differences of finely stepped positions: at 60 of 3200 Hz they weaken it by (π·60/3200)²/3 = 0.1 %.
    [Fact]
    public void Accelerance_is_level_above_its_mode()
    {
        double[] x = ShakenMachine.Mode(51202, 3200, 60, 0.08, 1, 7);
        double[] acceleration = [.. Enumerable.Range(1, 51200).Select(n => (x[n - 1] - (2 * x[n]) + x[n + 1]) * 3200 * 3200)];
        ModalFitOptions options = new() { Shape = ResponseShape.Accelerance, HighestFrequency = Frequency.FromHertz(250), RelativeClockUncertainty = 0 };
        Mode mode = ModalFit.FromSpectrum(Welch.Estimate(SampledSignal.FromSamples(acceleration, Frequency.FromHertz(3200)), new WelchOptions { SegmentLength = 4096 }), options).Dominant;
        Near(60, mode.Frequency);
        Near(0.08, mode.DampingRatio);
    }

    [Fact]
    public void A_mode_narrower_than_a_line_is_refused()
    {
        double[] samples = DecaySimulator.Add(ShakenMachine.Mode(25600, 800, 60, 0.0005, 1, 9), DecaySimulator.Noise("white", 25600, 10), 0.2);
        ModalFit fit = Fit(samples);
        Assert.DoesNotContain(fit.Modes, m => Math.Abs(m.Frequency.SiValue - 60) < 2);
        Assert.True(fit.Tones.Count + fit.Rejected.Count(r => r.Reason == RejectionReason.Unresolved) > 0);
        Assert.Throws<IndeterminateException>(() => fit.Dominant);
        Assert.False(fit.TryGetDominant(out _));
    }

    [Fact]
    public void A_clock_that_may_be_wrong_widens_the_frequency()
    {
        Mode sure = Fit(TwoModes).Dominant, unsure = Fit(TwoModes, new ModalFitOptions { RelativeClockUncertainty = 0.01 }).Dominant;
        Assert.Equal(
            Math.Sqrt(Math.Pow(sure.Frequency.SiStandardUncertainty, 2) + Math.Pow(0.01 * sure.Frequency.SiValue, 2)), unsure.Frequency.SiStandardUncertainty, 1e-9);
    }

    [Fact]
    public void A_constant_holds_no_mode()
    {
        ModalFit fit = Fit(new double[4096]);
        Assert.Equal(ModeFindings.None, Assert.Single(fit.Findings).Code);
    }

    [Fact]
    public void Wrong_options_are_named()
    {
        PowerSpectrum spectrum = Spectrum(TwoModes, 1024);
        Assert.Throws<ArgumentNullException>(() => ModalFit.FromSpectrum(null!));
        Throws(new ModalFitOptions { MostModes = 0 }, "MostModes");
        Throws(new ModalFitOptions { FalseAlarmProbability = 0.5 }, "FalseAlarmProbability");
        Throws(new ModalFitOptions { LowestFrequency = Frequency.FromHertz(0.1) }, "LowestFrequency");
        Throws(new ModalFitOptions { HighestFrequency = Frequency.FromHertz(900) }, "HighestFrequency");
        Throws(new ModalFitOptions { LowestFrequency = Frequency.FromHertz(50), HighestFrequency = Frequency.FromHertz(52) }, "HighestFrequency");
        Throws(new ModalFitOptions { RelativeClockUncertainty = -1 }, "RelativeClockUncertainty");
        Throws(new ModalFitOptions { Shape = (ResponseShape)9 }, "Shape");

        void Throws(ModalFitOptions options, string name) => Assert.Equal(name, Assert.ThrowsAny<ArgumentException>(() => ModalFit.FromSpectrum(spectrum, options)).ParamName);
    }

    [Fact]
    public void Work_can_be_stopped()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => ModalFit.FromSpectrum(Spectrum(TwoModes, 1024), null, stop.Token));
    }

    private static readonly ModalFitOptions NoClock = new() { RelativeClockUncertainty = 0 };

    private static PowerSpectrum Spectrum(double[] samples, int segment) =>
        Welch.Estimate(SampledSignal.FromSamples(samples, Frequency.FromHertz(800)), new WelchOptions { SegmentLength = segment });

    private static ModalFit Fit(double[] samples, ModalFitOptions? options = null) => ModalFit.FromSpectrum(Spectrum(samples, 1024), options ?? NoClock);

    /// <summary>Within four standard uncertainties: 6 in 100 000.</summary>
    private static void Near<T>(double truth, Measured<T> measured)
        where T : struct => Assert.InRange(Math.Abs(measured.SiValue - truth), 0, 4 * measured.SiStandardUncertainty);
}
