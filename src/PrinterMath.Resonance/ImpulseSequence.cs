using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Resonance;

/// <summary>A command shaper: impulses that a motion command is convolved with so that a mode does not ring. Amplitudes sum to one.</summary>
/// <remarks>
/// <para>Equality is by value: the same times and amplitudes, bit for bit.</para>
/// Source: N. C. Singer, W. P. Seering, 1990, J. Dyn. Syst. Meas. Control 112(1), 76-82 (from memory).
/// </remarks>
/// <example><code>
/// ImpulseSequence sequence = ImpulseSequence.ExtraInsensitive(Frequency.FromHertz(50), dampingRatio: 0.06, tolerance: 0.05);
/// double left = sequence.ResidualVibration(Frequency.FromHertz(52), dampingRatio: 0.05);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed partial class ImpulseSequence : IEquatable<ImpulseSequence>
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
}
