using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>How time-stamped acceleration becomes uniform signals.</summary>
public sealed record AccelerationRecordOptions
{
    /// <summary>Relative standard uncertainty of the clock that made the stamps, a ratio: a constant clock error cannot be seen in the data.</summary>
    /// <value>0.0001 (a quartz clock with room for temperature; common practice, no source). Zero or more, at most 0.1.</value>
    public double RelativeClockUncertainty { get; init; } = 1e-4;

    /// <summary>How values are found at the times of the uniform grid.</summary>
    /// <value><see cref="Resonance.Interpolation.Seventh"/>.</value>
    public Interpolation Interpolation { get; init; } = Interpolation.Seventh;

    /// <summary>What irregular stamps mean.</summary>
    /// <value><see cref="StampJitter.OfSampling"/>.</value>
    public StampJitter Jitter { get; init; } = StampJitter.OfSampling;

    /// <summary>Largest acceleration the sensor can show, either way.</summary>
    /// <value>Null: not known; saturation is then recognised by values that pile up at an extreme. Greater than zero otherwise.</value>
    public Acceleration? FullScale { get; init; }
}
