namespace PrinterMath.Resonance;

/// <summary>Weighted means of the tapers' spectra, as <see cref="Multitaper"/> defines them.</summary>
internal static class TaperAverage
{
    private const int MostTurns = 200;

    internal static MultitaperSpectrum Of(double[][] spectra, SlepianTapers tapers, TaperWeighting weighting, double noise, double rateHertz)
    {
        int bins = spectra[0].Length;
        double[] densities = new double[bins], freedoms = new double[bins];
        double[] line = new double[spectra.Length], weights = new double[spectra.Length];
        for (int i = 0; i < bins; i++)
        {
            for (int k = 0; k < line.Length; k++)
            {
                line[k] = spectra[k][i];
            }

            // Zero and half the rate hold one real number each, not two: half the density, half the freedom.
            bool unpaired = i == 0 || 2 * i == tapers.Length;
            densities[i] = weighting == TaperWeighting.Adaptive
                ? Adapted(line, tapers.Concentrations, unpaired ? noise / 2 : noise, weights)
                : Weighted(line, tapers.Concentrations, weights);
            freedoms[i] = (unpaired ? 1 : 2) * Freedom(weights);
        }

        return new MultitaperSpectrum(densities, freedoms, tapers, rateHertz);
    }

    private static double Weighted(double[] line, ReadOnlySpan<double> concentrations, double[] weights)
    {
        concentrations.CopyTo(weights);
        return Mean(line, weights);
    }

    private static double Adapted(double[] line, ReadOnlySpan<double> concentrations, double noise, double[] weights)
    {
        double density = (line[0] + line[Math.Min(1, line.Length - 1)]) / 2;
        for (int turn = 0; turn < MostTurns; turn++)
        {
            for (int k = 0; k < line.Length; k++)
            {
                double denominator = (concentrations[k] * density) + ((1 - concentrations[k]) * noise);
                double b = denominator > 0 ? density / denominator : 1;
                weights[k] = concentrations[k] * b * b;
            }

            double next = Mean(line, weights);
            bool settled = Math.Abs(next - density) <= 1e-14 * next;
            density = next;
            if (settled)
            {
                break;
            }
        }

        return density;
    }

    /// <summary>Weighted mean; where no weight is left, that of the best taper.</summary>
    private static double Mean(double[] line, double[] weights)
    {
        double sum = 0, all = 0;
        for (int k = 0; k < line.Length; k++)
        {
            sum += weights[k] * line[k];
            all += weights[k];
        }

        if (all > 0)
        {
            return sum / all;
        }

        weights[0] = 1;
        return line[0];
    }

    /// <summary>(Σd²)²/Σd⁴.</summary>
    private static double Freedom(double[] weights)
    {
        double sum = 0, squares = 0;
        foreach (double weight in weights)
        {
            sum += weight;
            squares += weight * weight;
        }

        return sum * sum / squares;
    }
}
