using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>How modes are read from a frequency response.</summary>
public sealed record ResponseFitOptions
{
    /// <summary>Most modes looked for.</summary>
    /// <value>6. From 1 to 12.</value>
    public int MostModes { get; init; } = 6;

    /// <summary>Probability that a response of noise alone shows a mode, a ratio.</summary>
    /// <value>0.001. Greater than 0 and at most 0.1.</value>
    public double FalseAlarmProbability { get; init; } = 1e-3;

    /// <summary>Lowest frequency looked at.</summary>
    /// <value>Null: the first frequency above zero, or the third of an estimate, below which the taken-out mean reaches. Zero or more otherwise.</value>
    public Frequency? LowestFrequency { get; init; }

    /// <summary>Highest frequency looked at.</summary>
    /// <value>Null: the last frequency, or 0.45 of the sample rate of an estimate. Above the lowest otherwise.</value>
    public Frequency? HighestFrequency { get; init; }

    /// <summary>Relative standard uncertainty of the sample rate, a ratio: see <see cref="AccelerationRecord.RelativeRateUncertainty"/>.</summary>
    /// <value>0.0001. Zero or more, at most 0.1.</value>
    public double RelativeClockUncertainty { get; init; } = 1e-4;

    internal (int First, int Last) Lines(ResponseLines lines)
    {
        Guard.Between(MostModes, 1, 12, nameof(MostModes));
        Guard.Between(RelativeClockUncertainty, 0, 0.1, nameof(RelativeClockUncertainty));
        Guard.Between(FalseAlarmProbability, double.Epsilon, 0.1, nameof(FalseAlarmProbability));
        double lowest = Guard.NonNegative(LowestFrequency?.Hertz ?? (2.5 * (lines.Source?.ResolutionHertz ?? 0)), nameof(LowestFrequency));
        double highest = Guard.Positive(HighestFrequency?.Hertz ?? (0.45 * lines.Source?.SampleRateHertz ?? lines.Frequencies[^1]), nameof(HighestFrequency));
        int first = Array.FindIndex(lines.Frequencies, hertz => hertz > 0 && hertz >= lowest * (1 - 1e-12));
        int last = Array.FindLastIndex(lines.Frequencies, hertz => hertz <= highest * (1 + 1e-12));
        int count = first < 0 || last < first ? 0 : last - first + 1;
        return count >= 12 ? (first, last) : throw Guard.Refused(
            nameof(HighestFrequency), FormattableString.Invariant($"From {lowest:G5} to {highest:G5} Hz the response has {count} lines above zero; at least 12 are needed."));
    }
}
