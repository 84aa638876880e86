using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Where the constants of a viscosity were measured, and how well they are known.</summary>
/// <remarks>Copied and checked where a <see cref="MeltViscosity"/> is made. Outside of it a result is still computed and says so in its findings.</remarks>
/// <example><code>var range = new ViscosityRange { LowestTemperature = Temperature.FromDegreesCelsius(170), HighestTemperature = Temperature.FromDegreesCelsius(210) };</code></example>
public sealed record ViscosityRange
{
    /// <summary>Lowest temperature of the measurements.</summary>
    /// <value>Must be stated, above 0 K.</value>
    public required Temperature LowestTemperature { get; init; }

    /// <summary>Highest temperature of the measurements.</summary>
    /// <value>Must be stated, above the lowest.</value>
    public required Temperature HighestTemperature { get; init; }

    /// <summary>Lowest shear rate of the measurements.</summary>
    /// <value>10 per second: what a capillary rheometer usually begins with (common practice, no source). Greater than zero.</value>
    public Frequency LowestShearRate { get; init; } = Frequency.FromPerSecond(10);

    /// <summary>Highest shear rate of the measurements.</summary>
    /// <value>10 000 per second: what it usually ends with (common practice, no source). Above the lowest.</value>
    public Frequency HighestShearRate { get; init; } = Frequency.FromPerSecond(10_000);

    /// <summary>Relative standard uncertainty of the viscosity, the same for all rates and temperatures: grades of one plastic differ.</summary>
    /// <value>0.3: two published sets for one plastic often differ by half (see <see cref="MeltMaterial"/>). Zero or more, less than 1.</value>
    public double RelativeStandardUncertainty { get; init; } = 0.3;
}
