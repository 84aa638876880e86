using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>How modes are read from a free decay.</summary>
public sealed record RingDownOptions
{
    /// <summary>Time in the signal at which the decay is free: after the blow or the stop.</summary>
    /// <value>Zero. Not negative.</value>
    public Duration Start { get; init; } = Duration.Zero;

    /// <summary>Most modes and steady tones looked for.</summary>
    /// <value>6. From 1 to 12.</value>
    public int MostModes { get; init; } = 6;

    /// <summary>Probability that a record of noise alone shows a mode, a ratio.</summary>
    /// <value>0.001. Greater than 0 and at most 0.1.</value>
    public double FalseAlarmProbability { get; init; } = 1e-3;

    /// <summary>Lowest frequency looked at.</summary>
    /// <value>Null: three periods in the record. Greater than zero otherwise.</value>
    public Frequency? LowestFrequency { get; init; }

    /// <summary>Highest frequency looked at.</summary>
    /// <value>Null: 0.48 of the sample rate. Above the lowest otherwise.</value>
    public Frequency? HighestFrequency { get; init; }

    /// <summary>Relative standard uncertainty of the sample rate, a ratio: see <see cref="AccelerationRecord.RelativeRateUncertainty"/>.</summary>
    /// <value>0.0001. Zero or more, at most 0.1.</value>
    public double RelativeClockUncertainty { get; init; } = 1e-4;
}
