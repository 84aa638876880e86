using System.Collections.ObjectModel;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Deviations read at one target position, coming from either side.</summary>
/// <example><code>var place = new ReversalReadings(Length.FromMillimeters(100), fromBelow, fromAbove);</code></example>
public sealed class ReversalReadings
{
    private readonly ReadOnlyCollection<double> _fromBelow;
    private readonly ReadOnlyCollection<double> _fromAbove;

    /// <summary>Readings at a target.</summary>
    /// <param name="target">Where the axis was sent.</param>
    /// <param name="fromBelow">Deviations (actual minus target), arriving in the positive direction; at least one.</param>
    /// <param name="fromAbove">Deviations, arriving in the negative direction; at least one.</param>
    /// <exception cref="ArgumentOutOfRangeException">A list is empty.</exception>
    public ReversalReadings(Length target, IReadOnlyList<Length> fromBelow, IReadOnlyList<Length> fromAbove)
    {
        Guard.AtLeast(Guard.NotNull(fromBelow).Count, 1, nameof(fromBelow));
        Guard.AtLeast(Guard.NotNull(fromAbove).Count, 1, nameof(fromAbove));
        Target = target;
        _fromBelow = Array.AsReadOnly(fromBelow.Select(reading => reading.Meters).ToArray());
        _fromAbove = Array.AsReadOnly(fromAbove.Select(reading => reading.Meters).ToArray());
    }

    /// <summary>Where the axis was sent.</summary>
    public Length Target { get; }

    internal IReadOnlyList<double> FromBelow => _fromBelow;

    internal IReadOnlyList<double> FromAbove => _fromAbove;
}
