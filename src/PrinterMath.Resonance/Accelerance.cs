using System.Diagnostics;
using System.Numerics;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Acceleration over force at each frequency, complex, in 1/kg = (m/s²)/N.</summary>
/// <remarks>
/// A = jω·Y = −ω²·α, with mobility Y and receptance α. Far above the last mode of a free body it is one over its mass.
/// Source: ISO 2041:2018, terms for frequency-response functions (from memory); D. J. Ewins, Modal Testing, 2nd ed. 2000, section 2.3 (from memory).
/// </remarks>
/// <example><code>Accelerance a = Accelerance.Estimate(force, acceleration);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Accelerance
{
    internal Accelerance(ResponseLines lines) => Response = new FrequencyResponse(lines);

    /// <summary>Frequencies, complex values, coherences and random errors.</summary>
    public FrequencyResponse Response { get; }

    /// <summary>Values known from elsewhere, without coherence: random errors stay unknown.</summary>
    /// <param name="frequencies">Frequencies in hertz, zero or more, each above the one before; at least one.</param>
    /// <param name="values">As many complex values in 1/kg.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the frequencies do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are no values, a number is not finite, or a frequency is negative.</exception>
    public static Accelerance FromValues(ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values) => new(ResponseLines.Given(frequencies, values));

    /// <summary>Values known from elsewhere, with their coherences.</summary>
    /// <param name="frequencies">Frequencies in hertz, zero or more, each above the one before; at least one.</param>
    /// <param name="values">As many complex values in 1/kg.</param>
    /// <param name="coherences">As many coherences γ², from 0 to 1.</param>
    /// <param name="effectiveAverages">Independent averages n behind them, more than 1: one segment has no coherence.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the frequencies do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are no values, or a number is not finite or out of range.</exception>
    public static Accelerance FromValues(
        ReadOnlySpan<double> frequencies, ReadOnlySpan<Complex> values, ReadOnlySpan<double> coherences, double effectiveAverages) =>
        new(ResponseLines.Given(frequencies, values, coherences, effectiveAverages));

    /// <summary>Response and coherence from the two signals.</summary>
    /// <param name="force">Force on the structure, in newtons.</param>
    /// <param name="acceleration">Acceleration where it is wanted, in m/s², at the same times.</param>
    /// <param name="options">Segments and window; null for the defaults.</param>
    /// <param name="estimator">Where the noise is thought to be.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentException">The signals differ in rate or length, or hold only one segment, which has no coherence.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static Accelerance Estimate(
        SampledSignal force, SampledSignal acceleration, WelchOptions? options = null, ResponseEstimator estimator = ResponseEstimator.H1) =>
        new(ResponseLines.Of(CrossSpectrum.Estimate(force, acceleration, options), estimator));

    /// <summary>Velocity over force, Y = A/(jω); zero frequency is left out.</summary>
    /// <returns>The same response in the other form.</returns>
    public Mobility ToMobility() => new(Response.Lines.Integrated());

    /// <summary>Displacement over force, α = −A/ω²; zero frequency is left out.</summary>
    /// <returns>The same response in the other form.</returns>
    public Receptance ToReceptance() => new(Response.Lines.Integrated().Integrated());

    /// <summary>Invariant text.</summary>
    /// <returns>What it is, range and averages.</returns>
    public override string ToString() => $"accelerance in 1/kg, {Response}";
}
