namespace PrinterMath.Resonance;

/// <summary>Terms over a noise floor exp(Σ c_j·cos jπf/f_N) + slope·first/line, with the spectrum expected of them and its likelihood.</summary>
/// <remarks>
/// The logarithm of the floor as a short cosine series stands for any smooth coloured noise; its waves c_j are taken as 0 ± 1.5/j beforehand, so that
/// those which the data do not tell widen the answer without running away. Source: P. Bloomfield 1973, "An exponential model for the spectrum of a scalar time
/// series", Biometrika 60(2), 217-226 (from memory).
/// </remarks>
internal sealed class SpectralModel
{
    internal SpectralModel(SpectrumLines lines, IReadOnlyList<SpectralTerm> terms, IReadOnlyList<TermSpectrum> spectra, double[] logFloor, double slope)
    {
        Terms = terms;
        Spectra = spectra;
        LogFloor = logFloor;
        Slope = slope;
        Expected = new double[lines.Count];
        SmoothFloor = new double[lines.Count];
        for (int i = 0; i < Expected.Length; i++)
        {
            double log = 0;
            for (int j = 0; j < logFloor.Length; j++)
            {
                log += logFloor[j] * lines.FloorWaves[j][i];
            }

            SmoothFloor[i] = Math.Exp(log);
            double sum = SmoothFloor[i] + (slope * lines.FloorShape[i]);
            foreach (TermSpectrum term in spectra)
            {
                sum += Math.Max(0, term.Density[i]);
            }

            Expected[i] = sum;
        }

        LogLikelihood = lines.LogLikelihood(Expected);
        for (int j = 1; j < logFloor.Length; j++)
        {
            LogLikelihood -= 0.5 * WavePrecision(j) * logFloor[j] * logFloor[j];
        }
    }

    internal IReadOnlyList<SpectralTerm> Terms { get; }

    internal IReadOnlyList<TermSpectrum> Spectra { get; }

    /// <summary>c_j.</summary>
    internal double[] LogFloor { get; }

    /// <summary>The floor without its slope.</summary>
    internal double[] SmoothFloor { get; }

    internal double Slope { get; }

    internal double[] Expected { get; }

    /// <summary>With that of the floor's waves beforehand.</summary>
    internal double LogLikelihood { get; }

    /// <summary>A level floor at the median.</summary>
    internal static SpectralModel Floor(SpectrumLines lines)
    {
        double[] sorted = [.. lines.Densities.Order()];
        double[] floor = new double[lines.FloorWaves.Length];
        floor[0] = Math.Log(Math.Max(sorted[sorted.Length / 2], sorted[^1] * 1e-14));
        return new SpectralModel(lines, [], [], floor, 0);
    }

    internal SpectralModel WithFloor(SpectrumLines lines, SpectralModel other) => new(lines, Terms, Spectra, other.LogFloor, other.Slope);

    internal SpectralModel Plus(SpectrumLines lines, SpectralTerm term) => new(lines, [.. Terms, term], [.. Spectra, lines.Spectrum(term)], LogFloor, Slope);

    internal SpectralModel Without(SpectrumLines lines, int index) =>
        new(lines, [.. Terms.Where((_, i) => i != index)], [.. Spectra.Where((_, i) => i != index)], LogFloor, Slope);

    /// <summary>Derivatives of the expected densities relative to themselves, for the terms from <paramref name="firstFree"/> on and the floor's parts, slope last.</summary>
    internal List<double[]> Columns(SpectrumLines lines, int firstFree)
    {
        List<double[]> columns = [];
        for (int t = firstFree; t < Terms.Count; t++)
        {
            columns.Add(Relative(Spectra[t].Density));
            columns.Add(Relative(Spectra[t].ByAngle));
            if (!Terms[t].IsTone)
            {
                columns.Add(Relative(Spectra[t].ByDamping));
            }
        }

        foreach (double[] wave in lines.FloorWaves)
        {
            columns.Add(FloorColumn(wave));
        }

        columns.Add([.. Expected.Select((e, i) => SlopeUnit * lines.FloorShape[i] / e)]);
        return columns;
    }

    /// <summary>Inverse square of what c_j is thought to be beforehand.</summary>
    internal static double WavePrecision(int wave) => wave * wave / (1.5 * 1.5);

    /// <summary>Size of a step of the slope, which may be zero.</summary>
    internal double SlopeUnit => Math.Max(Slope, 0.01 * SmoothFloor[0]);

    private double[] Relative(ReadOnlySpan<double> derivative)
    {
        double[] relative = new double[Expected.Length];
        for (int i = 0; i < relative.Length; i++)
        {
            relative[i] = derivative[i] / Expected[i];
        }

        return relative;
    }

    private double[] FloorColumn(double[] wave)
    {
        double[] column = new double[Expected.Length];
        for (int i = 0; i < column.Length; i++)
        {
            column[i] = SmoothFloor[i] * wave[i] / Expected[i];
        }

        return column;
    }
}
