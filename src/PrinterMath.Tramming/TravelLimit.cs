using System.Diagnostics;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>How far the bed may still move at one screw from where it stands, positive upwards.</summary>
/// <remarks>Uncertain leads move the bed by more or less than planned: keep a margin. Several limits for one screw hold together.</remarks>
/// <example><code>
/// TravelLimit thread = TravelLimit.Between("front left", Length.FromMillimeters(-3), Length.FromMillimeters(2));
/// TravelLimit spring = TravelLimit.Spring("front left", compression: Length.FromMillimeters(4), least: Length.FromMillimeters(2));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TravelLimit
{
    private readonly double? _least;

    private TravelLimit(string screw, double lowest, double highest, double? least = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(screw);
        Screw = screw;
        LowestMeters = lowest;
        HighestMeters = highest;
        _least = least;
    }

    /// <summary>Name of the screw.</summary>
    public string Screw { get; }

    /// <summary>Whether the limit is that of a spring.</summary>
    public bool IsSpring => _least is not null;

    /// <summary>The lowest change of height that is allowed; null where there is none.</summary>
    public Length? Lowest => double.IsNegativeInfinity(LowestMeters) ? null : Length.FromMeters(LowestMeters);

    /// <summary>The highest change of height that is allowed.</summary>
    public Length Highest => Length.FromMeters(HighestMeters);

    internal double LowestMeters { get; }

    internal double HighestMeters { get; }

    /// <summary>What the screw's travel leaves.</summary>
    /// <param name="screw">Name of the screw.</param>
    /// <param name="lowest">The lowest change of height, negative where the bed may come down.</param>
    /// <param name="highest">The highest change of height, not below the lowest.</param>
    /// <returns>The limit.</returns>
    /// <exception cref="ArgumentException">The name is empty, or the limits are reversed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite.</exception>
    public static TravelLimit Between(string screw, Length lowest, Length highest)
    {
        double low = Guard.Finite(lowest.Meters, nameof(lowest));
        double high = Guard.Finite(highest.Meters, nameof(highest));
        return low <= high
            ? new TravelLimit(screw, low, high)
            : throw Guard.Refused(nameof(lowest), FormattableString.Invariant($"lowest is {low * 1e3:0.###} mm and highest {high * 1e3:0.###} mm; they are reversed."));
    }

    /// <summary>A spring between frame and bed that must stay compressed: raising the bed relaxes it, lowering compresses it.</summary>
    /// <param name="screw">Name of the screw.</param>
    /// <param name="compression">Its compression now, zero or more.</param>
    /// <param name="least">The least compression to keep, zero or more.</param>
    /// <param name="most">The largest compression, coil on coil, above <paramref name="least"/>; null for none.</param>
    /// <returns>The limit: change ≤ compression − least, and ≥ compression − most.</returns>
    /// <exception cref="ArgumentException">The name is empty, or the compressions are reversed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A compression is negative or not finite.</exception>
    public static TravelLimit Spring(string screw, Length compression, Length least, Length? most = null)
    {
        double now = Guard.NonNegative(compression.Meters, nameof(compression));
        double lowest = Guard.NonNegative(least.Meters, nameof(least));
        double highest = most is Length stop ? Guard.NonNegative(stop.Meters, nameof(most)) : double.PositiveInfinity;
        return lowest < highest
            ? new TravelLimit(screw, now - highest, now - lowest, lowest)
            : throw Guard.Refused(nameof(least), FormattableString.Invariant($"least is {lowest * 1e3:0.###} mm and most {highest * 1e3:0.###} mm; they are reversed."));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Screw and limits.</returns>
    public override string ToString() => FormattableString.Invariant(
        $"{Screw}: {(double.IsNegativeInfinity(LowestMeters) ? "any depth" : FormattableString.Invariant($"{LowestMeters * 1e3:0.###} mm"))} to {HighestMeters * 1e3:0.###} mm{(IsSpring ? ", spring" : string.Empty)}");
}
