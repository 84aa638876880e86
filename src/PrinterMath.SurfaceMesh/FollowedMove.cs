using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A straight move in x and y, split so that straight pieces follow the height of a model within a tolerance.</summary>
/// <remarks>
/// Pieces begin and end on the model, the first and the last at the ends of the move to the bit. Made by <see cref="HeightModelMoves.Follow"/>, which states the method.
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FollowedMove
{
    /// <summary>No move is split into more pieces: 10 000.</summary>
    public const int MostSegments = 10_000;

    private readonly ReadOnlyCollection<MoveSegment> _segments;
    private readonly double _length;
    private readonly double _maximumDeviation;

    private FollowedMove(MoveSegment[] segments, bool isProven, double length, double maximumDeviation)
    {
        _segments = Array.AsReadOnly(segments);
        IsProven = isProven;
        _length = length;
        _maximumDeviation = maximumDeviation;
    }

    /// <summary>The pieces in order, one or more.</summary>
    public IReadOnlyList<MoveSegment> Segments => _segments;

    /// <summary>Whether <see cref="LargestDeviation"/> is proven, apart from rounding; false for models that are not made of polynomials and were sampled.</summary>
    public bool IsProven { get; }

    /// <summary>Length of the move in the x-y plane.</summary>
    public Length Length => UnitsNet.Length.FromMeters(_length);

    /// <summary>The tolerance that was asked for.</summary>
    public Length MaximumDeviation => UnitsNet.Length.FromMeters(_maximumDeviation);

    /// <summary>Largest distance, along z, of the model from the pieces, at most <see cref="MaximumDeviation"/>: exact on bilinear cells, elsewhere an upper bound.</summary>
    public Length LargestDeviation => UnitsNet.Length.FromMeters(_segments.Max(piece => piece.DeviationMeters));

    /// <summary>Invariant text.</summary>
    /// <returns>Pieces, length and deviation.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{_segments.Count} piece(s) over {_length * 1e3:0.##} mm, at most {LargestDeviation.Micrometers:0.###} µm off the model ({_maximumDeviation * 1e6:0.###} µm allowed)");

    internal static FollowedMove Along(IHeightModel model, SurfacePosition from, SurfacePosition to, double tolerance)
    {
        LineProfile profile = LineProfile.Of(model, from, to, tolerance);
        List<int> knots = MoveSplitting.Knots(profile, tolerance);
        MoveSegment[] segments = new MoveSegment[knots.Count - 1];
        for (int k = 0; k < segments.Length; k++)
        {
            int a = knots[k], b = knots[k + 1];
            segments[k] = new MoveSegment(
                profile.Line.Position(profile.Distance(a)),
                profile.Line.Position(profile.Distance(b)),
                profile.Height(a),
                profile.Height(b),
                profile.Distance(b) - profile.Distance(a),
                profile.Deviation(a, b));
        }

        return new FollowedMove(segments, profile.IsProven, profile.Line.Length, tolerance);
    }
}
