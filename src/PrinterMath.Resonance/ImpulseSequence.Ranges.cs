using UnitsNet;

namespace PrinterMath.Resonance;

/// <content>Sequences designed for ranges of frequency and damping, and for several modes together.</content>
public sealed partial class ImpulseSequence
{
    /// <summary>Specified-insensitivity sequence (SI): the shortest positive impulses whose residual keeps a tolerance over given ranges, of one mode or of several solved together.</summary>
    /// <param name="ranges">Where the modes may lie, at least one. What they have in common is served once: close modes cost less than a convolution of one sequence for each.</param>
    /// <param name="tolerance">Tolerated residual V as a ratio, 1e-4 to 0.5.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <returns>The sequence. For a narrow band it is near ZV, for wider ones it passes through EI and the sequences of more humps where the band is theirs. It keeps the tolerance within 1e-4
    /// of it.</returns>
    /// <remarks>
    /// <para>The least worst residual for a duration is the value of a game between the impulses' times and the modes' frequencies, which makes it the optimum over all sequences; the duration
    /// follows by false position, and Newton's method on the conditions of the optimum takes amplitudes and times to rounding. A range of damping is held at five ratios across it. Where two
    /// solutions of different kind meet (EI itself is such a place) amplitudes and times are good to about 1e-3 instead.</para>
    /// <para>Takes milliseconds for a band like that of an extra-insensitive sequence, seconds for one of several octaves.</para>
    /// Source of the problem: W. Singhose, W. Seering, N. Singer, 1996, Japan/USA Symposium on Flexible Automation; for several modes J. M. Hyde, W. P. Seering, 1991, IEEE International
    /// Conference on Robotics and Automation, 2604-2609 (both from memory). The way it is solved is this library's.
    /// </remarks>
    /// <example><code>
    /// ModeRange range = ModeRange.Between(FrequencyBand.Between(Frequency.FromHertz(42), Frequency.FromHertz(55)), 0.03, 0.08);
    /// ImpulseSequence sequence = ImpulseSequence.SpecifiedInsensitivity([range], tolerance: 0.05);
    /// </code></example>
    /// <exception cref="ArgumentException">There are no ranges, or no sequence of up to 40 periods of the lowest frequency keeps the tolerance.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is out of range.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static ImpulseSequence SpecifiedInsensitivity(IReadOnlyList<ModeRange> ranges, double tolerance = 0.05, CancellationToken cancellationToken = default)
    {
        if (Guard.NotNull(ranges).Count == 0)
        {
            throw Guard.Refused(nameof(ranges), "There are no ranges; give at least one.");
        }

        foreach (ModeRange range in ranges)
        {
            Guard.NotNull(range, nameof(ranges));
        }

        Guard.Between(tolerance, 1e-4, 0.5);
        return Scaled(InsensitivityDesign.Shortest(ranges, tolerance, cancellationToken), 1);
    }

    /// <summary>Zero-vibration sequence of three impulses for two modes at once, shorter than the convolution of a ZV sequence for each.</summary>
    /// <param name="frequency">Natural frequency of one mode, greater than zero.</param>
    /// <param name="dampingRatio">Its damping ratio ζ, zero or more, less than 1.</param>
    /// <param name="otherFrequency">Natural frequency of the other mode, greater than zero: from 1.01 to 2.99 times the lower one, either way.</param>
    /// <param name="otherDampingRatio">Its damping ratio.</param>
    /// <returns>The sequence, 2/(f₁ + f₂) long without damping.</returns>
    /// <remarks>
    /// Without damping A, 1 − 2A, A at 0, τ, 2τ with τ = 1/(f₁ + f₂) and A = 1/(2 − 2cos(2πf₁τ)) (derived); with damping the five equations C = S = 0 at both modes and ΣA = 1 in the
    /// five unknowns, by continuation. Beyond a ratio of three the middle impulse would be negative: use <see cref="SpecifiedInsensitivity"/> or <see cref="Convolve"/>.
    /// Source of the problem: J. M. Hyde, W. P. Seering, 1991, IEEE International Conference on Robotics and Automation, 2604-2609 (from memory).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range, or the sequence does not exist with so much damping.</exception>
    public static ImpulseSequence TwoModeZeroVibration(Frequency frequency, double dampingRatio, Frequency otherFrequency, double otherDampingRatio)
    {
        double one = Guard.Positive(frequency.Hertz, nameof(frequency));
        double other = Guard.Positive(otherFrequency.Hertz, nameof(otherFrequency));
        _ = Damping(dampingRatio);
        _ = otherDampingRatio is >= 0 and < 1 ? otherDampingRatio : throw Guard.Out(nameof(otherDampingRatio), otherDampingRatio, "at least 0 and less than 1");
        double ratio = Math.Max(one, other) / Math.Min(one, other);
        return ratio is > 1.01 and < 2.99
            ? Scaled(SequenceDesign.TwoModes(one, dampingRatio, other, otherDampingRatio), 1)
            : throw Guard.Out(nameof(otherFrequency), other, FormattableString.Invariant($"within a factor of 2.99 of {one} Hz and differ from it by more than 1 %"));
    }
}
