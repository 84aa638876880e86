using System.Diagnostics;

namespace PrinterMath.Tramming;

/// <summary>The three or four adjusting screws that carry a bed.</summary>
/// <remarks>
/// Three screws fix the bed exactly. Four are one too many: a stiff plate follows only the plane part of their heights, so a plan moves
/// all four in one plane, and the twist of the bed is reported apart (<see cref="TrammingPlan.Twist"/>).
/// </remarks>
/// <example><code>
/// BedSupports supports = BedSupports.Of(frontLeft, frontRight, rear);
/// TrammingPlan plan = supports.Plan(PlaneFit.Fit(points), new TrammingOptions { KeepStill = "rear" });
/// foreach (ScrewTurn turn in plan.Turns) { Console.WriteLine(turn); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class BedSupports
{
    private readonly AdjustingScrew[] _screws;

    private BedSupports(AdjustingScrew[] screws, PrincipalAxes axes, TwistPattern? twist)
    {
        _screws = screws;
        Axes = axes;
        Twist = twist;
    }

    /// <summary>The screws, in the order given.</summary>
    public IReadOnlyList<AdjustingScrew> Screws => Array.AsReadOnly(_screws);

    internal PrincipalAxes Axes { get; }

    internal TwistPattern? Twist { get; }

    internal ReadOnlySpan<AdjustingScrew> ScrewSpan => _screws;

    /// <summary>Supports made of adjusting screws.</summary>
    /// <param name="screws">Three or four screws with different names, not all in one line.</param>
    /// <returns>The supports.</returns>
    /// <exception cref="ArgumentException">Fewer than three or more than four screws, a name twice, or screws in one line.</exception>
    public static BedSupports Of(params IReadOnlyList<AdjustingScrew> screws)
    {
        AdjustingScrew[] copy = [.. Guard.NotNull(screws)];
        if (copy.Length is < 3 or > 4)
        {
            throw Guard.Refused(nameof(screws), $"There are {copy.Length} screws; the supports of a bed are 3 or 4.");
        }

        foreach (AdjustingScrew screw in copy)
        {
            Guard.NotNull(screw, nameof(screws));
        }

        PrincipalAxes axes = SupportGeometry.Check(copy, nameof(screws));
        return new BedSupports(copy, axes, copy.Length == 4 ? TwistPattern.Of(copy) : null);
    }

    /// <summary>Which screw to turn, which way and how far, to bring the bed level.</summary>
    /// <param name="plane">The plane of the bed as probed, in the frame of the screws.</param>
    /// <param name="options">Where the bed is to end up; null to keep the mean height at the screws.</param>
    /// <returns>The plan, or a result whose findings say what the plane lacks.</returns>
    /// <remarks>
    /// Caution: never turn a screw while the nozzle touches the bed; let a hot bed cool or wear gloves; keep fingers out of the gap that
    /// closes; keep springs compressed and stay within the screws' travel, which is not checked here.
    /// </remarks>
    /// <exception cref="ArgumentException">The options name a screw that is not there, or both a screw and a height.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number in the options is out of range.</exception>
    public TrammingPlan Plan(PlaneFit plane, TrammingOptions? options = null) =>
        TrammingPlanner.Plan(this, Guard.NotNull(plane), options ?? new TrammingOptions());

    /// <summary>Invariant text.</summary>
    /// <returns>The screws.</returns>
    public override string ToString() => string.Join("; ", _screws.Select(screw => screw.ToString()));
}
