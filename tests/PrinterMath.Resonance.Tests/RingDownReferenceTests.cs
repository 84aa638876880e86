using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

[Trait("Evidence", "Published")]
public sealed class RingDownReferenceTests
{
    // vibration_toolbox data/case1.mat (MIT): its author's fit gives 212.092530551 Hz; a rational-fraction fit 212.0918 Hz and 0.0863 %, the decay of the Hilbert envelope
    // 212.092 to 212.110 Hz and 0.086 to 0.089 %. 0.05 Hz and 0.01 % hold all of these. The blow ends within 10 ms. The line at 120 Hz is mains hum.
    [Fact]
    public void Struck_structure()
    {
        ModeSet found = RingDown.Fit(DataFile.HammerResponse(), new RingDownOptions { Start = Duration.FromMilliseconds(10) });
        Mode mode = found.Modes.MinBy(m => Math.Abs(m.Frequency.SiValue - 212))!;
        Assert.Equal(212.0925, mode.Frequency.SiValue, 0.05);
        Assert.Equal(0.00087, mode.DampingRatio.SiValue, 0.0001);
        Assert.Contains(found.Modes, m => Math.Abs(m.Frequency.SiValue - 34.05) < 0.1);
        Assert.DoesNotContain(found.Modes, m => Math.Abs(m.Frequency.SiValue - 120) < 1);
    }

    // Two-mode test of an issue of a public structural-dynamics library (its author's values, without noise): 4.0 at 0.55 Hz, ζ = 0.015, and 2.0 at 1.7 Hz, ζ = 0.024,
    // in steps of 0.05 s. Rounding only.
    [Fact]
    public void Two_modes_without_noise()
    {
        double[] both = DecaySimulator.Add(DecaySimulator.Decay(1000, 20, 0.55, 0.015, 4, 0), DecaySimulator.Decay(1000, 20, 1.7, 0.024, 2, 0), 1);
        ModeSet found = RingDown.Fit(SampledSignal.FromSamples(both, Frequency.FromHertz(20)));
        Assert.Equal(2, found.Modes.Count);
        Assert.Equal(0.55, found.Modes[0].Frequency.SiValue, 1e-7);
        Assert.Equal(0.015, found.Modes[0].DampingRatio.SiValue, 1e-7);
        Assert.Equal(1.7, found.Modes[1].Frequency.SiValue, 1e-7);
        Assert.Equal(0.024, found.Modes[1].DampingRatio.SiValue, 1e-7);
    }

    // Logarithmic decrement δ = 2πζ/√(1 − ζ²) (Thomson, Theory of Vibration with Applications, 2.7), six decimals: successive maxima of a fitted decay fall by e^−δ.
    [Theory]
    [InlineData(0.01, 0.062835)]
    [InlineData(0.05, 0.314553)]
    [InlineData(0.1, 0.631484)]
    [InlineData(0.2, 1.282550)]
    public void Logarithmic_decrement(double zeta, double decrement)
    {
        // 100 samples in each damped period.
        double[] decay = [.. Enumerable.Range(0, 2000).Select(n => Math.Exp(-decrement * n / 100) * Math.Cos(2 * Math.PI * n / 100))];
        Mode mode = RingDown.Fit(SampledSignal.FromSamples(decay, Frequency.FromHertz(100)), new RingDownOptions { LowestFrequency = Frequency.FromHertz(0.3) }).Dominant;
        Assert.Equal(zeta, mode.DampingRatio.SiValue, 1e-6);
        Assert.Equal(1, mode.DampedFrequency.SiValue, 1e-7);
    }

    // Cramer-Rao bound of a damped sinusoid (Yao, Pandit 1995, from memory; Fisher matrix evaluated with NumPy, 1 %): f = 50 Hz, s/A = 0.05, rate 3200 Hz;
    // ζ = 0.05: sd(ζ) = 7.074e-4, sd(f) = 0.0346 Hz; ζ = 0.1: 2.021e-3, 0.0976 Hz; 0.1 s of ζ = 0.05: 9.895e-4, 0.0486 Hz.
    // Root mean square errors over 300 seeds stay within 1.3 of the bound and above 0.85 of it (twice the 4 % scatter of an rms over 300, and bias); so do the stated
    // uncertainties on average.
    [Theory]
    [InlineData(0.05, 1600, 7.074e-4, 0.0346)]
    [InlineData(0.1, 1600, 2.021e-3, 0.0976)]
    [InlineData(0.05, 320, 9.895e-4, 0.0486)]
    public void Cramer_Rao_bound_is_reached(double zeta, int count, double dampingBound, double frequencyBound)
    {
        double sumF = 0, sumZ = 0, statedF = 0, statedZ = 0;
        for (int seed = 1; seed <= 300; seed++)
        {
            double[] samples = DecaySimulator.Add(DecaySimulator.Decay(count, 3200, 50, zeta, 1, 0.3), DecaySimulator.Noise("white", count, seed), 0.05);
            Mode mode = RingDown.Fit(SampledSignal.FromSamples(samples, Frequency.FromHertz(3200)), new RingDownOptions { RelativeClockUncertainty = 0 }).Dominant;
            sumF += Math.Pow(mode.Frequency.SiValue - 50, 2) / 300;
            sumZ += Math.Pow(mode.DampingRatio.SiValue - zeta, 2) / 300;
            statedF += Math.Pow(mode.Frequency.SiStandardUncertainty, 2) / 300;
            statedZ += Math.Pow(mode.DampingRatio.SiStandardUncertainty, 2) / 300;
        }

        Assert.InRange(Math.Sqrt(sumF) / frequencyBound, 0.85, 1.3);
        Assert.InRange(Math.Sqrt(sumZ) / dampingBound, 0.85, 1.3);
        Assert.InRange(Math.Sqrt(statedF) / frequencyBound, 0.85, 1.3);
        Assert.InRange(Math.Sqrt(statedZ) / dampingBound, 0.85, 1.3);
    }
}
