using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>A command shaper: impulses that a motion command is convolved with so that a mode does not ring. Amplitudes sum to one.</summary>
/// <remarks>
/// <para>Zero-vibration and its derivatives are exact for any damping ratio from 0 to 0.3. The extra-insensitive sequence is the closed form without damping; with damping it solves
/// C = S = 0 at one frequency below and one above the design, residual equal to the tolerance at the design, last impulse one damped period after the first.
/// Between the zeros the residual then exceeds the tolerance slightly (5.02 % for 5 % at a damping ratio of 0.2).</para>
/// <para>Equality is by value: the same times and amplitudes, bit for bit.</para>
/// Source: N. C. Singer, W. P. Seering, 1990, J. Dyn. Syst. Meas. Control 112(1), 76-82 (ZV, ZVD); W. Singhose, W. Seering, N. Singer, 1994, J. Mech. Design 116(2), 654-659 (EI);
/// both from memory.
/// </remarks>
/// <example><code>
/// ImpulseSequence sequence = ImpulseSequence.ExtraInsensitive(Frequency.FromHertz(50), dampingRatio: 0.06, tolerance: 0.05);
/// double left = sequence.ResidualVibration(Frequency.FromHertz(52), dampingRatio: 0.05);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ImpulseSequence : IEquatable<ImpulseSequence>
{
    private readonly double[] _amplitudes;
    private readonly double[] _times;

    private ImpulseSequence(double[] amplitudes, double[] times)
    {
        _amplitudes = amplitudes;
        _times = times;
    }

    /// <summary>Amplitudes, ratios of the whole command; they sum to one within 1e-15.</summary>
    public ReadOnlySpan<double> Amplitudes => _amplitudes;

    /// <summary>Times in seconds, rising from zero.</summary>
    public ReadOnlySpan<double> Times => _times;

    /// <summary>Number of impulses.</summary>
    public int Count => _times.Length;

    /// <summary>Time from the first to the last impulse: what every move takes longer.</summary>
    public Duration Duration => Duration.FromSeconds(DurationSeconds);

    /// <summary>Mean delay m₁ = ΣA·t: how far the shaped motion lags at constant speed.</summary>
    public Duration MeanDelay => Duration.FromSeconds(MeanDelaySeconds);

    /// <summary>Variance ΣA·(t − m₁)² in s²: what rounds the path under acceleration. Adds up under <see cref="Convolve"/>.</summary>
    public double VarianceSquareSeconds
    {
        get
        {
            double mean = MeanDelaySeconds;
            double sum = 0;
            for (int i = 0; i < _times.Length; i++)
            {
                sum += _amplitudes[i] * (_times[i] - mean) * (_times[i] - mean);
            }

            return sum;
        }
    }

    /// <summary>Mean absolute deviation ΣA·|t − m₁|: what cuts a corner at constant speed.</summary>
    public Duration MeanAbsoluteDeviation
    {
        get
        {
            double mean = MeanDelaySeconds;
            double sum = 0;
            for (int i = 0; i < _times.Length; i++)
            {
                sum += _amplitudes[i] * Math.Abs(_times[i] - mean);
            }

            return Duration.FromSeconds(sum);
        }
    }

    internal double DurationSeconds => _times[^1];

    private double MeanDelaySeconds
    {
        get
        {
            double sum = 0;
            for (int i = 0; i < _times.Length; i++)
            {
                sum += _amplitudes[i] * _times[i];
            }

            return sum;
        }
    }

    /// <summary>Equality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether both hold the same impulses.</returns>
    public static bool operator ==(ImpulseSequence? left, ImpulseSequence? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Inequality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether they differ.</returns>
    public static bool operator !=(ImpulseSequence? left, ImpulseSequence? right) => !(left == right);

    /// <summary>Zero-vibration sequence (ZV): two impulses, half a damped period.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ, 0 to 0.3.</param>
    /// <returns>The sequence.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Frequency or damping is out of range.</exception>
    public static ImpulseSequence ZeroVibration(Frequency frequency, double dampingRatio) => ZeroVibrationDerivative(frequency, dampingRatio, 0);

    /// <summary>Zero-vibration-derivative sequence (ZVD and higher): the residual's first derivatives by frequency are zero too.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ, 0 to 0.3.</param>
    /// <param name="derivatives">How many derivatives vanish: 0 is ZV, 1 ZVD, 2 ZVDD; at most 10.</param>
    /// <returns>The sequence of derivatives + 2 impulses, (derivatives + 1)/2 damped periods long.</returns>
    /// <remarks>A_i ∝ C(k, i)·Kⁱ at i·T_d/2, k = derivatives + 1, K = exp(−πζ/√(1 − ζ²)).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Frequency, damping or number is out of range.</exception>
    public static ImpulseSequence ZeroVibrationDerivative(Frequency frequency, double dampingRatio, int derivatives = 1)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        Guard.Between(dampingRatio, 0, SequenceDesign.LargestDamping);
        Guard.Between(derivatives, 0, 10);
        return Scaled(SequenceDesign.ZeroVibration(dampingRatio, derivatives + 1), hertz);
    }

    /// <summary>Extra-insensitive sequence (EI): three impulses that leave the tolerance at the design frequency and stay near it over a wider band.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ, 0 to 0.3.</param>
    /// <param name="tolerance">Tolerated residual V as a ratio, 0.005 to 0.3.</param>
    /// <returns>The sequence, one damped period long.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Frequency, damping or tolerance is out of range.</exception>
    public static ImpulseSequence ExtraInsensitive(Frequency frequency, double dampingRatio, double tolerance = 0.05)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        Guard.Between(dampingRatio, 0, SequenceDesign.LargestDamping);
        Guard.Between(tolerance, 0.005, 0.3);
        return Scaled(SequenceDesign.ExtraInsensitive(dampingRatio, tolerance), hertz);
    }

    /// <summary>A sequence of one's own.</summary>
    /// <param name="times">Times in seconds, rising, the first zero.</param>
    /// <param name="amplitudes">As many amplitudes, summing to one within 1e-6; the rest is made up by the largest.</param>
    /// <returns>The sequence.</returns>
    /// <exception cref="ArgumentException">The spans differ in length or are empty, times do not rise from zero, or the sum is not one.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite.</exception>
    public static ImpulseSequence FromImpulses(ReadOnlySpan<double> times, ReadOnlySpan<double> amplitudes)
    {
        Guard.AllFinite(times);
        Guard.AllFinite(amplitudes);
        if (times.Length != amplitudes.Length || times.Length == 0)
        {
            throw Guard.Refused(nameof(amplitudes), $"{times.Length} times and {amplitudes.Length} amplitudes; there must be as many of each, at least one.");
        }

        for (int i = 0; i < times.Length; i++)
        {
            if (i == 0 ? times[0] != 0 : times[i] <= times[i - 1])
            {
                throw Guard.Refused(nameof(times), FormattableString.Invariant($"times[{i}] is {times[i]} s; times must rise from zero."));
            }
        }

        double sum = SequenceSum.Of(amplitudes);
        return Math.Abs(sum - 1) <= 1e-6
            ? new ImpulseSequence(SequenceSum.ToOne(amplitudes.ToArray()), times.ToArray())
            : throw Guard.Refused(nameof(amplitudes), FormattableString.Invariant($"The amplitudes sum to {sum}; they must sum to one."));
    }

    /// <summary>This sequence followed by another: each impulse of one starts the other. Suppresses the modes of both.</summary>
    /// <param name="other">The other sequence.</param>
    /// <returns>The convolution; durations, mean delays and variances add.</returns>
    public ImpulseSequence Convolve(ImpulseSequence other)
    {
        Guard.NotNull(other);
        (double Time, double Amplitude)[] products =
        [
            .. (from i in Enumerable.Range(0, Count)
                from j in Enumerable.Range(0, other.Count)
                select (Time: _times[i] + other._times[j], Amplitude: _amplitudes[i] * other._amplitudes[j])).OrderBy(p => p.Time),
        ];
        double together = 1e-12 * (DurationSeconds + other.DurationSeconds);
        var times = new List<double>();
        var amplitudes = new List<double>();
        foreach ((double time, double amplitude) in products)
        {
            if (times.Count > 0 && time - times[^1] <= together)
            {
                amplitudes[^1] += amplitude;
            }
            else
            {
                times.Add(time);
                amplitudes.Add(amplitude);
            }
        }

        return new ImpulseSequence(SequenceSum.ToOne([.. amplitudes]), [.. times]);
    }

    /// <summary>Residual vibration V of a mode after the last impulse, as a ratio of what the unshaped command leaves.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ of the mode, zero or more, less than 1.</param>
    /// <returns>The ratio, zero or more; exact for any command.</returns>
    /// <remarks>V = exp(−ζωt_n)·√(C² + S²), C = ΣA·exp(ζωt)·cos(ω_d t), S likewise with the sine. Source: Singer, Seering 1990, as restated by Singh, Singhose 2002, equation (1).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Frequency or damping is out of range.</exception>
    public double ResidualVibration(Frequency frequency, double dampingRatio)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        return Residual.Ratio(_amplitudes, _times, 2 * Math.PI * hertz, dampingRatio is >= 0 and < 1 ? dampingRatio : throw Guard.Out(nameof(dampingRatio), dampingRatio, "at least 0 and less than 1"));
    }

    /// <summary>Largest residual vibration over a band of frequencies and a range of damping ratios.</summary>
    /// <param name="band">Natural frequencies that the mode may have; not the default.</param>
    /// <param name="lowestDampingRatio">Least damping ratio, zero or more.</param>
    /// <param name="highestDampingRatio">Largest damping ratio, at least the least, less than 1.</param>
    /// <returns>The largest ratio.</returns>
    /// <remarks>Found on a grid of 64 points for each period of the residual in frequency, then refined by golden sections at each damping.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The band is empty at zero or the damping is out of range.</exception>
    public double WorstResidual(FrequencyBand band, double lowestDampingRatio, double highestDampingRatio)
    {
        Guard.Positive(band.LowerHertz, nameof(band));
        Guard.Between(lowestDampingRatio, 0, 1 - 1e-9);
        Guard.Between(highestDampingRatio, lowestDampingRatio, 1 - 1e-9);
        return WorstCase.Of(_amplitudes, _times, band, lowestDampingRatio, highestDampingRatio);
    }

    /// <summary>Band about a frequency in which the residual stays at or below a level.</summary>
    /// <param name="frequency">Where to start, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio of the mode, held fixed; zero or more, less than 1.</param>
    /// <param name="level">Residual ratio, greater than 0 and less than 1.</param>
    /// <param name="band">The contiguous band; its width over the frequency is the insensitivity. Ends at zero or ten times the frequency if no edge comes before.</param>
    /// <returns>False when the residual at the frequency itself is above the level.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public bool TryGetInsensitiveBand(Frequency frequency, double dampingRatio, double level, out FrequencyBand band)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        Guard.Between(dampingRatio, 0, 1 - 1e-9);
        Guard.StrictlyBetween(level, 0, 1);
        bool found = WorstCase.TryBand(_amplitudes, _times, hertz, dampingRatio, level, out double low, out double high);
        band = found ? new FrequencyBand(low, high) : default;
        return found;
    }

    /// <inheritdoc/>
    public bool Equals(ImpulseSequence? other) =>
        other is not null && _times.AsSpan().SequenceEqual(other._times) && _amplitudes.AsSpan().SequenceEqual(other._amplitudes);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ImpulseSequence);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Count, _times[^1], _amplitudes[0]);

    /// <summary>Invariant text.</summary>
    /// <returns>Amplitudes and times.</returns>
    public override string ToString() => string.Join(
        ", ",
        Enumerable.Range(0, Count).Select(i => string.Create(CultureInfo.InvariantCulture, $"{_amplitudes[i]:0.0000} at {_times[i] * 1e3:0.000} ms")));

    /// <summary>This sequence, made for 1 Hz, at another frequency.</summary>
    internal ImpulseSequence AtFrequency(double hertz) => new(_amplitudes, [.. _times.Select(time => time / hertz)]);

    private static ImpulseSequence Scaled((double[] Amplitudes, double[] Times) design, double hertz)
    {
        for (int i = 0; i < design.Times.Length; i++)
        {
            design.Times[i] /= hertz;
        }

        return new ImpulseSequence(SequenceSum.ToOne(design.Amplitudes), design.Times);
    }
}
