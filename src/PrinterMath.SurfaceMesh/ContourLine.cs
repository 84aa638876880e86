using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A line of equal height on the surface, as a polyline with the higher ground to the left of its direction.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ContourLine
{
    private readonly double _level;
    private readonly ReadOnlyCollection<SurfacePosition> _points;

    internal ContourLine(double level, SurfacePosition[] points, bool isClosed)
    {
        _level = level;
        _points = Array.AsReadOnly(points);
        IsClosed = isClosed;
    }

    /// <summary>The height.</summary>
    public Length Level => UnitsNet.Length.FromMeters(_level);

    /// <summary>The corners in order, two or more, all of them on the model's line; a closed line does not repeat its first one.</summary>
    public IReadOnlyList<SurfacePosition> Points => _points;

    /// <summary>Whether the last corner is joined to the first; otherwise both lie on the border of the domain.</summary>
    public bool IsClosed { get; }

    /// <summary>Length of the polyline, greater than zero.</summary>
    public Length Length => UnitsNet.Length.FromMeters(Sides().Sum(side => double.Hypot(side.To.XMeters - side.From.XMeters, side.To.YMeters - side.From.YMeters)));

    /// <summary>Area inside a closed line: positive where the ground inside is higher than the line (a rise), negative where it is lower (a dip); null for an open one.</summary>
    public Area? EnclosedArea => IsClosed
        ? Area.FromSquareMeters(Sides().Sum(side =>
            ((side.From.XMeters - _points[0].XMeters) * (side.To.YMeters - _points[0].YMeters)) - ((side.To.XMeters - _points[0].XMeters) * (side.From.YMeters - _points[0].YMeters))) / 2)
        : null;

    /// <summary>Invariant text.</summary>
    /// <returns>Level, kind and number of corners.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{(IsClosed ? "closed" : "open")} line at {_level * 1e3:0.####} mm, {_points.Count} points, {Length.Millimeters:0.##} mm long");

    private IEnumerable<(SurfacePosition From, SurfacePosition To)> Sides()
    {
        for (int k = IsClosed ? 0 : 1; k < _points.Count; k++)
        {
            yield return (_points[k == 0 ? _points.Count - 1 : k - 1], _points[k]);
        }
    }
}
