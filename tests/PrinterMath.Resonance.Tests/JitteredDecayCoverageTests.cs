using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Resonance.Tests;

/// <summary>Decays sampled off the beat and stamped when sampled: how often the 95 % intervals hold the planted frequencies and damping ratios.</summary>
/// <remarks>Two modes, the upper one at up to an eighth of the rate, where interpolation errs most; seeds 1 and following.</remarks>
public sealed class JitteredDecayCoverageTests(ITestOutputHelper output)
{
    private const int Count = 1440;
    private const double Rate = 1600;

    // Amplitude over noise; scatter of the sampling times as a share of the period; upper frequency.
    [Theory]
    [InlineData("white", 100, 0.00, 200)]
    [InlineData("white", 100, 0.02, 110)]
    [InlineData("white", 100, 0.02, 200)]
    [InlineData("white", 400, 0.03, 200)]
    [InlineData("Laplace", 100, 0.03, 160)]
    [InlineData("coloured", 100, 0.03, 200)]
    public void Intervals_hold_the_truth(string kind, double amplitude, double share, double upper)
    {
        int cases = CoverageCases.Count;
        (double Hertz, double Zeta)[] planted = [(47, 0.06), (upper, 0.03)];
        int[] heldF = new int[2], heldZ = new int[2];
        double[] squares = new double[2], widths = new double[2];
        int found = 0, extra = 0;
        for (int seed = 1; seed <= cases; seed++)
        {
            double[] t = DecaySimulator.OffBeat(Count, Rate, share, 100_000 + seed);
            double[] clean = DecaySimulator.Add(
                DecaySimulator.DecayAt(t, planted[0].Hertz, planted[0].Zeta, amplitude, 0.01 * seed), DecaySimulator.DecayAt(t, planted[1].Hertz, planted[1].Zeta, amplitude, 0.3), 1);
            double[] x = DecaySimulator.Add(clean, DecaySimulator.Noise(kind, Count, seed), 1);
            AccelerationRecord record = AccelerationRecord.FromSamples(t, x, x, x, new AccelerationRecordOptions { RelativeClockUncertainty = 0 });
            ModeSet set = RingDown.Fit(record.X, new RingDownOptions { RelativeClockUncertainty = record.RelativeRateUncertainty });
            if (set.Modes.Count < 2)
            {
                continue;
            }

            found++;
            extra += set.Modes.Count - 2;
            for (int m = 0; m < 2; m++)
            {
                Mode mode = set.Modes.MinBy(one => Math.Abs(one.Frequency.SiValue - planted[m].Hertz))!;
                heldF[m] += mode.Frequency.Interval().Contains(Frequency.FromHertz(planted[m].Hertz)) ? 1 : 0;
                heldZ[m] += mode.DampingRatio.Interval().Contains(planted[m].Zeta) ? 1 : 0;
                squares[m] += Math.Pow(mode.DampingRatio.SiValue - planted[m].Zeta, 2);
                widths[m] += mode.DampingRatio.SiStandardUncertainty;
            }
        }

        string figures = $"found {found} of {cases}, extra {extra}, f {heldF[0]} and {heldF[1]}, zeta {heldZ[0]} and {heldZ[1]}, "
            + $"mean u(zeta) over rmse {widths[0] / found / Math.Sqrt(squares[0] / found):G3} and {widths[1] / found / Math.Sqrt(squares[1] / found):G3}";
        output.WriteLine(figures);
        Assert.True(found >= 0.95 * cases, figures);
        Assert.All([.. heldF, .. heldZ], held => Assert.InRange(held, CoverageCases.Fewest(found), CoverageCases.Most(found)));
    }
}
