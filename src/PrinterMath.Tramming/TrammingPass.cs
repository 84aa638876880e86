using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>One pass over the bed: what was turned since the pass before, the readings, and, if known, when each was taken.</summary>
/// <example><code>
/// TrammingPass first = TrammingPass.First(points);
/// TrammingPass second = TrammingPass.After([AppliedTurn.Clockwise("rear", Angle.FromDegrees(120))], pointsAgain);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TrammingPass
{
    private readonly AppliedTurn[] _turned;
    private readonly ProbePoint[] _points;
    private readonly double[] _times;

    private TrammingPass(AppliedTurn[] turned, ProbePoint[] points, double[] times)
    {
        _turned = turned;
        _points = points;
        _times = times;
    }

    /// <summary>What was turned between the pass before and this one; empty for the first.</summary>
    public IReadOnlyList<AppliedTurn> Turned => Array.AsReadOnly(_turned);

    /// <summary>The readings, in the order taken.</summary>
    public IReadOnlyList<ProbePoint> Points => Array.AsReadOnly(_points);

    /// <summary>Whether every reading carries the time it was taken.</summary>
    public bool HasTimes => _times.Length > 0;

    /// <summary>When each reading was taken, from any zero common to all passes, in the order of <see cref="Points"/>; empty when not known.</summary>
    public IReadOnlyList<Duration> Times => [.. _times.Select(t => Duration.FromSeconds(t))];

    internal ReadOnlySpan<double> Seconds => _times;

    internal ReadOnlySpan<ProbePoint> PointSpan => _points;

    /// <summary>The first pass, before which nothing was turned.</summary>
    /// <param name="points">At least three readings.</param>
    /// <param name="times">When each was taken, not decreasing; null when not known.</param>
    /// <returns>The pass.</returns>
    /// <exception cref="ArgumentException">Fewer than three readings, or times that do not fit them or run backwards.</exception>
    public static TrammingPass First(IReadOnlyList<ProbePoint> points, IReadOnlyList<Duration>? times = null) => After([], points, times);

    /// <summary>A later pass.</summary>
    /// <param name="turned">What was turned since the pass before, each screw at most once; empty when nothing was.</param>
    /// <param name="points">At least three readings, at the places of the other passes or at others.</param>
    /// <param name="times">When each was taken, not decreasing; null when not known.</param>
    /// <returns>The pass.</returns>
    /// <exception cref="ArgumentException">Fewer than three readings, a screw named twice, or times that do not fit the readings or run backwards.</exception>
    public static TrammingPass After(IReadOnlyList<AppliedTurn> turned, IReadOnlyList<ProbePoint> points, IReadOnlyList<Duration>? times = null)
    {
        AppliedTurn[] turns = [.. Guard.NotNull(turned)];
        for (int i = 0; i < turns.Length; i++)
        {
            Guard.NotNull(turns[i], nameof(turned));
            if (turns.AsSpan(0, i).ToArray().Any(other => string.Equals(other.Screw, turns[i].Screw, StringComparison.Ordinal)))
            {
                throw Guard.Refused(nameof(turned), $"'{turns[i].Screw}' is named twice; add its turns up, clockwise positive.");
            }
        }

        if (Guard.NotNull(points).Count < 3)
        {
            throw Guard.Refused(nameof(points), $"There are {points.Count} readings; a pass needs at least 3.");
        }

        double[] seconds = times is null ? [] : [.. times.Select(t => Guard.Finite(t.Seconds, nameof(times)))];
        if (times is not null && seconds.Length != points.Count)
        {
            throw Guard.Refused(nameof(times), $"There are {seconds.Length} times for {points.Count} readings.");
        }

        for (int i = 1; i < seconds.Length; i++)
        {
            if (seconds[i] < seconds[i - 1])
            {
                throw Guard.Refused(nameof(times), FormattableString.Invariant($"Reading {i} was taken at {seconds[i]} s, before reading {i - 1} at {seconds[i - 1]} s; readings stand in the order taken."));
            }
        }

        return new TrammingPass(turns, [.. points], seconds);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Number of readings and what was turned.</returns>
    public override string ToString() =>
        $"{_points.Length} readings{(_turned.Length == 0 ? string.Empty : $" after {string.Join("; ", _turned.Select(t => t.ToString()))}")}";
}
