using UnitsNet;

namespace PrinterMath.Resonance;

/// <content>What a sequence leaves of a vibration.</content>
public sealed partial class ImpulseSequence
{
    /// <summary>Residual vibration V of a mode after the last impulse, as a ratio of what the unshaped command leaves.</summary>
    /// <param name="frequency">Natural frequency of the mode, greater than zero.</param>
    /// <param name="dampingRatio">Damping ratio ζ of the mode, zero or more, less than 1.</param>
    /// <returns>The ratio, zero or more; exact for any command.</returns>
    /// <remarks>V = exp(−ζωt_n)·√(C² + S²), C = ΣA·exp(ζωt)·cos(ω_d t), S likewise with the sine. Source: Singer, Seering 1990, as restated by Singh, Singhose 2002, equation (1).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Frequency or damping is out of range.</exception>
    public double ResidualVibration(Frequency frequency, double dampingRatio)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        return Residual.Ratio(_amplitudes, _times, 2 * Math.PI * hertz, Damping(dampingRatio));
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

    /// <summary>Largest residual vibration over the range of a mode.</summary>
    /// <param name="range">Where the mode may lie.</param>
    /// <returns>The largest ratio.</returns>
    public double WorstResidual(ModeRange range) =>
        WorstCase.Of(_amplitudes, _times, Guard.NotNull(range).Band, range.LowestDampingRatio, range.HighestDampingRatio);

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

    /// <summary>Range about a damping ratio in which the residual stays at or below a level: how far the damping may be off.</summary>
    /// <param name="frequency">Natural frequency of the mode, held fixed; greater than zero.</param>
    /// <param name="dampingRatio">Where to start, zero or more, at most 0.95.</param>
    /// <param name="level">Residual ratio, greater than 0 and less than 1.</param>
    /// <param name="lowest">Least damping ratio of the contiguous range; 0 if no edge comes before.</param>
    /// <param name="highest">Largest damping ratio of the range; 0.95 if no edge comes before.</param>
    /// <returns>False when the residual at the damping itself is above the level.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public bool TryGetInsensitiveDamping(Frequency frequency, double dampingRatio, double level, out double lowest, out double highest)
    {
        double hertz = Guard.Positive(frequency.Hertz, nameof(frequency));
        Guard.Between(dampingRatio, 0, ModeRange.LargestDamping);
        Guard.StrictlyBetween(level, 0, 1);
        return WorstCase.TryDampings(_amplitudes, _times, hertz, dampingRatio, level, out lowest, out highest);
    }
}
