using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>What a map has to achieve, and what probing costs.</summary>
public sealed record ProbePlanOptions
{
    /// <summary>Largest error of the map that is wanted: bound of the interpolation plus expanded noise.</summary>
    /// <value>No default. Greater than zero.</value>
    public required Length Tolerance { get; init; }

    /// <summary>Standard deviation of one height reading.</summary>
    /// <value>No default. Greater than zero.</value>
    public required Length Repeatability { get; init; }

    /// <summary>How many standard uncertainties of a node count.</summary>
    /// <value>2. Greater than zero.</value>
    public double CoverageFactor { get; init; } = 2;

    /// <summary>Time to reach a place.</summary>
    /// <value>2 s. Zero or more.</value>
    public Duration TimePerPlace { get; init; } = Duration.FromSeconds(2);

    /// <summary>Time of one reading.</summary>
    /// <value>2 s. Greater than zero.</value>
    public Duration TimePerReading { get; init; } = Duration.FromSeconds(2);

    /// <summary>Most places.</summary>
    /// <value>2500. From 4 to 1 000 000.</value>
    public int MostPlaces { get; init; } = 2500;

    /// <summary>Most readings at one place.</summary>
    /// <value>10. From 1 to 1000.</value>
    public int MostReadings { get; init; } = 10;

    internal void Check(string name)
    {
        Guard.Positive(Tolerance.Meters, $"{name}.{nameof(Tolerance)}");
        Guard.Positive(Repeatability.Meters, $"{name}.{nameof(Repeatability)}");
        Guard.Positive(CoverageFactor, $"{name}.{nameof(CoverageFactor)}");
        Guard.NonNegative(TimePerPlace.Seconds, $"{name}.{nameof(TimePerPlace)}");
        Guard.Positive(TimePerReading.Seconds, $"{name}.{nameof(TimePerReading)}");
        Guard.Between(MostPlaces, 4, 1_000_000, $"{name}.{nameof(MostPlaces)}");
        Guard.Between(MostReadings, 1, 1000, $"{name}.{nameof(MostReadings)}");
    }
}
