using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>A move along one axis from rest, made of segments of constant acceleration or constant jerk; exact at every moment, and still of this kind when shaped.</summary>
/// <remarks>Before its start it stands at zero; after its end it goes on with the speed it has then, usually none.</remarks>
/// <example><code>
/// MotionProfile move = MotionProfile.Trapezoid(Length.FromMillimeters(20), Speed.FromMillimetersPerSecond(150), Acceleration.FromMetersPerSecondSquared(5));
/// MotionProfile shaped = move.ShapedBy(sequence);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MotionProfile
{
    private const double SameMoment = 1e-13;
    private readonly MotionKnot[] _knots;

    private MotionProfile(MotionKnot[] knots) => _knots = knots;

    /// <summary>Time from the start to the last change of speed, acceleration or jerk.</summary>
    public Duration Duration => Duration.FromSeconds(_knots[^1].Time);

    /// <summary>Position at the end.</summary>
    public Length EndPosition => Length.FromMeters(_knots[^1].Position);

    /// <summary>Speed at the end and after it.</summary>
    public Speed EndSpeed => Speed.FromMetersPerSecond(_knots[^1].Speed);

    internal ReadOnlySpan<MotionKnot> Knots => _knots;

    /// <summary>A move of given segments.</summary>
    /// <param name="segments">The segments in order, at least one. After the last one acceleration and jerk are zero.</param>
    /// <returns>The move.</returns>
    /// <exception cref="ArgumentException">There are no segments.</exception>
    public static MotionProfile FromSegments(IReadOnlyList<MotionSegment> segments)
    {
        if (Guard.NotNull(segments).Count == 0)
        {
            throw Guard.Refused(nameof(segments), "There are no segments; give at least one.");
        }

        List<MotionChange> changes = [];
        double time = 0, acceleration = 0, jerk = 0;
        foreach (MotionSegment segment in segments)
        {
            changes.Add(new MotionChange(time, segment.SpeedStep, segment.StartAcceleration - acceleration, segment.JerkSi - jerk));
            time += segment.Seconds;
            acceleration = segment.StartAcceleration + (segment.JerkSi * segment.Seconds);
            jerk = segment.JerkSi;
        }

        changes.Add(new MotionChange(time, 0, -acceleration, -jerk));
        return FromChanges(changes);
    }

    /// <summary>A move from rest to rest with one acceleration: speeding up, steady speed where the way is long enough, slowing down.</summary>
    /// <param name="distance">Way, not zero; negative goes in the negative direction.</param>
    /// <param name="speed">Largest speed, greater than zero.</param>
    /// <param name="acceleration">Acceleration, greater than zero.</param>
    /// <returns>The move.</returns>
    /// <exception cref="ArgumentException">The distance is zero.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Speed or acceleration is not positive.</exception>
    public static MotionProfile Trapezoid(Length distance, Speed speed, Acceleration acceleration)
    {
        (double way, double sign) = Way(distance);
        double a = Guard.Positive(acceleration.MetersPerSecondSquared, nameof(acceleration));
        double v = Math.Min(Guard.Positive(speed.MetersPerSecond, nameof(speed)), Math.Sqrt(way * a));
        return FromSegments([MotionSegment.OfSi(v / a, sign * a), MotionSegment.OfSi(Math.Max(0, (way / v) - (v / a)), 0), MotionSegment.OfSi(v / a, -sign * a)]);
    }

    /// <summary>A move from rest to rest whose acceleration changes no faster than a jerk.</summary>
    /// <param name="distance">Way, not zero; negative goes in the negative direction.</param>
    /// <param name="speed">Largest speed, greater than zero.</param>
    /// <param name="acceleration">Largest acceleration, greater than zero.</param>
    /// <param name="jerk">Jerk, greater than zero.</param>
    /// <returns>The move, of up to seven segments; speed and acceleration are not reached where the way is too short.</returns>
    /// <exception cref="ArgumentException">The distance is zero.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Speed, acceleration or jerk is not positive.</exception>
    public static MotionProfile JerkLimited(Length distance, Speed speed, Acceleration acceleration, Jerk jerk)
    {
        (double way, double sign) = Way(distance);
        double a = Guard.Positive(acceleration.MetersPerSecondSquared, nameof(acceleration));
        double j = Guard.Positive(jerk.MetersPerSecondCubed, nameof(jerk));

        // Speeding up to v and slowing down again takes v·(v/a + a/j) where a is reached, else 2v·√(v/j).
        double peak = a / 2 * (Math.Sqrt((a * a / (j * j)) + (4 * way / a)) - (a / j));
        peak = peak * j >= a * a ? peak : Math.Cbrt(way * way * j / 4);
        double v = Math.Min(Guard.Positive(speed.MetersPerSecond, nameof(speed)), peak);
        double ramp = Math.Min(a / j, Math.Sqrt(v / j));
        double reached = ramp * j;
        double steadyUp = Math.Max(0, (v / reached) - ramp);
        double cruise = Math.Max(0, (way / v) - (2 * ramp) - steadyUp);
        return FromSegments([
            MotionSegment.OfSi(ramp, 0, sign * j), MotionSegment.OfSi(steadyUp, sign * reached), MotionSegment.OfSi(ramp, sign * reached, -sign * j),
            MotionSegment.OfSi(cruise, 0),
            MotionSegment.OfSi(ramp, 0, -sign * j), MotionSegment.OfSi(steadyUp, -sign * reached), MotionSegment.OfSi(ramp, -sign * reached, sign * j),
        ]);
    }

    /// <summary>This move convolved with a sequence.</summary>
    /// <param name="sequence">The sequence.</param>
    /// <returns>The shaped move, longer by the sequence; every change of speed, acceleration and jerk comes once for each impulse.</returns>
    public MotionProfile ShapedBy(ImpulseSequence sequence)
    {
        double[] amplitudes = Guard.NotNull(sequence).Amplitudes.ToArray(), times = sequence.Times.ToArray();
        return FromChanges(
            from knot in _knots
            from i in Enumerable.Range(0, times.Length)
            let a = amplitudes[i]
            select new MotionChange(knot.Time + times[i], a * knot.SpeedChange, a * knot.AccelerationChange, a * knot.JerkChange));
    }

    /// <summary>Position at a time.</summary>
    /// <param name="time">Time since the start.</param>
    /// <returns>The position; zero before the start.</returns>
    public Length PositionAt(Duration time) => Length.FromMeters(At(Guard.Finite(time.Seconds, nameof(time))).Position);

    /// <summary>Speed just after a time.</summary>
    /// <param name="time">Time since the start.</param>
    /// <returns>The speed.</returns>
    public Speed SpeedAt(Duration time) => Speed.FromMetersPerSecond(At(Guard.Finite(time.Seconds, nameof(time))).Speed);

    /// <summary>Acceleration just after a time.</summary>
    /// <param name="time">Time since the start.</param>
    /// <returns>The acceleration.</returns>
    public Acceleration AccelerationAt(Duration time) => Acceleration.FromMetersPerSecondSquared(At(Guard.Finite(time.Seconds, nameof(time))).Acceleration);

    /// <summary>Invariant text.</summary>
    /// <returns>Way and duration.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{EndPosition.Millimeters:0.###} mm in {Duration.Milliseconds:0.###} ms");

    /// <summary>The last knot at or before a time; −1 before the first.</summary>
    internal int KnotBefore(double seconds)
    {
        int low = -1, high = _knots.Length;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = _knots[middle].Time <= seconds ? (middle, high) : (low, middle);
        }

        return low;
    }

    private static (double Way, double Sign) Way(Length distance)
    {
        double meters = Guard.Finite(distance.Meters, nameof(distance));
        return meters == 0 ? throw Guard.Refused(nameof(distance), "The distance is zero; it must not be.") : (Math.Abs(meters), Math.Sign(meters));
    }

    private static MotionProfile FromChanges(IEnumerable<MotionChange> changes)
    {
        MotionChange[] ordered = [.. changes.OrderBy(change => change.Time)];
        double together = SameMoment * ordered[^1].Time;
        List<MotionKnot> knots = [];
        var knot = default(MotionKnot);
        for (int i = 0; i < ordered.Length;)
        {
            double time = ordered[i].Time, speed = 0, acceleration = 0, jerk = 0;
            for (; i < ordered.Length && ordered[i].Time - time <= together; i++)
            {
                speed += ordered[i].Speed;
                acceleration += ordered[i].Acceleration;
                jerk += ordered[i].Jerk;
            }

            knot = knot.Next(time, speed, acceleration, jerk);
            knots.Add(knot);
        }

        return new MotionProfile([.. knots]);
    }

    private (double Position, double Speed, double Acceleration) At(double seconds)
    {
        int k = KnotBefore(seconds);
        return k < 0 ? default : _knots[k].After(seconds - _knots[k].Time);
    }

    private readonly record struct MotionChange(double Time, double Speed, double Acceleration, double Jerk);
}
