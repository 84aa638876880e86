using System.Diagnostics;

namespace PrinterMath.Tramming;

/// <summary>What carries a bed: two or more screws by hand or by motor, fixed supports and hinges.</summary>
/// <remarks>
/// <para>Three screws fix the bed exactly. Four supports or more are too many: a stiff plate follows only the plane part of their heights, so a plan moves
/// all in one plane, and the twist of the bed is reported apart (<see cref="TrammingPlan.Twist"/>) unless it is to be taken out on purpose (<see cref="TrammingOptions.RemoveTwist"/>).</para>
/// <para>A fixed support keeps its height: the bed tilts about it. A hinge, or two fixed supports, leave one tilt, square to their line. Two supports alone, guided as a beam on two motors is, leave the tilt
/// along the line between them. The tilt that is out of reach is a finding of the plan, with its size: <c>plan.tilt.unreached</c>.</para>
/// </remarks>
/// <example><code>
/// BedSupports supports = BedSupports.Of(frontLeft, frontRight, BedHinge.Between("rear", x1, y1, x2, y2));
/// TrammingPlan plan = supports.Plan(PlaneFit.Fit(points), new TrammingOptions { LeastTotalTurning = true });
/// foreach (ScrewTurn turn in plan.Turns) { Console.WriteLine(turn); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class BedSupports
{
    private readonly BedSupport[] _supports;
    private readonly AdjustingScrew[] _screws;
    private readonly AdjustableSupport[] _adjustable;

    private BedSupports(BedSupport[] supports, AdjustableSupport[] adjustable, SupportMotion motion, PrincipalAxes axes, TwistPattern? twist)
    {
        _supports = supports;
        _adjustable = adjustable;
        _screws = [.. adjustable.OfType<AdjustingScrew>()];
        Motion = motion;
        Axes = axes;
        Twist = twist;
    }

    /// <summary>All supports, in the order given.</summary>
    public IReadOnlyList<BedSupport> Supports => Array.AsReadOnly(_supports);

    /// <summary>The screws that are turned by hand, in the order given.</summary>
    public IReadOnlyList<AdjustingScrew> Screws => Array.AsReadOnly(_screws);

    /// <summary>Frame of the adjustable supports.</summary>
    internal PrincipalAxes Axes { get; }

    internal SupportMotion Motion { get; }

    internal TwistPattern? Twist { get; }

    internal ReadOnlySpan<AdjustingScrew> ScrewSpan => _screws;

    internal ReadOnlySpan<AdjustableSupport> Adjustable => _adjustable;

    /// <summary>Whether screws turned by hand are all there is, three or four of them.</summary>
    internal bool AreThreeOrFourScrews => _screws.Length == _supports.Length && _screws.Length is 3 or 4;

    /// <summary>Supports of a bed.</summary>
    /// <param name="supports">Two to 64 supports with different names, at least one of them adjustable; three or more not all in one line, fixed ones in one line and no screw on it.</param>
    /// <returns>The supports.</returns>
    /// <exception cref="ArgumentException">Too few or too many supports, a name twice, nothing to adjust, or places from which no screw can tilt a bed.</exception>
    public static BedSupports Of(params IReadOnlyList<BedSupport> supports)
    {
        BedSupport[] copy = [.. Guard.NotNull(supports)];
        if (copy.Length is < 2 or > 64)
        {
            throw Guard.Refused(nameof(supports), $"There are {copy.Length} supports; a bed has from 2 to 64.");
        }

        for (int i = 0; i < copy.Length; i++)
        {
            Guard.NotNull(copy[i], nameof(supports));
            for (int j = 0; j < i; j++)
            {
                if (string.Equals(copy[i].Name, copy[j].Name, StringComparison.Ordinal))
                {
                    throw Guard.Refused(nameof(supports), $"Two supports are called '{copy[i].Name}'; names must be unique.");
                }
            }
        }

        AdjustableSupport[] adjustable = [.. copy.OfType<AdjustableSupport>()];
        if (adjustable.Length == 0)
        {
            throw Guard.Refused(nameof(supports), "None of the supports can be adjusted.");
        }

        Place[] moved = PlacesOf(adjustable);
        var motion = SupportMotion.Of(PlacesOf([.. copy.Where(support => support is not AdjustableSupport)]), moved, nameof(supports));
        Place[] all = PlacesOf(copy);
        return new BedSupports(copy, adjustable, motion, PrincipalAxes.Of(moved), all.Length > 3 ? TwistPattern.Of(all) : null);
    }

    /// <summary>Which screw to turn, which way and how far, to bring the bed level.</summary>
    /// <param name="plane">The plane of the bed as probed, in the frame of the supports.</param>
    /// <param name="options">Where the bed is to end up and within which limits; null to keep the mean height at the screws.</param>
    /// <returns>The plan, or a result whose findings say what the plane lacks or which limits exclude each other.</returns>
    /// <remarks>
    /// Caution: never turn a screw while the nozzle touches the bed; let a hot bed cool or wear gloves; keep fingers out of the gap that
    /// closes; keep springs compressed and stay within the screws' travel, which is checked where <see cref="TrammingOptions.Limits"/> state it.
    /// </remarks>
    /// <exception cref="ArgumentException">The options name a support that is not there or cannot be adjusted, exclude each other, or ask for what the supports do not allow.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number in the options is out of range.</exception>
    public TrammingPlan Plan(PlaneFit plane, TrammingOptions? options = null) =>
        TrammingPlanner.Plan(this, Guard.NotNull(plane), options ?? new TrammingOptions());

    /// <summary>Invariant text.</summary>
    /// <returns>The supports.</returns>
    public override string ToString() => string.Join("; ", _supports.Select(support => support.ToString()));

    private static Place[] PlacesOf(ReadOnlySpan<BedSupport> supports)
    {
        var places = new List<Place>();
        foreach (BedSupport support in supports)
        {
            places.AddRange(support.Places);
        }

        return [.. places];
    }
}
