using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>What the drive of the Z axis can do; limits of the maker, or lower ones.</summary>
public sealed record ZAxisLimits
{
    /// <summary>Largest vertical speed.</summary>
    /// <value>No default. Finite, greater than zero.</value>
    public required Speed MaximumSpeed { get; init; }

    /// <summary>Largest vertical acceleration.</summary>
    /// <value>No default. Finite, greater than zero.</value>
    public required Acceleration MaximumAcceleration { get; init; }

    /// <summary>Largest step of the vertical speed from one piece of a move to the next, where corners are passed without slowing down.</summary>
    /// <value>Null: steps are not limited by themselves. Greater than zero.</value>
    public Speed? MaximumSpeedStep { get; init; }

    internal void Check(string name)
    {
        Guard.Positive(MaximumSpeed.MetersPerSecond, $"{name}.{nameof(MaximumSpeed)}");
        Guard.Positive(MaximumAcceleration.MetersPerSecondSquared, $"{name}.{nameof(MaximumAcceleration)}");
        if (MaximumSpeedStep is { } step)
        {
            Guard.Positive(step.MetersPerSecond, $"{name}.{nameof(MaximumSpeedStep)}");
        }
    }
}
