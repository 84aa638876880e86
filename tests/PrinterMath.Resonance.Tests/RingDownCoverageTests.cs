using PrinterMath.Measurement;
using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Resonance.Tests;

/// <summary>How often 95 % intervals hold the planted truth: quick form, 300 seeds (1 to 300) for each stratum.</summary>
public sealed class RingDownCoverageTests(ITestOutputHelper output)
{
    private const int Cases = 300;

    /// <summary>93 % − 3.29·√(0.93·0.07/300): the 99.9 % binomial limit. The upper one, beyond 97 %, lies above 1.</summary>
    private const double Lowest = 0.8815;

    // Amplitude over noise of 3, 20, 200; white, and two kinds that were not looked at while the method was written: heavy-tailed (Laplace) and coloured (first order, 0.7).
    [Theory]
    [InlineData("white", 3, 0.05)]
    [InlineData("white", 20, 0.05)]
    [InlineData("white", 200, 0.02)]
    [InlineData("Laplace", 20, 0.05)]
    [InlineData("coloured", 20, 0.05)]
    [InlineData("coloured", 5, 0.1)]
    public void Intervals_hold_the_truth(string kind, double amplitude, double zeta)
    {
        int heldF = 0, heldZ = 0, found = 0, extra = 0;
        double width = 0;
        for (int seed = 1; seed <= Cases; seed++)
        {
            double[] samples = DecaySimulator.Add(DecaySimulator.Decay(1280, 3200, 50, zeta, amplitude, 0.01 * seed), DecaySimulator.Noise(kind, 1280, seed), 1);
            ModeSet set = RingDown.Fit(SampledSignal.FromSamples(samples, Frequency.FromHertz(3200)), new RingDownOptions { RelativeClockUncertainty = 0 });
            if (set.TryGetDominant(out Mode? mode))
            {
                found++;
                extra += set.Modes.Count - 1;
                heldF += mode.Frequency.Interval().Contains(Frequency.FromHertz(50)) ? 1 : 0;
                heldZ += mode.DampingRatio.Interval().Contains(zeta) ? 1 : 0;
                width += mode.DampingRatio.RelativeStandardUncertainty;
            }
        }

        string figures = $"found {found}, extra {extra}, f {heldF}, zeta {heldZ}, mean u(zeta)/zeta {width / found:G3}";
        output.WriteLine(figures);
        Assert.True(found >= 0.95 * Cases, figures);
        Assert.True(heldF >= Lowest * found && heldZ >= Lowest * found, figures);

        // False modes beside the true one: the stated probability is 0.001 a record; 6 in 300 has a chance below 1e-6.
        Assert.True(extra <= 5, figures);
    }

    // 1000 records of noise without a mode; 0.001 each is stated: more than 6 false ones has a chance of 8e-5.
    [Theory]
    [InlineData("white")]
    [InlineData("Laplace")]
    [InlineData("coloured")]
    public void Noise_alone_shows_no_mode(string kind)
    {
        int falseModes = 0;
        for (int seed = 1001; seed <= 2000; seed++)
        {
            SampledSignal noise = SampledSignal.FromSamples(DecaySimulator.Noise(kind, 640, seed), Frequency.FromHertz(3200));
            ModeSet set = RingDown.Fit(noise);
            falseModes += set.Modes.Count > 0 || set.Findings.Any(f => f.Code == ModeFindings.SteadyTone) ? 1 : 0;
        }

        output.WriteLine($"{falseModes} false in 1000");
        Assert.True(falseModes <= 6, $"{falseModes} in 1000");
    }
}
