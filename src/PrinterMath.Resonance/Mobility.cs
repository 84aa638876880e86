using System.Diagnostics;
using System.Numerics;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Velocity over force at each frequency, complex, in (m/s)/N.</summary>
/// <remarks>
/// Y = jω·α = A/(jω), with receptance α and accelerance A. The one form in which the half-power bandwidth of a viscously damped mode is exactly 2ζ·f.
/// Source: ISO 2041:2018, terms for frequency-response functions (from memory); D. J. Ewins, Modal Testing, 2nd ed. 2000, section 2.3 (from memory).
/// </remarks>
/// <example><code>Mobility y = Accelerance.Estimate(force, acceleration).ToMobility();</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Mobility
{
    internal Mobility(ResponseLines lines) => Response = new FrequencyResponse(lines);

    /// <summary>Frequencies, complex values, coherences and random errors.</summary>
    public FrequencyResponse Response { get; }

    /// <summary>Values known from elsewhere, without coherence: random errors stay unknown.</summary>
    /// <param name="frequencies">Frequencies in hertz, zero or more, each above the one before; at least one.</param>
    /// <param name="values">As many complex values in (m/s)/N.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the frequencies do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are no values, a number is not finite, or a frequency is negative.</exception>
    public static Mobility FromValues(ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values) => new(ResponseLines.Given(frequencies, values));

    /// <summary>Values known from elsewhere, with their coherences.</summary>
    /// <param name="frequencies">Frequencies in hertz, zero or more, each above the one before; at least one.</param>
    /// <param name="values">As many complex values in (m/s)/N.</param>
    /// <param name="coherences">As many coherences γ², from 0 to 1.</param>
    /// <param name="effectiveAverages">Independent averages n behind them, more than 1: one segment has no coherence.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the frequencies do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are no values, or a number is not finite or out of range.</exception>
    public static Mobility FromValues(
        ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values, ReadOnlySpan<double> coherences, double effectiveAverages) =>
        new(ResponseLines.Given(frequencies, values, coherences, effectiveAverages));

    /// <summary>Response and coherence from the two signals.</summary>
    /// <param name="force">Force on the structure, in newtons.</param>
    /// <param name="velocity">Velocity where it is wanted, in m/s, at the same times.</param>
    /// <param name="options">Segments and window; null for the defaults.</param>
    /// <param name="estimator">Where the noise is thought to be.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentException">The signals differ in rate or length, or hold only one segment, which has no coherence.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static Mobility Estimate(
        SampledSignal force, SampledSignal velocity, WelchOptions? options = null, ResponseEstimator estimator = ResponseEstimator.H1) =>
        new(ResponseLines.Of(CrossSpectrum.Estimate(force, velocity, options), estimator));

    /// <summary>Displacement over force, α = Y/(jω); zero frequency is left out.</summary>
    /// <returns>The same response in the other form.</returns>
    public Receptance ToReceptance() => new(Response.Lines.Integrated());

    /// <summary>Acceleration over force, A = jω·Y.</summary>
    /// <returns>The same response in the other form.</returns>
    public Accelerance ToAccelerance() => new(Response.Lines.Differentiated());

    /// <summary>Invariant text.</summary>
    /// <returns>What it is, range and averages.</returns>
    public override string ToString() => $"mobility in m/(N·s), {Response}";
}
