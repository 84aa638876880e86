using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Power spectral density averaged over orthogonal tapers of the whole signal: for records too short to cut into segments.</summary>
/// <remarks>
/// S(f) = Σ d_k²·S_k(f)/Σ d_k², S_k = 2·|X_k|²/rate with tapers of Σw² = 1; not doubled at zero, nor at half the rate of an even length. By concentration d_k² = λ_k. Adaptive: d_k² = λ_k·b_k²,
/// b_k = S/(λ_k·S + (1 − λ_k)·σ²), σ² the density of white noise of the same mean square, solved by iteration. The densities scatter as χ² with ν = 2·(Σ d_k²)²/Σ d_k⁴ degrees of freedom.
/// Each frequency smooths over ±W = ±NW/duration; a mode narrower than that is lost.
/// Source: D. J. Thomson, 1982, "Spectrum estimation and harmonic analysis", Proc. IEEE 70(9), 1055-1096; D. B. Percival, A. T. Walden, 1993, Spectral Analysis for Physical Applications,
/// equations (368a) to (370b) (numbers from memory).
/// </remarks>
/// <example><code>MultitaperSpectrum spectrum = Multitaper.Estimate(signal, new MultitaperOptions { TimeBandwidth = 3 });</code></example>
public static class Multitaper
{
    /// <summary>The spectrum of a signal.</summary>
    /// <param name="signal">The signal, 8 to 4 194 304 samples.</param>
    /// <param name="options">Tapers and weighting; null for the defaults.</param>
    /// <returns>The spectrum.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range, or the signal is too short or too long.</exception>
    public static MultitaperSpectrum Estimate(SampledSignal signal, MultitaperOptions? options = null)
    {
        options ??= new MultitaperOptions();
        if (Guard.NotNull(signal).Count is < 8 or > (1 << 22))
        {
            throw Guard.Out(nameof(signal), signal.Count, "a signal of 8 to 4194304 samples");
        }

        double timeBandwidth = Guard.Between(options.TimeBandwidth, 1, Math.Min(64, signal.Count / 4.0), nameof(options));
        int count = options.Tapers ?? Math.Max(1, (int)((2 * timeBandwidth) - 1));
        Guard.Between(count, 1, 2 * timeBandwidth, nameof(options));
        if (!Enum.IsDefined(options.Detrend))
        {
            throw Guard.Out(nameof(options), options.Detrend, "one of the named ways to detrend");
        }

        if (!Enum.IsDefined(options.Weighting))
        {
            throw Guard.Out(nameof(options), options.Weighting, "one of the named weightings");
        }

        var tapers = SlepianTapers.Of(signal.Count, timeBandwidth, count);
        double[] flat = Detrended(signal.Samples, options.Detrend);
        double[][] spectra = Tapered(flat, tapers, signal.SampleRateHertz);
        double noise = 2 * flat.Average(v => v * v) / signal.SampleRateHertz;
        return TaperAverage.Of(spectra, tapers, options.Weighting, noise, signal.SampleRateHertz);
    }

    private static double[] Detrended(ReadOnlySpan<double> samples, Detrending detrend)
    {
        double[] flat = samples.ToArray();
        (double level, double slope) = Trend.Of(flat, detrend);
        for (int i = 0; i < flat.Length; i++)
        {
            flat[i] -= level + (slope * i);
        }

        return flat;
    }

    private static double[][] Tapered(double[] samples, SlepianTapers tapers, double rateHertz)
    {
        var transform = new RealFourierTransform(samples.Length);
        double[] windowed = new double[samples.Length], re = new double[transform.Bins], im = new double[transform.Bins];
        double[][] spectra = new double[tapers.Count][];
        for (int k = 0; k < spectra.Length; k++)
        {
            ReadOnlySpan<double> taper = tapers.Taper(k);
            for (int i = 0; i < windowed.Length; i++)
            {
                windowed[i] = samples[i] * taper[i];
            }

            transform.Forward(windowed, re, im);
            double[] powers = spectra[k] = new double[transform.Bins];
            for (int i = 0; i < powers.Length; i++)
            {
                powers[i] = (i == 0 || 2 * i == samples.Length ? 1 : 2) * ((re[i] * re[i]) + (im[i] * im[i])) / rateHertz;
            }
        }

        return spectra;
    }
}
