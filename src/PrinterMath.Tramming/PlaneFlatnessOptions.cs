using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>How flatness is corrected for probe noise.</summary>
/// <example><code>var options = new PlaneFlatnessOptions { Seed = 1, ProbeRepeatability = Length.FromMicrometers(4) };</code></example>
public sealed record PlaneFlatnessOptions
{
    /// <summary>The 2.5 % points of the limits then rest on the fifth of the trials from either end.</summary>
    internal const int FewestTrials = 200;

    /// <summary>Seed of the simulated noise: the same seed gives the same result.</summary>
    /// <value>No default: the caller states it.</value>
    public required int Seed { get; init; }

    /// <summary>Standard deviation of one height reading, for points that carry no uncertainty of their own.</summary>
    /// <value>Greater than zero; null by default: unless every point carries its own, only the raw values are then to be had.</value>
    public Length? ProbeRepeatability { get; init; }

    /// <summary>Degrees of freedom behind the repeatability: readings less one, where it was found by repeating.</summary>
    /// <value>1 or more; infinite by default.</value>
    public double RepeatabilityDegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>Coverage probability of the limits.</summary>
    /// <value>From 0.5 to 0.999; 0.95 by default.</value>
    public double Coverage { get; init; } = 0.95;

    /// <summary>Number of simulated probings.</summary>
    /// <value>From 200 to 100 000; 1000 by default.</value>
    public int Trials { get; init; } = 1000;

    /// <summary>Largest number of readings to simulate, points times probings: bounds the work for many points, of which fewer probings are then simulated, but never fewer than 200.</summary>
    /// <value>1 or more; 2 000 000 by default, so that up to 2000 points get 1000 probings.</value>
    public int MostReadings { get; init; } = 2_000_000;

    /// <summary>How well the places are known, see <see cref="PlaneFitOptions.PlacementUncertainty"/>.</summary>
    /// <value>Zero or more; 0.05 mm by default.</value>
    public Length PlacementUncertainty { get; init; } = Length.FromMillimeters(0.05);

    internal int TrialsOf(int points) => Math.Min(Trials, Math.Max(FewestTrials, MostReadings / points));
}
