using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Resonance;

/// <summary>Where a mode may lie: a band of natural frequencies and a range of damping ratios.</summary>
/// <remarks>Over positions, loads and uncertainties a machine's mode is a range, not a point; a sequence is judged by the worst of it.</remarks>
/// <example><code>ModeRange range = ModeRange.Between(FrequencyBand.Between(Frequency.FromHertz(45), Frequency.FromHertz(55)), 0.04, 0.08);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ModeRange
{
    internal const double LargestDamping = 0.95;

    private ModeRange(FrequencyBand band, double lowestDampingRatio, double highestDampingRatio)
    {
        Band = band;
        LowestDampingRatio = lowestDampingRatio;
        HighestDampingRatio = highestDampingRatio;
    }

    /// <summary>Natural frequencies that the mode may have.</summary>
    public FrequencyBand Band { get; }

    /// <summary>Least damping ratio.</summary>
    public double LowestDampingRatio { get; }

    /// <summary>Largest damping ratio.</summary>
    public double HighestDampingRatio { get; }

    /// <summary>A range given by its ends.</summary>
    /// <param name="band">Natural frequencies; not the default. Both ends may be the same.</param>
    /// <param name="lowestDampingRatio">Least damping ratio, zero or more.</param>
    /// <param name="highestDampingRatio">Largest damping ratio, at least the least and at most 0.95.</param>
    /// <returns>The range.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The band is empty at zero or the damping is out of range.</exception>
    public static ModeRange Between(FrequencyBand band, double lowestDampingRatio, double highestDampingRatio)
    {
        Guard.Positive(band.LowerHertz, nameof(band));
        Guard.Between(lowestDampingRatio, 0, LargestDamping);
        return new ModeRange(band, lowestDampingRatio, Guard.Between(highestDampingRatio, lowestDampingRatio, LargestDamping));
    }

    /// <summary>The range of a measured mode, f ± k·u(f) and ζ ± k·u(ζ); damping is cut off at 0 and 0.95.</summary>
    /// <param name="mode">The mode.</param>
    /// <param name="coverageFactor">k, zero or more.</param>
    /// <returns>The range. It treats frequency and damping as free of each other, which is on the safe side.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The factor is negative, or the frequency less k·u is not positive.</exception>
    public static ModeRange Of(Mode mode, double coverageFactor = 2)
    {
        double width = Guard.NonNegative(coverageFactor) * Guard.NotNull(mode).Frequency.SiStandardUncertainty;
        double spread = coverageFactor * mode.DampingRatio.SiStandardUncertainty;
        double low = Guard.Positive(mode.Hertz - width, nameof(mode));
        return new ModeRange(
            new FrequencyBand(low, mode.Hertz + width),
            Math.Clamp(mode.DampingRatio.SiValue - spread, 0, LargestDamping),
            Math.Clamp(mode.DampingRatio.SiValue + spread, 0, LargestDamping));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Band and damping.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Band}, ζ = {LowestDampingRatio * 100:0.##} to {HighestDampingRatio * 100:0.##} %");
}
