using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>Motion of a response over the commanded motion at each frequency: complex, without unit, both motions of one kind (both accelerations, for example).</summary>
/// <remarks>
/// H₁ = S_uy/S_uu, S_uy the mean of conj(U)·Y over the segments: unbiased by noise in the response, low by noise in the command. Coherence γ² = |S_uy|²/(S_uu·S_yy); relative random error
/// of |H₁| √((1 − γ²)/(2γ²n)) with n the effective averages. Not to be confused with receptance, mobility or accelerance, which are motion over force.
/// Source: J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, table 9.6 (from memory); the word as in ISO 2041.
/// </remarks>
/// <example><code>Transmissibility ratio = Transmissibility.Estimate(commanded, measured, new WelchOptions { SegmentLength = 1024 });</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Transmissibility
{
    private readonly Complex[] _values;
    private readonly double[] _coherences;
    private readonly double[] _frequencies;
    private readonly double? _averages;

    private Transmissibility(Complex[] values, double[] coherences, double[] frequencies, double? averages)
    {
        _values = values;
        _coherences = coherences;
        _frequencies = frequencies;
        _averages = averages;
    }

    /// <summary>Number of frequencies.</summary>
    public int Count => _values.Length;

    /// <summary>Complex ratios, in order of frequency; 0 where the command holds nothing.</summary>
    public ReadOnlySpan<Complex> Values => _values;

    /// <summary>Coherences γ², from 0 to 1; 0 where either motion holds nothing. Empty when values were given without them.</summary>
    public ReadOnlySpan<double> Coherences => _coherences;

    /// <summary>Whether coherences are known, and with them the random errors.</summary>
    public bool HasCoherence => _averages is not null;

    /// <summary>Effective number of averages n.</summary>
    /// <exception cref="IndeterminateException">Values were given without coherence.</exception>
    public double EffectiveAverages => _averages ?? throw new IndeterminateException(NoCoherence);

    private static Finding NoCoherence => new(
        TransmissibilityFindings.NoCoherence, FindingSeverity.Blocking, "The ratios were given without coherence: their random errors are not known.");

    /// <summary>Ratios known from elsewhere, without coherence: random errors stay unknown.</summary>
    /// <param name="frequencies">Frequencies in hertz, zero or more, each above the one before; at least one.</param>
    /// <param name="values">As many complex ratios.</param>
    /// <returns>The transmissibility.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the frequencies do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are no values, a number is not finite, or a frequency is negative.</exception>
    public static Transmissibility FromValues(ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values)
    {
        Check(frequencies, values);
        return new Transmissibility(values.ToArray(), [], frequencies.ToArray(), null);
    }

    /// <summary>Ratios known from elsewhere, with their coherences.</summary>
    /// <param name="frequencies">Frequencies in hertz, zero or more, each above the one before; at least one.</param>
    /// <param name="values">As many complex ratios.</param>
    /// <param name="coherences">As many coherences γ², from 0 to 1.</param>
    /// <param name="effectiveAverages">Independent averages n behind them, more than 1: one segment has no coherence.</param>
    /// <returns>The transmissibility.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the frequencies do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are no values, or a number is not finite or out of range.</exception>
    public static Transmissibility FromValues(
        ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values, ReadOnlySpan<double> coherences, double effectiveAverages)
    {
        Check(frequencies, values);
        if (coherences.Length != values.Length)
        {
            throw Guard.Refused(nameof(coherences), $"{values.Length} ratios need as many coherences; there are {coherences.Length}.");
        }

        foreach (double coherence in coherences)
        {
            Guard.Between(coherence, 0, 1, nameof(coherences));
        }

        double averages = Guard.Finite(effectiveAverages) > 1 ? effectiveAverages : throw Guard.Out(nameof(effectiveAverages), effectiveAverages, "more than 1 average");
        return new Transmissibility(values.ToArray(), coherences.ToArray(), frequencies.ToArray(), averages);
    }

    /// <summary>Ratio and coherence from the two signals.</summary>
    /// <param name="command">Commanded motion.</param>
    /// <param name="response">Motion of the response, of the same kind, rate and length.</param>
    /// <param name="options">Segments and window; null for the defaults.</param>
    /// <returns>The transmissibility.</returns>
    /// <exception cref="ArgumentException">The signals differ in rate or length, or hold only one segment, which has no coherence.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static Transmissibility Estimate(SampledSignal command, SampledSignal response, WelchOptions? options = null)
    {
        if (Guard.NotNull(command).Count != Guard.NotNull(response).Count || command.SampleRateHertz != response.SampleRateHertz)
        {
            throw Guard.Refused(nameof(response), $"The response is {response}, the command {command}; rate and length must agree.");
        }

        var segments = Segments.Of(command.Count, options ?? new WelchOptions());
        if (segments.Count < 2)
        {
            throw Guard.Refused(nameof(options), $"The signals hold one segment of {segments.Window.Length} samples, and one segment has no coherence: shorten the segments.");
        }

        SegmentSpectrum u = segments.Workspace(), y = segments.Workspace();
        double[] commandPower = new double[segments.Bins], responsePower = new double[segments.Bins];
        var cross = new Complex[segments.Bins];
        for (int k = 0; k < segments.Count; k++)
        {
            segments.Transform(command.Samples, k, u);
            segments.Transform(response.Samples, k, y);
            u.AddPowers(commandPower);
            y.AddPowers(responsePower);
            for (int i = 0; i < cross.Length; i++)
            {
                cross[i] += Complex.Conjugate(u[i]) * y[i];
            }
        }

        var values = new Complex[cross.Length];
        double[] coherences = new double[cross.Length];
        for (int i = 0; i < cross.Length; i++)
        {
            values[i] = commandPower[i] > 0 ? cross[i] / commandPower[i] : Complex.Zero;
            double product = commandPower[i] * responsePower[i];
            coherences[i] = product > 0 ? Math.Clamp((cross[i] * Complex.Conjugate(cross[i])).Real / product, 0, 1) : 0;
        }

        double resolution = command.SampleRateHertz / segments.Window.Length;
        return new Transmissibility(values, coherences, [.. Enumerable.Range(0, values.Length).Select(i => i * resolution)], segments.EffectiveCount());
    }

    /// <summary>One of the frequencies.</summary>
    /// <param name="index">Which, from 0.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public Frequency FrequencyAt(int index)
    {
        Guard.Between(index, 0, Count - 1);
        return Frequency.FromHertz(_frequencies[index]);
    }

    /// <summary>Size of the ratio at a frequency with its random error, if the motions are coherent there at all.</summary>
    /// <param name="index">Which frequency, from 0.</param>
    /// <param name="magnitude">|H₁|, or the default.</param>
    /// <returns>False where the coherence is zero or not known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public bool TryGetMagnitude(int index, out Measured<double> magnitude)
    {
        Guard.Between(index, 0, Count - 1);
        double coherence = HasCoherence ? _coherences[index] : 0;
        double size = _values[index].Magnitude;
        magnitude = coherence > 0
            ? Measured<double>.FromSi(size, size * RandomError(coherence, EffectiveAverages))
            : default;
        return coherence > 0;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Range and averages.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Count} ratios from {_frequencies[0]:G5} to {_frequencies[^1]:G5} Hz, {(HasCoherence ? string.Create(CultureInfo.InvariantCulture, $"{_averages:0.0} effective averages") : "without coherence")}");

    private static void Check(ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values)
    {
        Guard.AtLeast(values.Length, 1, nameof(values));
        if (frequencies.Length != values.Length)
        {
            throw Guard.Refused(nameof(frequencies), $"{values.Length} ratios need as many frequencies; there are {frequencies.Length}.");
        }

        for (int i = 0; i < values.Length; i++)
        {
            Guard.NonNegative(frequencies[i], nameof(frequencies));
            Guard.Finite(values[i].Real, nameof(values));
            Guard.Finite(values[i].Imaginary, nameof(values));
            if (i > 0 && frequencies[i] <= frequencies[i - 1])
            {
                throw Guard.Refused(nameof(frequencies), FormattableString.Invariant($"Frequencies must rise; {frequencies[i]} Hz follows {frequencies[i - 1]} Hz."));
            }
        }
    }

    private static double RandomError(double coherence, double averages) => Math.Sqrt((1 - coherence) / (2 * coherence * averages));
}
