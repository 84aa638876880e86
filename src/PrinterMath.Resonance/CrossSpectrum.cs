using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>One-sided cross-spectral density of two signals, S_ab = mean of conj(A)·B over windowed, overlapping segments, with both power spectra and the coherence.</summary>
/// <remarks>
/// In the product of the signals' units per hertz. Positive phase means that the second signal leads. Scaled as <see cref="Welch"/> scales: of a signal with itself it is the power spectrum.
/// Coherence γ² = |S_ab|²/(S_aa·S_bb): the share of the second signal's power that a linear system fed by the first explains. Its standard uncertainty √2·(1 − γ²)·γ/√n, n the
/// effective averages, is large-sample theory: of signals that have nothing in common γ² is about 1/n, not 0.
/// Source: J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 5.2 and table 9.6 (from memory).
/// </remarks>
/// <example><code>
/// CrossSpectrum both = CrossSpectrum.Estimate(commanded, measured);
/// if (both.TryGetCoherence(40, out Measured&lt;double&gt; coherence)) { Console.WriteLine(coherence); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class CrossSpectrum
{
    private readonly Complex[] _densities;
    private readonly double[] _coherences;

    private CrossSpectrum(Complex[] densities, PowerSpectrum first, PowerSpectrum second)
    {
        _densities = densities;
        First = first;
        Second = second;
        _coherences = new double[densities.Length];
        for (int i = 0; i < densities.Length; i++)
        {
            // Divided before multiplied, so that the product of two small densities does not vanish.
            double size = densities[i].Magnitude;
            _coherences[i] = size > 0 ? Math.Clamp(size / first.Densities[i] * (size / second.Densities[i]), 0, 1) : 0;
        }
    }

    /// <summary>Power spectrum of the first signal, S_aa.</summary>
    public PowerSpectrum First { get; }

    /// <summary>Power spectrum of the second signal, S_bb.</summary>
    public PowerSpectrum Second { get; }

    /// <summary>Number of frequencies.</summary>
    public int Count => _densities.Length;

    /// <summary>Cross-spectral densities S_ab, from frequency 0 in steps of <see cref="Resolution"/>.</summary>
    public ReadOnlySpan<Complex> Densities => _densities;

    /// <summary>Distance of the frequencies, rate/segment length.</summary>
    public Frequency Resolution => First.Resolution;

    /// <summary>Number of segments averaged.</summary>
    public int Averages => First.Averages;

    /// <summary>Independent segments that would scatter as little, n.</summary>
    public double EffectiveAverages => First.EffectiveAverages;

    /// <summary>Coherences γ², from 0 to 1; 0 where either signal holds nothing.</summary>
    /// <exception cref="IndeterminateException">There is one segment only.</exception>
    public ReadOnlySpan<double> Coherences => Averages > 1 ? _coherences : throw new IndeterminateException(OneSegment);

    private Finding OneSegment => new(
        SpectrumFindings.OneSegment,
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"The signals hold one segment of {First.Segments.Window.Length} samples, and one segment has no coherence: shorten the segments."));

    /// <summary>The spectra of two signals.</summary>
    /// <param name="first">The first signal, at least one segment long.</param>
    /// <param name="second">The second, sampled at the same times.</param>
    /// <param name="options">Segments and window; null for the defaults.</param>
    /// <returns>The spectra.</returns>
    /// <exception cref="ArgumentException">The signals differ in rate or length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range, or the segment is longer than the signals.</exception>
    public static CrossSpectrum Estimate(SampledSignal first, SampledSignal second, WelchOptions? options = null)
    {
        if (Guard.NotNull(first).Count != Guard.NotNull(second).Count || first.SampleRateHertz != second.SampleRateHertz)
        {
            throw Guard.Refused(nameof(second), $"The first signal is {first}, the second {second}; rate and length must agree.");
        }

        var segments = Segments.Of(first.Count, options ?? new WelchOptions());
        SegmentSpectrum a = segments.Workspace(), b = segments.Workspace();
        double[] powers = new double[segments.Bins], otherPowers = new double[segments.Bins];
        double[] real = new double[segments.Bins], imaginary = new double[segments.Bins];
        for (int k = 0; k < segments.Count; k++)
        {
            segments.Transform(first.Samples, k, a);
            segments.Transform(second.Samples, k, b);
            a.AddPowers(powers);
            b.AddPowers(otherPowers);
            a.AddProducts(b, real, imaginary);
        }

        segments.Scale(powers, first.SampleRateHertz);
        segments.Scale(otherPowers, first.SampleRateHertz);
        segments.Scale(real, first.SampleRateHertz);
        segments.Scale(imaginary, first.SampleRateHertz);
        return new CrossSpectrum(
            [.. real.Zip(imaginary, (re, im) => new Complex(re, im))],
            new PowerSpectrum(powers, first.SampleRateHertz, segments),
            new PowerSpectrum(otherPowers, first.SampleRateHertz, segments));
    }

    /// <summary>One of the frequencies.</summary>
    /// <param name="index">Which, from 0.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public Frequency FrequencyAt(int index) => First.FrequencyAt(index);

    /// <summary>Coherence at a frequency with its standard uncertainty.</summary>
    /// <param name="index">Which frequency, from 0.</param>
    /// <param name="coherence">γ², or the default.</param>
    /// <returns>False when there is one segment only, or either signal holds nothing there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public bool TryGetCoherence(int index, out Measured<double> coherence)
    {
        double value = _coherences[(int)Guard.Between(index, 0, Count - 1)];
        bool known = Averages > 1 && value > 0;
        coherence = known
            ? Measured<double>.FromSi(value, Math.Sqrt(2 / EffectiveAverages) * (1 - value) * Math.Sqrt(value))
            : default;
        return known;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Range, resolution and averages.</returns>
    public override string ToString() => "two signals, " + First;
}
