using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Where a levelled bed is to end up, and what turn is too small to bother.</summary>
/// <remarks>Give at most one of <see cref="KeepStill"/> and <see cref="TargetHeight"/>.</remarks>
/// <example><code>var options = new TrammingOptions { KeepStill = "rear left" };</code></example>
public sealed record TrammingOptions
{
    /// <summary>Name of a screw that is not turned: the others are brought to its height.</summary>
    /// <value>Null by default.</value>
    public string? KeepStill { get; init; }

    /// <summary>Height, positive upwards, that the bed is brought to at every screw.</summary>
    /// <value>Null by default: unless a screw is kept still, the mean of the heights at the screws, so that the changes add up to zero.</value>
    public Length? TargetHeight { get; init; }

    /// <summary>The smallest turn that a hand can set with purpose; smaller ones are not worth making.</summary>
    /// <value>Zero or more; 5° by default (common practice, no source).</value>
    public Angle SmallestUsefulTurn { get; init; } = Angle.FromDegrees(5);
}
