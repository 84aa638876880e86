using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Where a levelled bed is to end up, within which limits, and what turn is too small to bother.</summary>
/// <remarks>
/// <para>A level bed may stand at any height, unless fixed supports hold it: one of <see cref="KeepStill"/>, <see cref="LeastTotalTurning"/> and <see cref="TargetHeight"/> says at which.
/// A screw that is kept still is a place nothing is done at, chosen beforehand; least total turning finds the height at which Σ|Δhᵢ|/Pᵢ is smallest, where one screw stays still as well, but which one depends on the readings.</para>
/// </remarks>
/// <example><code>var options = new TrammingOptions { KeepStill = "rear left" };</code></example>
public sealed record TrammingOptions
{
    /// <summary>Name of a screw that is not turned: the others are brought to its height.</summary>
    /// <value>Null by default.</value>
    public string? KeepStill { get; init; }

    /// <summary>Height, positive upwards, that the bed is brought to at every screw; not with fixed supports or hinges, which hold it at theirs.</summary>
    /// <value>Null by default: unless something else is asked for, the mean of the heights at the screws, so that the changes add up to zero.</value>
    public Length? TargetHeight { get; init; }

    /// <summary>Whether to choose the height at which all turns together are fewest.</summary>
    /// <remarks>The weighted median of the heights at the screws, weights one over the lead; exact. Of several heights with the same sum that of a screw is taken which is nearest to the mean.</remarks>
    /// <value>False by default.</value>
    public bool LeastTotalTurning { get; init; }

    /// <summary>Whether to take the twist out as well, by turning four or more screws out of one plane; not with fixed supports or hinges.</summary>
    /// <remarks>For a bed that bends to its screws, or a frame that is twisted itself. A stiff plate does not follow: it rocks, and springs or plate are strained.</remarks>
    /// <value>False by default: the twist is kept out of the turns.</value>
    public bool RemoveTwist { get; init; }

    /// <summary>How far the bed may still move at the screws.</summary>
    /// <remarks>Where limits do not let the bed become level, the plan leaves the smallest tilt, in the least-squares sense over the probed places, that they allow, and only then sees to the height.</remarks>
    /// <value>Empty by default: nothing is checked.</value>
    public IReadOnlyList<TravelLimit> Limits { get; init; } = [];

    /// <summary>The smallest turn that a hand can set with purpose; smaller ones are not worth making.</summary>
    /// <value>Zero or more; 5° by default (common practice, no source).</value>
    public Angle SmallestUsefulTurn { get; init; } = Angle.FromDegrees(5);
}
