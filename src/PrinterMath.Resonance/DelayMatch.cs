using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>What two axes with different sequences, and the extruder, must wait for so that all lag the command alike.</summary>
/// <remarks>
/// A sequence delays its axis by its mean delay m₁. With different delays a diagonal is shifted sideways even at constant speed, and an extruder that is not shaped leads the head.
/// Source: derived from the first moments of the sequences.
/// </remarks>
/// <example><code>
/// DelayMatch match = DelayMatch.Of(x: sequenceX, y: sequenceY);
/// Length shift = match.DiagonalShift(Speed.FromMillimetersPerSecond(100), Angle.FromDegrees(45));   // if nothing waits
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class DelayMatch
{
    private readonly double _x;
    private readonly double _y;

    private DelayMatch(double x, double y)
    {
        _x = x;
        _y = y;
    }

    /// <summary>What x must be delayed by beside its sequence; zero when it lags at least as much as y.</summary>
    public Duration ExtraDelayX => Duration.FromSeconds(Math.Max(0, _y - _x));

    /// <summary>What y must be delayed by beside its sequence; zero when it lags at least as much as x.</summary>
    public Duration ExtraDelayY => Duration.FromSeconds(Math.Max(0, _x - _y));

    /// <summary>What the extruder must be delayed by once the axes lag alike: the larger of both mean delays.</summary>
    public Duration ExtruderDelay => Duration.FromSeconds(Math.Max(_x, _y));

    /// <summary>The match for two sequences.</summary>
    /// <param name="x">Sequence of the x axis.</param>
    /// <param name="y">Sequence of the y axis.</param>
    /// <returns>The delays.</returns>
    public static DelayMatch Of(ImpulseSequence x, ImpulseSequence y) =>
        new(Guard.NotNull(x).MeanDelay.Seconds, Guard.NotNull(y).MeanDelay.Seconds);

    /// <summary>How far a diagonal is shifted sideways at constant speed while the delays are not matched.</summary>
    /// <param name="speed">Speed v along the diagonal, zero or more.</param>
    /// <param name="direction">Direction φ of the move from the x axis.</param>
    /// <returns>v·|sin φ·cos φ·(m₁ of x − m₁ of y)|.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is negative.</exception>
    public Length DiagonalShift(Speed speed, Angle direction)
    {
        double v = Guard.NonNegative(speed.MetersPerSecond, nameof(speed));
        double phi = Guard.Finite(direction.Radians, nameof(direction));
        return Length.FromMeters(v * Math.Abs(Math.Sin(2 * phi) / 2 * (_x - _y)));
    }

    /// <summary>How much filament leads the head at constant speed when the extruder does not wait.</summary>
    /// <param name="beadSection">Cross-section A of the bead, zero or more.</param>
    /// <param name="speed">Speed v of the head, zero or more.</param>
    /// <param name="filamentDiameter">Diameter of the filament, greater than zero.</param>
    /// <returns>Length of filament A·v·m₁/(π·d²/4), m₁ being <see cref="ExtruderDelay"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public Length FilamentLead(Area beadSection, Speed speed, Length filamentDiameter)
    {
        double bead = Guard.NonNegative(beadSection.SquareMeters, nameof(beadSection));
        double v = Guard.NonNegative(speed.MetersPerSecond, nameof(speed));
        double d = Guard.Positive(filamentDiameter.Meters, nameof(filamentDiameter));
        return Length.FromMeters(bead * v * Math.Max(_x, _y) / (Math.PI * d * d / 4));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The three delays.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"delay x by {ExtraDelayX.Milliseconds:0.000} ms, y by {ExtraDelayY.Milliseconds:0.000} ms, the extruder by {ExtruderDelay.Milliseconds:0.000} ms");
}
