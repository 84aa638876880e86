using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>Largest acceleration at which a shaped command stays within an allowed deviation.</summary>
/// <remarks>
/// The shaped position lags a command that accelerates steadily by the mean delay and by a·var/2 more (exact once the ramp has lasted longer than the sequence): a = 2e/var.
/// On a straight move with the same sequence on all axes this is a lag along the path, at the start or end of a curve or corner it is off the path. Positive sequences.
/// A separate step from the choice of a sequence; the drive's own limit and the maker's stand beside it.
/// Source: derived from the moments of the sequence (the Taylor series of the convolution ends after the second moment for a parabola).
/// </remarks>
/// <example><code>Acceleration limit = AllowedAcceleration.ForDeviation(sequence, Length.FromMicrometers(50));</code></example>
public static class AllowedAcceleration
{
    /// <summary>Acceleration at which the shaped position deviates by the given length.</summary>
    /// <param name="sequence">The sequence, at least two impulses, none negative.</param>
    /// <param name="deviation">Allowed deviation e, greater than zero.</param>
    /// <returns>a = 2e/var.</returns>
    /// <exception cref="ArgumentException">The sequence has negative impulses or only one.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The deviation is not positive.</exception>
    public static Acceleration ForDeviation(ImpulseSequence sequence, Length deviation)
    {
        double meters = Guard.Positive(deviation.Meters, nameof(deviation));
        return Acceleration.FromMetersPerSecondSquared(2 * meters / Variance(sequence));
    }

    /// <summary>Deviation of the shaped position at an acceleration.</summary>
    /// <param name="sequence">The sequence, at least two impulses, none negative.</param>
    /// <param name="acceleration">Acceleration of the ramp, zero or more.</param>
    /// <returns>e = a·var/2.</returns>
    /// <exception cref="ArgumentException">The sequence has negative impulses or only one.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The acceleration is negative.</exception>
    public static Length DeviationAt(ImpulseSequence sequence, Acceleration acceleration)
    {
        double a = Guard.NonNegative(acceleration.MetersPerSecondSquared, nameof(acceleration));
        return Length.FromMeters(a * Variance(sequence) / 2);
    }

    private static double Variance(ImpulseSequence sequence)
    {
        if (Guard.NotNull(sequence).Count < 2)
        {
            throw Guard.Refused(nameof(sequence), "The sequence is a single impulse, which does not spread the command; it must have at least two.");
        }

        PathDeviation.RequirePositive(sequence);
        return sequence.VarianceSquareSeconds;
    }
}
