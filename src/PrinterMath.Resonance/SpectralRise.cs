namespace PrinterMath.Resonance;

/// <summary>A stretch of lines that stands highest over the expected spectrum: where the next term is tried.</summary>
internal readonly record struct SpectralRise(int Start, int Width)
{
    /// <summary>The stretch of any doubling width whose mean, as a gamma variable of as many averages as it holds, is least likely; null when none is above.</summary>
    internal static SpectralRise? Highest(SpectrumLines lines, SpectralModel model)
    {
        double[] sums = new double[lines.Count + 1];
        for (int i = 0; i < lines.Count; i++)
        {
            sums[i + 1] = sums[i] + (lines.Densities[i] / model.Expected[i]) - 1;
        }

        SpectralRise? best = null;
        double largest = 0;
        for (int width = 1; width <= lines.Count / 4; width *= 2)
        {
            double averages = lines.Averages * width / Spread(lines.Correlation, width);
            for (int start = 0; start + width <= lines.Count; start++)
            {
                double mean = (sums[start + width] - sums[start]) / width;
                double unlikely = mean > 0 ? averages * (mean - Math.Log(1 + mean)) : 0;
                if (unlikely > largest)
                {
                    (best, largest) = (new SpectralRise(start, width), unlikely);
                }
            }
        }

        return best;
    }

    /// <summary>A tone at the highest line, and modes of half to twice the width there and at the middle.</summary>
    internal IEnumerable<SpectralTerm> Starts(SpectrumLines lines, SpectralModel model)
    {
        int top = Start;
        double power = 0;
        for (int i = Start; i < Start + Width; i++)
        {
            power += Math.Max(0, lines.Densities[i] - model.Expected[i]) * lines.Resolution;
            top = lines.Densities[i] / model.Expected[i] > lines.Densities[top] / model.Expected[top] ? i : top;
        }

        power = Math.Max(power, 1e-3 * model.SmoothFloor[top] * lines.Resolution);
        foreach (double place in new[] { top - 0.3, top + 0.3 })
        {
            yield return SpectralTerm.Tone(1.5 * power, lines.AngleAt(place));
        }

        foreach (double width in Width == 1 ? [0.5, 1.5] : new[] { 0.5 * Width, 1.5 * Width })
        {
            double angle = lines.AngleAt(Width <= 2 ? top : Start + (0.5 * (Width - 1)));
            yield return SpectralTerm.Mode(1.5 * power, angle, 0.5 * width * 2 * Math.PI / (lines.SegmentLength * angle));
        }
    }

    private static double Spread(double[] correlation, int width)
    {
        double sum = 1;
        for (int lag = 1; lag < Math.Min(width, correlation.Length); lag++)
        {
            sum += 2 * (1 - ((double)lag / width)) * correlation[lag];
        }

        return sum;
    }
}
