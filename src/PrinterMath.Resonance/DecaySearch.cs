using System.Numerics;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Finds the decaying oscillation that explains most of a residual: a matched filter over a ladder of decays.</summary>
internal sealed class DecaySearch
{
    private const double LadderStart = 0.5;
    private const double LadderFactor = 2.5;
    private const double FastestDecay = 0.15;
    private const double LargestDecayShare = 0.5;

    private readonly double _lowest;
    private readonly double _highest;

    /// <summary>A search between two angles for each sample.</summary>
    internal DecaySearch(double lowest, double highest)
    {
        _lowest = lowest;
        _highest = highest;
    }

    /// <summary>Decays looked at, per sample.</summary>
    internal static IEnumerable<double> Ladder(int count)
    {
        for (double decay = LadderStart / count; decay < FastestDecay; decay *= LadderFactor)
        {
            yield return decay;
        }
    }

    /// <summary>The best candidate, or null when no frequency is left; blocked angles and their neighbourhood of two bins of the record are passed over.</summary>
    internal DecayTerm? Best(ReadOnlySpan<double> residuals, IReadOnlyList<double> blocked)
    {
        int count = residuals.Length;
        int padded = (int)BitOperations.RoundUpToPowerOf2(2 * (uint)count);
        double near = 4 * Math.PI / count;
        double unit = 2 * Math.PI / padded;
        int first = Math.Max(1, (int)Math.Ceiling(_lowest / unit));
        int last = Math.Min((padded / 2) - 1, (int)(_highest / unit));
        if (first > last)
        {
            return null;
        }

        var transform = new RealFourierTransform(padded);
        double[] work = new double[padded], re = new double[transform.Bins], im = new double[transform.Bins];
        double best = 0;
        DecayTerm? found = null;
        foreach (double decay in Ladder(count))
        {
            Array.Clear(work);
            double step = Math.Exp(-decay);
            double fade = 1;
            for (int n = 0; n < count && fade > 1e-12; n++, fade *= step)
            {
                work[n] = residuals[n] * fade;
            }

            transform.Forward(work, re, im);
            double energy = DecayTerm.EnvelopeEnergy(decay, count);
            for (int k = first; k <= last; k++)
            {
                double angle = k * unit;
                double score = ((re[k] * re[k]) + (im[k] * im[k])) / energy;
                if (score > best && decay < LargestDecayShare * angle && !blocked.Any(b => Math.Abs(b - angle) < near))
                {
                    best = score;
                    found = new DecayTerm(decay, angle, 2 * re[k] / energy, -2 * im[k] / energy);
                }
            }
        }

        return found;
    }
}
