using UnitsNet;

namespace PrinterMath.Resonance;

/// <content>Sequences of impulses 1, −1, 1, ..., shorter than positive ones.</content>
public sealed partial class ImpulseSequence
{
    /// <summary>Zero-vibration sequence of unity magnitudes (UM-ZV): impulses 1, −1, 1, a third of a period long without damping.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ, zero or more; how far the sequence exists stands in the exception.</param>
    /// <returns>The sequence.</returns>
    /// <remarks>
    /// Negative impulses cost: the shaped acceleration can reach Σ|A| = 3 times that of the command, other modes can be excited up to as much, and a step shorter than the sequence is exceeded
    /// on the way. Times solve C = S = 0, followed from T/6 and T/3 without damping.
    /// Source: W. Singhose, N. Singer, W. Seering, 1997, J. Dyn. Syst. Meas. Control 119(2), 198-205 (from memory).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Frequency or damping is out of range.</exception>
    public static ImpulseSequence UnityMagnitudeZeroVibration(Frequency frequency, double dampingRatio)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        return Scaled(UnityMagnitudeDesign.ZeroVibration(Damping(dampingRatio)), hertz);
    }

    /// <summary>Zero-vibration-derivative sequence of unity magnitudes (UM-ZVD): impulses 1, −1, 1, −1, 1, 0.7325 of a period long without damping.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ, zero or more; how far the sequence exists stands in the exception.</param>
    /// <returns>The sequence.</returns>
    /// <remarks>Σ|A| = 5; see <see cref="UnityMagnitudeZeroVibration"/> for what that costs and for the source.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Frequency or damping is out of range.</exception>
    public static ImpulseSequence UnityMagnitudeZeroVibrationDerivative(Frequency frequency, double dampingRatio)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        return Scaled(UnityMagnitudeDesign.ZeroVibrationDerivative(Damping(dampingRatio)), hertz);
    }

    /// <summary>Extra-insensitive sequence of unity magnitudes (UM-EI): impulses 1, −1, 1, −1, 1 that leave the tolerance at the design frequency and nothing at one below and one above.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ, zero or more; how far the sequence exists depends on the tolerance and stands in the exception.</param>
    /// <param name="tolerance">Tolerated residual V as a ratio, 0.005 to 0.3.</param>
    /// <returns>The sequence.</returns>
    /// <remarks>Σ|A| = 5; see <see cref="UnityMagnitudeZeroVibration"/> for what that costs and for the source.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static ImpulseSequence UnityMagnitudeExtraInsensitive(Frequency frequency, double dampingRatio, double tolerance = 0.05)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        Guard.Between(tolerance, 0.005, 0.3);
        return Scaled(UnityMagnitudeDesign.ExtraInsensitive(Damping(dampingRatio), tolerance), hertz);
    }
}
