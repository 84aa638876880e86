namespace PrinterMath.Resonance;

/// <summary>The lines of a spectrum that are fitted, how they scatter, and the likelihood of an expected spectrum.</summary>
/// <remarks>
/// A density scatters as χ² with 2ν degrees of freedom about its expectation, so the logarithm of its likelihood is −ν·(ln E + P/E). Lines near each other are
/// correlated by the window and by overlap; <see cref="Correlation"/> holds by how much, for a spectrum level over a few lines.
/// Source: P. Whittle 1953, "Estimation and information in stationary time series", Arkiv för Matematik 2, 423-434 (from memory).
/// </remarks>
internal sealed class SpectrumLines
{
    private const int MostWaves = 9;
    private readonly WindowKernel _kernel;
    private readonly ResponseShape _shape;

    internal SpectrumLines(PowerSpectrum spectrum, ResponseShape shape, int first, int last)
    {
        Densities = spectrum.Densities[first..(last + 1)].ToArray();
        First = first;
        Averages = spectrum.EffectiveAverages;
        Rate = spectrum.SampleRateHertz;
        Resolution = spectrum.ResolutionHertz;
        Correlation = spectrum.Segments.LineCorrelations();
        Inflation = 1 + (2 * Correlation.Skip(1).Sum());
        FloorShape = [.. Enumerable.Range(first, Densities.Length).Select(line => (double)first / line)];
        FloorWaves = [.. Enumerable.Range(0, Math.Clamp(Densities.Length / 12, 1, MostWaves))
            .Select(j => (double[])[.. Enumerable.Range(first, Densities.Length).Select(line => Math.Cos(2 * Math.PI * j * line / spectrum.Segments.Window.Length))])];
        _kernel = new WindowKernel(spectrum.Segments.Window, Rate);
        _shape = shape;
    }

    internal double[] Densities { get; }

    internal int First { get; }

    internal int Count => Densities.Length;

    /// <summary>ν, effective averages.</summary>
    internal double Averages { get; }

    internal double Rate { get; }

    internal double Resolution { get; }

    internal int SegmentLength => _kernel.Length;

    /// <summary>Correlation of densities 0, 1, 2 ... lines apart.</summary>
    internal double[] Correlation { get; }

    /// <summary>1 + 2·Σ correlation: how much less many lines tell than if they were independent.</summary>
    internal double Inflation { get; }

    /// <summary>first/line: the part of the noise floor that rises towards low frequencies.</summary>
    internal double[] FloorShape { get; }

    /// <summary>cos jπf/f_N, the waves of the logarithm of the floor, the constant first.</summary>
    internal double[][] FloorWaves { get; }

    /// <summary>Angle per sample of a place among the lines.</summary>
    internal double AngleAt(double place) => 2 * Math.PI * (First + place) / SegmentLength;

    /// <summary>Damping at which a mode is a hundredth of a line wide, and no longer told from a tone.</summary>
    internal double LeastDamping(double angle) => 0.01 * Math.PI / (angle * SegmentLength);

    internal TermSpectrum Spectrum(SpectralTerm term) => TermSpectrum.Of(term, _shape, _kernel, Rate, First, Count);

    internal double LogLikelihood(ReadOnlySpan<double> expected)
    {
        double sum = 0;
        for (int i = 0; i < Densities.Length; i++)
        {
            sum += Math.Log(expected[i]) + (Densities[i] / expected[i]);
        }

        return -Averages * sum;
    }
}
