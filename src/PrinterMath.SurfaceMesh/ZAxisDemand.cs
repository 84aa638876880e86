using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>What a split move asks of the Z axis at a given feed. Slopes are those that are commanded, so nothing here has an uncertainty.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ZAxisDemand
{
    private readonly double _feed;
    private readonly double _speed;
    private readonly double _acceleration;
    private readonly double _speedStep;

    internal ZAxisDemand(double feed, double speed, double acceleration, double speedStep)
    {
        _feed = feed;
        _speed = speed;
        _acceleration = acceleration;
        _speedStep = speedStep;
    }

    /// <summary>Speed in the x-y plane.</summary>
    public Speed Feed => UnitsNet.Speed.FromMetersPerSecond(_feed);

    /// <summary>Largest vertical speed, up or down: v |m| of the steepest piece.</summary>
    public Speed Speed => UnitsNet.Speed.FromMetersPerSecond(_speed);

    /// <summary>
    /// Largest vertical acceleration, up or down: v² · 2|Δm|/(l₁ + l₂), from the middle of one piece to that of the next, which on a parabola is v²|z″|, and on top of it |m| times the
    /// acceleration along the move.
    /// </summary>
    public Acceleration Acceleration => UnitsNet.Acceleration.FromMetersPerSecondSquared(_acceleration);

    /// <summary>Largest step of the vertical speed from one piece to the next: v |Δm|.</summary>
    public Speed SpeedStep => UnitsNet.Speed.FromMetersPerSecond(_speedStep);

    /// <summary>Which limits are exceeded.</summary>
    /// <param name="limits">What the drive can do.</param>
    /// <returns>The limits; empty if the move is within all of them. A limit that is just met is not exceeded.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A limit is out of range.</exception>
    public IReadOnlyList<ZAxisLimitKind> Exceeded(ZAxisLimits limits)
    {
        Guard.NotNull(limits).Check(nameof(limits));
        List<ZAxisLimitKind> kinds = [];
        AddIf(_speed > limits.MaximumSpeed.MetersPerSecond, ZAxisLimitKind.Speed);
        AddIf(_acceleration > limits.MaximumAcceleration.MetersPerSecondSquared, ZAxisLimitKind.Acceleration);
        AddIf(limits.MaximumSpeedStep is { } step && _speedStep > step.MetersPerSecond, ZAxisLimitKind.SpeedStep);
        return kinds.AsReadOnly();

        void AddIf(bool exceeded, ZAxisLimitKind kind)
        {
            if (exceeded)
            {
                kinds.Add(kind);
            }
        }
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Feed, speed, acceleration and step.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"at {_feed * 1e3:0.##} mm/s: Z moves at up to {_speed * 1e3:G3} mm/s, with {_acceleration * 1e3:G3} mm/s² and steps of {_speedStep * 1e3:G3} mm/s");
}
