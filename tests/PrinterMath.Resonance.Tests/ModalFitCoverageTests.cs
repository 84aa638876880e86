using PrinterMath.Measurement;
using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Resonance.Tests;

/// <summary>How often 95 % intervals of a mode under a level excitation hold the planted truth; see <see cref="CoverageCases"/> for the long form.</summary>
public sealed class ModalFitCoverageTests(ITestOutputHelper output)
{
    private static readonly int Cases = CoverageCases.Count;

    /// <summary>Most false terms in so many records at the stated 0.001 each: the mean, four standard deviations and three more for so small a mean.</summary>
    private static double MostFalse(int records) => (0.001 * records) + (4 * Math.Sqrt(0.001 * records)) + 3;

    // 16 s at 800 Hz in segments of 1024: lines of 0.78 Hz, 24 segments. Noise level in units of the mode's rms.
    [Theory]
    [InlineData("white", 50, 0.03, 0.3)]
    [InlineData("white", 50, 0.1, 0.3)]
    [InlineData("white", 50, 0.03, 2)]
    [InlineData("white", 120, 0.01, 0.3)]
    [InlineData("Laplace", 50, 0.05, 1)]
    [InlineData("coloured", 50, 0.05, 0.3)]
    public void Intervals_hold_the_truth(string kind, double hertz, double zeta, double noise)
    {
        int found = 0, extra = 0, heldF = 0, heldZ = 0, heldA = 0;
        double squaresF = 0, squaresZ = 0, widthF = 0, widthZ = 0;
        for (int seed = 1; seed <= Cases; seed++)
        {
            double[] samples = DecaySimulator.Add(ShakenMachine.Mode(12800, 800, hertz, zeta, 1, seed), DecaySimulator.Noise(kind, 12800, seed + 50000), noise);
            ModalFit fit = Fit(samples, 800, 1024);
            extra += Math.Max(0, fit.Modes.Count - 1) + fit.Tones.Count;
            if (!fit.TryGetDominant(out Mode? mode))
            {
                continue;
            }

            found++;
            heldF += mode.Frequency.Interval().Contains(Frequency.FromHertz(hertz)) ? 1 : 0;
            heldZ += mode.DampingRatio.Interval().Contains(zeta) ? 1 : 0;
            heldA += mode.Amplitude.Interval().Contains(1) ? 1 : 0;
            squaresF += Math.Pow((mode.Frequency.SiValue / hertz) - 1, 2);
            squaresZ += Math.Pow((mode.DampingRatio.SiValue / zeta) - 1, 2);
            widthF += mode.Frequency.RelativeStandardUncertainty;
            widthZ += mode.DampingRatio.RelativeStandardUncertainty;
        }

        string figures = FormattableString.Invariant(
            $"{kind} {hertz} Hz {zeta} noise {noise}: found {found} of {Cases}, extra {extra}, f {heldF}, zeta {heldZ}, rms {heldA}; f rmse {Math.Sqrt(squaresF / found):G3} u {widthF / found:G3}; zeta rmse {Math.Sqrt(squaresZ / found):G3} u {widthZ / found:G3}");
        output.WriteLine(figures);
        Assert.True(found >= 0.95 * Cases, figures);
        Assert.True(Math.Min(heldF, heldZ) >= CoverageCases.Fewest(found), figures);

        Assert.True(extra <= MostFalse(Cases), figures);
    }

    // 1000 records of noise: 0.001 each is stated, more than 6 has a chance of 8e-5.
    [Theory]
    [InlineData("white")]
    [InlineData("Laplace")]
    [InlineData("coloured")]
    public void Noise_alone_shows_no_mode(string kind)
    {
        int falseModes = 0, falseTones = 0;
        for (int seed = 1001; seed <= 2000; seed++)
        {
            ModalFit fit = Fit(DecaySimulator.Noise(kind, 6400, seed), 800, 512);
            falseModes += fit.Modes.Count > 0 ? 1 : 0;
            falseTones += fit.Tones.Count > 0 ? 1 : 0;
        }

        output.WriteLine($"{kind}: {falseModes} false modes and {falseTones} false tones in 1000");
        Assert.True(falseModes + falseTones <= 6, $"{falseModes} modes, {falseTones} tones in 1000");
    }

