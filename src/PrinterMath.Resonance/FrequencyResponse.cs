using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>
/// Complex values at frequencies, with coherences where known: the lines of a <see cref="Transmissibility"/>, <see cref="Receptance"/>, <see cref="Mobility"/> or
/// <see cref="Accelerance"/>, whose type says which motion over which cause they are, and in which unit.
/// </summary>
/// <remarks>
/// Values carry e^(+jωt): a lag is a negative phase. Relative random error of |H₁| and |H₂|, and error of any phase in radians, √((1 − γ²)/(2γ²n)) with γ² the coherence and n the effective averages; of |H_v|
/// √((1 − γ²)/(2n)). Noise on the input side of H₁ is a bias that no random error shows.
/// Source: J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, table 9.6 (from memory); that of H_v from the same variances of the spectra.
/// </remarks>
/// <example><code>
/// FrequencyResponse lines = Accelerance.Estimate(force, acceleration).Response;
/// if (lines.TryGetMagnitude(40, out Measured&lt;double&gt; size)) { Console.WriteLine($"{size} 1/kg at {lines.FrequencyAt(40)}"); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FrequencyResponse
{
    internal FrequencyResponse(ResponseLines lines) => Lines = lines;

    /// <summary>Number of frequencies.</summary>
    public int Count => Lines.Values.Length;

    /// <summary>Complex values in the type's SI unit, in order of frequency; 0 where input or output holds nothing.</summary>
    public ReadOnlySpan<Complex> Values => Lines.Values;

    /// <summary>Coherences γ², from 0 to 1. Empty when values were given without them.</summary>
    public ReadOnlySpan<double> Coherences => Lines.Coherences;

    /// <summary>Whether coherences are known, and with them the random errors.</summary>
    public bool HasCoherence => Lines.Averages is not null;

    /// <summary>Effective number of averages n.</summary>
    /// <exception cref="IndeterminateException">Values were given without coherence.</exception>
    public double EffectiveAverages => Lines.Averages ?? throw new IndeterminateException(NoCoherence);

    internal ResponseLines Lines { get; }

    private static Finding NoCoherence => new(
        SpectrumFindings.NoCoherence, FindingSeverity.Blocking, "The values were given without coherence: their random errors are not known.");

    /// <summary>One of the frequencies.</summary>
    /// <param name="index">Which, from 0.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public Frequency FrequencyAt(int index)
    {
        Guard.Between(index, 0, Count - 1);
        return Frequency.FromHertz(Lines.Frequencies[index]);
    }

    /// <summary>Size of the response at a frequency with its random error, if input and output are coherent there at all.</summary>
    /// <param name="index">Which frequency, from 0.</param>
    /// <param name="magnitude">|H| as a number in the type's SI unit, or the default.</param>
    /// <returns>False where the coherence is zero or not known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public bool TryGetMagnitude(int index, out Measured<double> magnitude)
    {
        bool known = TryGetCoherence(index, out double coherence);
        double size = Lines.Values[index].Magnitude;
        double share = Lines.Estimator == ResponseEstimator.Hv ? 1 : coherence;
        magnitude = known ? Measured<double>.FromSi(size, size * Math.Sqrt((1 - coherence) / (2 * share * EffectiveAverages))) : default;
        return known;
    }

    /// <summary>Phase of the response at a frequency with its random error; negative is a lag.</summary>
    /// <param name="index">Which frequency, from 0.</param>
    /// <param name="phase">From −180° to 180°, or the default.</param>
    /// <returns>False where the coherence is zero or not known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public bool TryGetPhase(int index, out Measured<Angle> phase)
    {
        bool known = TryGetCoherence(index, out double coherence);
        phase = known
            ? Measured.Of(Angle.FromRadians(Lines.Values[index].Phase), Angle.FromRadians(Math.Sqrt((1 - coherence) / (2 * coherence * EffectiveAverages))))
            : default;
        return known;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Range and averages.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Count} values from {Lines.Frequencies[0]:G5} to {Lines.Frequencies[^1]:G5} Hz, {(Lines.Averages is { } averages ? string.Create(CultureInfo.InvariantCulture, $"{averages:0.0} effective averages") : "without coherence")}");

    private bool TryGetCoherence(int index, out double coherence)
    {
        Guard.Between(index, 0, Count - 1);
        coherence = HasCoherence ? Lines.Coherences[index] : 0;
        return coherence > 0;
    }
}
