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
    private readonly VerticalMotion _motion;
    private readonly double _length;
    private readonly double _maximumDeviation;

    private FollowedMove(MoveSegment[] segments, bool isProven, double length, double maximumDeviation)
    {
        _segments = Array.AsReadOnly(segments);
        _motion = new VerticalMotion(segments);
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

    /// <summary>Largest slope, up or down, of a piece: a ratio of height to length in the plane, zero or more.</summary>
    public double SteepestSlope => _motion.Steepest;

    /// <summary>Largest step of the slope from one piece to the next, a ratio, zero or more; zero for a single piece.</summary>
    public double LargestSlopeStep => _motion.LargestStep;

    /// <summary>Steps of the slope at the corners between the pieces, in order: ratios, positive where the path bends upwards.</summary>
    public IReadOnlyList<double> SlopeSteps => Array.AsReadOnly([.. Enumerable.Range(0, _segments.Count - 1).Select(_motion.Step)]);

    /// <summary>Step of the slope at the corner between this move and the one that follows it, a ratio, positive where the path bends upwards.</summary>
    /// <param name="next">The move that begins where this one ends.</param>
    /// <returns>The step, for a corner that is passed at one speed.</returns>
    /// <exception cref="ArgumentException">The next move begins elsewhere.</exception>
    public double SlopeStepTo(FollowedMove next) =>
        Guard.NotNull(next)._segments[0].Start == _segments[^1].End
            ? next._segments[0].Slope - _segments[^1].Slope
            : throw Guard.Refused(nameof(next), $"The next move begins at {next._segments[0].Start}; this one ends at {_segments[^1].End}.");

    /// <summary>What the move asks of the Z axis.</summary>
    /// <param name="feed">Speed in the x-y plane, greater than zero.</param>
    /// <param name="accelerationAlong">Acceleration along the move in the x-y plane, zero or more; zero for a move at a constant feed.</param>
    /// <returns>Vertical speed, acceleration and steps of speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <example><code>
    /// bool tooFast = move.DemandAt(Speed.FromMillimetersPerSecond(200)).Exceeded(limits).Count > 0;
    /// </code></example>
    public ZAxisDemand DemandAt(Speed feed, Acceleration accelerationAlong = default) => _motion.At(
        Guard.Positive(feed.MetersPerSecond, nameof(feed)), Guard.NonNegative(accelerationAlong.MetersPerSecondSquared, nameof(accelerationAlong)));

    /// <summary>The largest feed that keeps the Z axis within its limits: the least of ż/|m|, √((z̈ − a|m|)/|z″|) and Δż/|Δm| over all pieces and corners.</summary>
    /// <param name="limits">What the drive can do.</param>
    /// <param name="accelerationAlong">Acceleration a along the move in the x-y plane, zero or more; zero for a move at a constant feed.</param>
    /// <returns>The feed and what sets it.</returns>
    /// <remarks>|z″| is that of <see cref="ZAxisDemand.Acceleration"/>. Derived from z(s) along the move: ż = v z′, z̈ = v² z″ + a z′.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <example><code>
    /// FeedLimit limit = move.LargestFeed(new ZAxisLimits { MaximumSpeed = Speed.FromMillimetersPerSecond(5), MaximumAcceleration = Acceleration.FromMillimetersPerSecondSquared(100) });
    /// </code></example>
    public FeedLimit LargestFeed(ZAxisLimits limits, Acceleration accelerationAlong = default)
    {
        Guard.NotNull(limits).Check(nameof(limits));
        return _motion.Largest(limits, Guard.NonNegative(accelerationAlong.MetersPerSecondSquared, nameof(accelerationAlong)));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Pieces, length and deviation.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{_segments.Count} piece(s) over {_length * 1e3:0.##} mm, at most {LargestDeviation.Micrometers:0.###} µm off the model ({_maximumDeviation * 1e6:0.###} µm allowed)");

    internal static FollowedMove Along(IHeightModel model, SurfacePosition from, SurfacePosition to, double tolerance, double share)
    {
        if (share == 0)
        {
            double length = new ProfileLine(model, from, to).Length;
            return new FollowedMove([new MoveSegment(from, to, 0, 0, length, 0)], true, length, tolerance);
        }

        LineProfile profile = LineProfile.Of(model, from, to, tolerance / share);
        List<int> knots = MoveSplitting.Knots(profile, tolerance / share);
        MoveSegment[] segments = new MoveSegment[knots.Count - 1];
        for (int k = 0; k < segments.Length; k++)
        {
            int a = knots[k], b = knots[k + 1];
            segments[k] = new MoveSegment(
                profile.Line.Position(profile.Distance(a)),
                profile.Line.Position(profile.Distance(b)),
                share * profile.Height(a),
                share * profile.Height(b),
                profile.Distance(b) - profile.Distance(a),
                share * profile.Deviation(a, b));
        }

        return new FollowedMove(segments, profile.IsProven, profile.Line.Length, tolerance);
    }
}
