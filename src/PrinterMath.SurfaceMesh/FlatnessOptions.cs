using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>How flatness is corrected for probe noise.</summary>
public sealed record FlatnessOptions
{
    /// <summary>Seed of the random numbers: the same seed gives the same result.</summary>
    /// <value>No default: the caller states it.</value>
    public required int Seed { get; init; }

    /// <summary>Standard deviation of one height reading, for points that carry no uncertainty of their own; greater than zero.</summary>
    /// <value>Null: unknown; only the raw flatness is then to be had.</value>
    public Length? Repeatability { get; init; }

    /// <summary>Degrees of freedom behind <see cref="Repeatability"/>.</summary>
    /// <value>Infinite. 1 or more.</value>
    public double RepeatabilityDegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>Coverage probability of <see cref="Flatness.LowerLimit"/> and <see cref="Flatness.UpperLimit"/>.</summary>
    /// <value>0.95. Greater than 0 and less than 1.</value>
    public double Coverage { get; init; } = 0.95;

    /// <summary>Number of simulated probings.</summary>
    /// <value>2000. At least 200, at most a million.</value>
    public int Trials { get; init; } = 2000;
}
