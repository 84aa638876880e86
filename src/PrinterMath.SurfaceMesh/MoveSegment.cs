using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A straight piece of a compensated move. Heights are those of the surface, positive upwards, to be added to the height that is printed at.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MoveSegment
{
    private readonly double _startHeight;
    private readonly double _endHeight;
    private readonly double _length;
    private readonly double _deviation;

    internal MoveSegment(SurfacePosition start, SurfacePosition end, double startHeight, double endHeight, double length, double deviation)
    {
        Start = start;
        End = end;
        _startHeight = startHeight;
        _endHeight = endHeight;
        _length = length;
        _deviation = deviation;
    }

    /// <summary>Where the piece begins.</summary>
    public SurfacePosition Start { get; }

    /// <summary>Where the piece ends.</summary>
    public SurfacePosition End { get; }

    /// <summary>Height of the model at the start.</summary>
    public Length StartHeight => UnitsNet.Length.FromMeters(_startHeight);

    /// <summary>Height of the model at the end.</summary>
    public Length EndHeight => UnitsNet.Length.FromMeters(_endHeight);

    /// <summary>Length in the x-y plane, greater than zero.</summary>
    public Length Length => UnitsNet.Length.FromMeters(_length);

    /// <summary>Slope of the piece, a ratio of height to length in the plane, positive where it rises from start to end.</summary>
    public double Slope => (_endHeight - _startHeight) / _length;

    /// <summary>Largest distance, along z, of the model from the piece; see <see cref="FollowedMove.IsProven"/>.</summary>
    public Length LargestDeviation => UnitsNet.Length.FromMeters(_deviation);

    internal double LengthMeters => _length;

    internal double DeviationMeters => _deviation;

    /// <summary>Invariant text in millimetres.</summary>
    /// <returns>Both ends with their heights.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Start} at {_startHeight * 1e3:0.####} mm to {End} at {_endHeight * 1e3:0.####} mm");
}
