using System.Diagnostics;
using System.Numerics;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Motion of a response over the commanded motion at each frequency: complex, without unit, both motions of one kind (both accelerations, for example).</summary>
/// <remarks>
/// What a machine shaken by its own motors gives: the shape of a receptance, and 1 far below the first mode. Not to be confused with <see cref="Receptance"/>, <see cref="Mobility"/> or <see cref="Accelerance"/>, which are motion over force.
/// Source: ISO 2041:2018, the word (from memory).
/// </remarks>
/// <example><code>Transmissibility ratio = Transmissibility.Estimate(commanded, measured, new WelchOptions { SegmentLength = 1024 });</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Transmissibility
{
    internal Transmissibility(ResponseLines lines) => Response = new FrequencyResponse(lines);

    /// <summary>Frequencies, complex values, coherences and random errors.</summary>
    public FrequencyResponse Response { get; }

    /// <summary>Values known from elsewhere, without coherence: random errors stay unknown.</summary>
    /// <param name="frequencies">Frequencies in hertz, zero or more, each above the one before; at least one.</param>
    /// <param name="values">As many complex values.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the frequencies do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are no values, a number is not finite, or a frequency is negative.</exception>
    public static Transmissibility FromValues(ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values) => new(ResponseLines.Given(frequencies, values));

    /// <summary>Values known from elsewhere, with their coherences.</summary>
    /// <param name="frequencies">Frequencies in hertz, zero or more, each above the one before; at least one.</param>
    /// <param name="values">As many complex values.</param>
    /// <param name="coherences">As many coherences γ², from 0 to 1.</param>
    /// <param name="effectiveAverages">Independent averages n behind them, more than 1: one segment has no coherence.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the frequencies do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are no values, or a number is not finite or out of range.</exception>
    public static Transmissibility FromValues(
        ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values, ReadOnlySpan<double> coherences, double effectiveAverages) =>
        new(ResponseLines.Given(frequencies, values, coherences, effectiveAverages));

    /// <summary>Response and coherence from the two signals.</summary>
    /// <param name="command">Commanded motion.</param>
    /// <param name="response">Motion of the response, of the same kind, rate and length.</param>
    /// <param name="options">Segments and window; null for the defaults.</param>
    /// <param name="estimator">Where the noise is thought to be.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentException">The signals differ in rate or length, or hold only one segment, which has no coherence.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static Transmissibility Estimate(
        SampledSignal command, SampledSignal response, WelchOptions? options = null, ResponseEstimator estimator = ResponseEstimator.H1) =>
        new(ResponseLines.Of(CrossSpectrum.Estimate(command, response, options), estimator));

    /// <summary>Invariant text.</summary>
    /// <returns>What it is, range and averages.</returns>
    public override string ToString() => $"transmissibility, {Response}";
}
