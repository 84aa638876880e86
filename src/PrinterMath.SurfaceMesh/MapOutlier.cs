using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A probed height that its neighbours do not bear out.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MapOutlier
{
    private readonly double _height;
    private readonly double _expected;

    internal MapOutlier(GridNode node, SurfacePosition place, double height, double expected, double score)
    {
        Node = node;
        Place = place;
        _height = height;
        _expected = expected;
        Score = score;
    }

    /// <summary>Where in the grid.</summary>
    public GridNode Node { get; }

    /// <summary>Where on the surface.</summary>
    public SurfacePosition Place { get; }

    /// <summary>The height that was probed.</summary>
    public Length Height => Length.FromMeters(_height);

    /// <summary>The height that its neighbours lead to expect.</summary>
    public Length ExpectedHeight => Length.FromMeters(_expected);

    /// <summary>Probed less expected: positive where the reading stands above its neighbours.</summary>
    public Length Deviation => Length.FromMeters(_height - _expected);

    /// <summary>The deviation in units of what deviations are usually, a ratio, at most a million.</summary>
    public double Score { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>Place, deviation and score.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Place}: {(_height - _expected) * 1e6:0.##} µm off its neighbours, score {Score:0.0}");
}
