using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Whether a compensating map is needed once the surface is trammed: the peak-to-valley that is left, corrected for noise, against a limit.</summary>
/// <remarks>Tramming removes the plane; the rest is judged by the flatness, so probe noise alone never asks for a map. Source: JCGM 106:2012, 8.3.2 and 8.3.3.</remarks>
/// <example><code>
/// MapNeed need = MapNeed.Judge(flatness, Tolerance.AtMost(Length.FromMillimeters(0.05)));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MapNeed
{
    private MapNeed(Flatness flatness, Verdict<Length> verdict)
    {
        Flatness = flatness;
        Verdict = verdict;
    }

    /// <summary>The flatness that was judged.</summary>
    public Flatness Flatness { get; }

    /// <summary>The verdict on the corrected peak-to-valley.</summary>
    public Verdict<Length> Verdict { get; }

    /// <summary>What follows for the map.</summary>
    public MapDecision Decision => Verdict.Conclusion switch
    {
        Conclusion.Within => MapDecision.NotNeeded,
        Conclusion.Outside => MapDecision.Needed,
        _ => MapDecision.Undecided,
    };

    /// <summary>Judges what tramming would leave.</summary>
    /// <param name="flatness">The flatness of the surface.</param>
    /// <param name="limit">Largest peak-to-valley that prints well without a map, made by <see cref="Tolerance.AtMost{T}"/>.</param>
    /// <returns>The decision with its verdict.</returns>
    /// <exception cref="ArgumentException">The tolerance has a lower limit, or no upper one.</exception>
    /// <exception cref="IndeterminateException">The flatness could not be corrected for noise.</exception>
    public static MapNeed Judge(Flatness flatness, Tolerance<Length> limit) =>
        Guard.NotNull(limit).Lower is null && limit.Upper is not null
            ? new MapNeed(Guard.NotNull(flatness), limit.Judge(flatness.PeakToValley))
            : throw Guard.Refused(nameof(limit), $"The limit is {limit}; a flatness has an upper limit alone.");

    /// <summary>Invariant text.</summary>
    /// <returns>Decision and verdict.</returns>
    public override string ToString() => $"map {Decision}; {Verdict}";
}