    // A mode and a tone anywhere in the band, from weak to a thousand times the noise: the tone is a tone, the mode stays right.
    [Fact]
    public void Tones_are_not_modes()
    {
        int named = 0, asMode = 0, heldF = 0, cases = Math.Max(200, Cases / 2);
        var random = new Random(7);
        for (int seed = 1; seed <= cases; seed++)
        {
            double hertz = 75 + (150 * random.NextDouble()), amplitude = Math.Pow(10, -0.5 + (3 * random.NextDouble()));
            double[] samples = DecaySimulator.Add(ShakenMachine.Mode(12800, 800, 50, 0.05, 1, seed), DecaySimulator.Noise("white", 12800, seed + 70000), 0.3);
            ModalFit fit = Fit(DecaySimulator.Add(samples, ShakenMachine.Tone(12800, 800, hertz, amplitude, seed), 1), 800, 1024);
            named += fit.Tones.Any(t => Math.Abs(t.Frequency.SiValue - hertz) < 0.4) ? 1 : 0;
            asMode += fit.Modes.Any(m => Math.Abs(m.Frequency.SiValue - hertz) < 2) ? 1 : 0;
            heldF += fit.Modes.Any(m => m.Frequency.Interval().Contains(Frequency.FromHertz(50))) ? 1 : 0;
        }

        string figures = $"{named} named, {asMode} taken for modes, {heldF} hold the mode beside it, of {cases}";
        output.WriteLine(figures);
        Assert.True(named >= 0.95 * cases && asMode <= 0.005 * cases && heldF >= CoverageCases.Fewest(cases), figures);
    }

    // Two modes a few bandwidths apart.
    [Theory]
    [InlineData(60, 0.03)]
    [InlineData(56, 0.02)]
    public void Close_modes_are_told_apart(double second, double zeta)
    {
        int both = 0, held = 0, extra = 0, cases = Math.Max(100, Cases / 2);
        for (int seed = 1; seed <= cases; seed++)
        {
            double[] first = ShakenMachine.Mode(25600, 800, 48, zeta, 1, seed), other = ShakenMachine.Mode(25600, 800, second, zeta, 0.7, seed + 30000);
            ModalFit fit = Fit(DecaySimulator.Add(DecaySimulator.Add(first, other, 1), DecaySimulator.Noise("white", 25600, seed + 80000), 0.3), 800, 1024);
            Mode? near = fit.Modes.MinBy(m => Math.Abs(m.Frequency.SiValue - second));
            bool two = fit.Modes.Count >= 2 && Math.Abs(near!.Frequency.SiValue - second) < 3;
            both += two ? 1 : 0;
            extra += Math.Max(0, fit.Modes.Count - 2);
            held += two && near!.Frequency.Interval().Contains(Frequency.FromHertz(second)) && near.DampingRatio.Interval().Contains(zeta) ? 1 : 0;
        }

        string figures = $"both {both}, frequency and damping of the second held {held}, extra {extra}, of {cases}";
        output.WriteLine(figures);

        // Two 95 % intervals hold together in about 90 %, less 3.29 standard deviations.
        double fewest = (0.9 * both) - (3.29 * Math.Sqrt(0.9 * 0.1 * both));
        Assert.True(both >= 0.95 * cases && held >= fewest && extra <= MostFalse(cases), figures);
    }

    private static ModalFit Fit(double[] samples, double rate, int segment) => ModalFit.FromSpectrum(
        Welch.Estimate(SampledSignal.FromSamples(samples, Frequency.FromHertz(rate)), new WelchOptions { SegmentLength = segment }),
        new ModalFitOptions { RelativeClockUncertainty = 0 });
}
