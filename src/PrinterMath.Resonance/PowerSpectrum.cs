using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>One-sided power spectral density of a signal, in its unit squared per hertz.</summary>
/// <remarks>
/// Densities times <see cref="Resolution"/> sum to the mean square of the windowed segments (Parseval). An averaged density scatters as χ² with 2·<see cref="EffectiveAverages"/>
/// degrees of freedom about the truth, half as many at zero and at half the rate. Not to be confused with an amplitude spectrum: a tone's height depends on the noise bandwidth.
/// Source: P. D. Welch, 1967, IEEE Trans. Audio Electroacoust. 15(2), 70-73.
/// </remarks>
/// <example><code>
/// PowerSpectrum spectrum = Welch.Estimate(record.X);
/// (double low, double high) = spectrum.ConfidenceFactors(0.95);  // truth lies between density·low and density·high
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PowerSpectrum
{
    private readonly double[] _densities;

    internal PowerSpectrum(double[] densities, double sampleRateHertz, Segments segments)
    {
        _densities = densities;
        SampleRateHertz = sampleRateHertz;
        Segments = segments;
        EffectiveAverages = segments.EffectiveCount();
    }

    /// <summary>Number of frequencies.</summary>
    public int Count => _densities.Length;

    /// <summary>Densities in the signal's unit squared per hertz, from frequency 0 in steps of <see cref="Resolution"/>.</summary>
    public ReadOnlySpan<double> Densities => _densities;

    /// <summary>Distance of the frequencies, rate/segment length.</summary>
    public Frequency Resolution => Frequency.FromHertz(ResolutionHertz);

    /// <summary>Bandwidth of the white noise that one frequency collects: wider than <see cref="Resolution"/> by the window's figure.</summary>
    public Frequency NoiseBandwidth => Frequency.FromHertz(ResolutionHertz * Segments.Window.NoiseBandwidthBins);

    /// <summary>Sample rate of the signal.</summary>
    public Frequency SampleRate => Frequency.FromHertz(SampleRateHertz);

    /// <summary>Number of segments averaged, K.</summary>
    public int Averages => Segments.Count;

    /// <summary>Independent segments that would scatter as little: K/(1 + 2·Σ(1 − j/K)·ρ_j²), with ρ_j the correlation of segments j steps apart.</summary>
    public double EffectiveAverages { get; }

    /// <summary>Sum of densities times resolution: mean square of the windowed segments, in the signal's unit squared.</summary>
    public double TotalPower
    {
        get
        {
            double sum = 0;
            foreach (double density in _densities)
            {
                sum += density;
            }

            return sum * ResolutionHertz;
        }
    }

    internal double ResolutionHertz => SampleRateHertz / Segments.Window.Length;

    internal double SampleRateHertz { get; }

    internal Segments Segments { get; }

    /// <summary>One of the frequencies.</summary>
    /// <param name="index">Which, from 0.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public Frequency FrequencyAt(int index)
    {
        Guard.Between(index, 0, Count - 1);
        return Frequency.FromHertz(index * ResolutionHertz);
    }

    /// <summary>Factors on a density between which the true density lies, for frequencies other than zero and half the rate.</summary>
    /// <param name="coverage">Coverage probability, greater than 0 and less than 1.</param>
    /// <returns>Lower and upper factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The coverage is out of range.</exception>
    /// <remarks>
    /// ν/χ²(ν; (1 + p)/2) and ν/χ²(ν; (1 − p)/2) with ν = 2·effective averages; holds where the true density is level across the noise bandwidth.
    /// Source: J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 8.5 (from memory).
    /// </remarks>
    public (double Lower, double Upper) ConfidenceFactors(double coverage = 0.95)
    {
        Guard.StrictlyBetween(coverage, 0, 1);
        return ChiSquareBand.Factors(2 * EffectiveAverages, coverage);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Range, resolution and averages.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"0 to {(Count - 1) * ResolutionHertz:G5} Hz in steps of {ResolutionHertz:G4} Hz, {Averages} averages ({EffectiveAverages:0.0} effective)");
}
