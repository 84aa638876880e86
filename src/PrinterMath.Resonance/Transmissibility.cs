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
    private readonly double _resolution;

    private Transmissibility(Complex[] values, double[] coherences, double resolution, double averages)
    {
        _values = values;
        _coherences = coherences;
        _resolution = resolution;
        EffectiveAverages = averages;
    }

    /// <summary>Number of frequencies.</summary>
    public int Count => _values.Length;

    /// <summary>Complex ratios, from frequency 0 upwards; 0 where the command holds nothing.</summary>
    public ReadOnlySpan<Complex> Values => _values;

    /// <summary>Coherences γ², from 0 to 1; 0 where either motion holds nothing.</summary>
    public ReadOnlySpan<double> Coherences => _coherences;

    /// <summary>Effective number of averages n.</summary>
    public double EffectiveAverages { get; }

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

        double[] u = segments.Workspace(), y = segments.Workspace();
        double[] commandPower = new double[segments.Bins], responsePower = new double[segments.Bins];
        var cross = new Complex[segments.Bins];
        for (int k = 0; k < segments.Count; k++)
        {
            segments.Transform(command.Samples, k, u);
            segments.Transform(response.Samples, k, y);
            for (int i = 0; i < cross.Length; i++)
            {
                var one = new Complex(u[2 * i], u[(2 * i) + 1]);
                var other = new Complex(y[2 * i], y[(2 * i) + 1]);
                commandPower[i] += (one * Complex.Conjugate(one)).Real;
                responsePower[i] += (other * Complex.Conjugate(other)).Real;
                cross[i] += Complex.Conjugate(one) * other;
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

        return new Transmissibility(values, coherences, command.SampleRateHertz / segments.Window.Length, segments.EffectiveCount());
    }

    /// <summary>One of the frequencies.</summary>
    /// <param name="index">Which, from 0.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public Frequency FrequencyAt(int index)
    {
        Guard.Between(index, 0, Count - 1);
        return Frequency.FromHertz(index * _resolution);
    }

    /// <summary>Size of the ratio at a frequency with its random error, if the motions are coherent there at all.</summary>
    /// <param name="index">Which frequency, from 0.</param>
    /// <param name="magnitude">|H₁|, or the default.</param>
    /// <returns>False where the coherence is zero.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public bool TryGetMagnitude(int index, out Measured<double> magnitude)
    {
        Guard.Between(index, 0, Count - 1);
        double coherence = _coherences[index];
        double size = _values[index].Magnitude;
        magnitude = coherence > 0
            ? Measured<double>.FromSi(size, size * RandomError(coherence, EffectiveAverages))
            : default;
        return coherence > 0;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Range and averages.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"0 to {(Count - 1) * _resolution:G5} Hz in steps of {_resolution:G4} Hz, {EffectiveAverages:0.0} effective averages");

    private static double RandomError(double coherence, double averages) => Math.Sqrt((1 - coherence) / (2 * coherence * averages));
}
