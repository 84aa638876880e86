using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>The largest feed that keeps a split move within the limits of the Z axis, and what sets it.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FeedLimit
{
    private readonly double _feed;
    private readonly ZAxisLimitKind _kind;

    internal FeedLimit(double feed, ZAxisLimitKind kind, int segment)
    {
        _feed = feed;
        _kind = kind;
        Segment = segment;
    }

    /// <summary>Whether the Z axis limits the feed at all; not where the move is level.</summary>
    public bool IsLimited => double.IsFinite(_feed);

    /// <summary>The largest feed in the x-y plane; null if there is none. Zero where the acceleration along the move alone asks for more than the Z axis has.</summary>
    public Speed? Feed => IsLimited ? Speed.FromMetersPerSecond(_feed) : null;

    /// <summary>The limit that sets it; null if there is none.</summary>
    public ZAxisLimitKind? LimitedBy => IsLimited ? _kind : null;

    /// <summary>The piece, counted from 0, that sets it; for a corner the piece before it. Zero if there is none.</summary>
    public int Segment { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>Feed and what sets it.</returns>
    public override string ToString() => IsLimited
        ? string.Create(CultureInfo.InvariantCulture, $"{_feed * 1e3:G4} mm/s, limited by the Z axis's {_kind} at piece {Segment}")
        : "not limited by the Z axis";
}
