using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Power spectral density averaged over windowed, overlapping segments.</summary>
/// <remarks>
/// S(f) = 2·|X(f)|²/(rate·Σw²), averaged; not doubled at zero, nor at half the rate when the segment has an even length. Samples after the last whole segment are not used.
/// Source: P. D. Welch, 1967, "The use of fast Fourier transform for the estimation of power spectra", IEEE Trans. Audio Electroacoust. 15(2), 70-73.
/// </remarks>
/// <example><code>PowerSpectrum spectrum = Welch.Estimate(signal, new WelchOptions { SegmentLength = 4096 });</code></example>
public static class Welch
{
    /// <summary>The spectrum of a signal.</summary>
    /// <param name="signal">The signal, at least one segment long.</param>
    /// <param name="options">Segments and window; null for the defaults.</param>
    /// <returns>The spectrum.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range, or the segment is longer than the signal.</exception>
    public static PowerSpectrum Estimate(SampledSignal signal, WelchOptions? options = null)
    {
        var segments = Segments.Of(Guard.NotNull(signal).Count, options ?? new WelchOptions());
        SegmentSpectrum work = segments.Workspace();
        double[] densities = new double[segments.Bins];
        for (int k = 0; k < segments.Count; k++)
        {
            segments.Transform(signal.Samples, k, work);
            work.AddPowers(densities);
        }

        segments.Scale(densities, signal.SampleRateHertz);
        return new PowerSpectrum(densities, signal.SampleRateHertz, segments);
    }
}
