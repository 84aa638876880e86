using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>One-sided power spectral density of a signal by several tapers, in its unit squared per hertz, with the scatter at each frequency.</summary>
/// <remarks>Source: D. J. Thomson, 1982, Proc. IEEE 70(9), 1055-1096. Not to be confused with <see cref="PowerSpectrum"/>, averaged over segments.</remarks>
/// <example><code>
/// MultitaperSpectrum spectrum = Multitaper.Estimate(record.X);
/// (double low, double high) = spectrum.ConfidenceFactors(40);  // truth lies between density·low and density·high
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MultitaperSpectrum
{
    private readonly double[] _densities;
    private readonly double[] _freedoms;
    private readonly double _rateHertz;

    internal MultitaperSpectrum(double[] densities, double[] freedoms, SlepianTapers tapers, double rateHertz)
    {
        _densities = densities;
        _freedoms = freedoms;
        Tapers = tapers;
        _rateHertz = rateHertz;
    }

    /// <summary>The tapers.</summary>
    public SlepianTapers Tapers { get; }

    /// <summary>Number of frequencies.</summary>
    public int Count => _densities.Length;

    /// <summary>Densities in the signal's unit squared per hertz, from frequency 0 in steps of <see cref="Spacing"/>.</summary>
    public ReadOnlySpan<double> Densities => _densities;

    /// <summary>Degrees of freedom ν of each density: at most twice the number of tapers.</summary>
    public ReadOnlySpan<double> DegreesOfFreedom => _freedoms;

    /// <summary>Distance of the frequencies, one over the duration. Neighbours within <see cref="HalfBandwidth"/> are not independent.</summary>
    public Frequency Spacing => Frequency.FromHertz(_rateHertz / Tapers.Length);

    /// <summary>W: each density is a mean over ±W.</summary>
    public Frequency HalfBandwidth => Frequency.FromHertz(Tapers.TimeBandwidth * _rateHertz / Tapers.Length);

    /// <summary>One of the frequencies.</summary>
    /// <param name="index">Which, from 0.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public Frequency FrequencyAt(int index)
    {
        Guard.Between(index, 0, Count - 1);
        return Frequency.FromHertz(index * _rateHertz / Tapers.Length);
    }

    /// <summary>Factors on a density between which the true density lies.</summary>
    /// <param name="index">Which frequency, from 0.</param>
    /// <param name="coverage">Coverage probability, greater than 0 and less than 1.</param>
    /// <returns>Lower and upper factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index, or the coverage is out of range.</exception>
    /// <remarks>ν/χ²(ν; (1 + p)/2) and ν/χ²(ν; (1 − p)/2); holds where the true density is level over ±W.</remarks>
    public (double Lower, double Upper) ConfidenceFactors(int index, double coverage = 0.95)
    {
        Guard.Between(index, 0, Count - 1);
        return ChiSquareBand.Factors(_freedoms[index], Guard.StrictlyBetween(coverage, 0, 1));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Range, bandwidth and tapers.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"0 to {FrequencyAt(Count - 1).Hertz:G5} Hz in steps of {Spacing.Hertz:G4} Hz, each over ±{HalfBandwidth.Hertz:G4} Hz, {Tapers.Count} tapers");
}
