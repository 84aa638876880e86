using MathNet.Numerics.IntegralTransforms;

namespace PrinterMath.Resonance;

/// <summary>Finds the decaying oscillation that explains most of a residual above the noise around it: a matched filter over a ladder of decays.</summary>
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

    /// <summary>The best candidate, or null when no frequency is left; blocked angles and their neighbourhood of one bin are passed over.</summary>
    internal DecayTerm? Best(ReadOnlySpan<double> residuals, IReadOnlyList<double> blocked)
    {
        int count = residuals.Length;
        var floor = NoiseFloor.Of(residuals);
        int padded = 2 * count;
        double[] work = new double[padded + 2];
        double unit = 2 * Math.PI / padded;
        int first = Math.Max(1, (int)Math.Ceiling(_lowest / unit));
        int last = Math.Min(count - 1, (int)(_highest / unit));
        if (first > last)
        {
            return null;
        }

        double[] noise = Floors(floor, first, last, unit);
        double smallest = noise.Where(v => v > 0).DefaultIfEmpty(1).Min();
        double best = 0;
        DecayTerm? found = null;
        foreach (double decay in Ladder(count))
        {
            Array.Clear(work);
            for (int n = 0; n < count; n++)
            {
                work[n] = residuals[n] * Math.Exp(-decay * n);
            }

            Fourier.ForwardReal(work, padded, FourierOptions.NoScaling);
            double energy = DecayTerm.EnvelopeEnergy(decay, count);
            for (int k = first; k <= last; k++)
            {
                double angle = k * unit;
                double re = work[2 * k], im = work[(2 * k) + 1];
                double score = ((re * re) + (im * im)) / energy / Math.Max(noise[k - first], smallest);
                if (score > best && decay < LargestDecayShare * angle && !blocked.Any(b => Math.Abs(b - angle) < 4 * unit))
                {
                    best = score;
                    found = new DecayTerm(decay, angle, 2 * re / energy, -2 * im / energy);
                }
            }
        }

        return found;
    }

    /// <summary>Noise at each bin, looked up anew every eighth of the band it is taken from.</summary>
    private static double[] Floors(NoiseFloor floor, int first, int last, double unit)
    {
        double[] noise = new double[last - first + 1];
        int until = first;
        for (int k = first; k <= last; k++)
        {
            if (k == until)
            {
                (double variance, int bins) = floor.Median(k * unit);
                noise[k - first] = variance;
                until = k + Math.Max(1, bins / 4);
            }
            else
            {
                noise[k - first] = noise[k - first - 1];
            }
        }

        return noise;
    }
}
