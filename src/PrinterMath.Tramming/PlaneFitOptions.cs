using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>What is known beforehand about the readings a plane is fitted to, and how they are weighed.</summary>
/// <example><code>var options = new PlaneFitOptions { ProbeRepeatability = Length.FromMicrometers(4) };</code></example>
public sealed record PlaneFitOptions
{
    /// <summary>Standard deviation of one height reading, known beforehand; serves every point that carries no uncertainty of its own.</summary>
    /// <value>Greater than zero; null by default: points without uncertainty are judged from the residuals.</value>
    public Length? ProbeRepeatability { get; init; }

    /// <summary>
    /// How well the places of the points are known, a standard uncertainty along x and along y. Points whose greatest distance from their
    /// best line is within three times this value fix no plane.
    /// </summary>
    /// <value>Zero or more; 0.05 mm by default (common practice, no source).</value>
    public Length PlacementUncertainty { get; init; } = Length.FromMillimeters(0.05);

    /// <summary>
    /// Whether residuals larger than the stated uncertainties explain (χ² test at 1 %) widen every uncertainty by √(χ²/ν), so that a surface
    /// which is not a plane does not pass for one.
    /// </summary>
    /// <value>True by default.</value>
    public bool WidenForMisfit { get; init; } = true;

    /// <summary>How the readings are weighed.</summary>
    /// <value>Least squares by default.</value>
    public PlaneMethod Method { get; init; }

    /// <summary>k of <see cref="PlaneMethod.Huber"/>: a reading counts in full up to k scales from the plane.</summary>
    /// <value>From 0.5 to 10; 1.345 by default, which is 95 % efficient for normal readings.</value>
    public double TuningConstant { get; init; } = 1.345;

    /// <summary>
    /// Seed of the random starts of <see cref="PlaneMethod.LeastTrimmedSquares"/>. Up to 50 points every start there is gets tried and the seed is without effect.
    /// </summary>
    /// <value>1 by default.</value>
    public int Seed { get; init; } = 1;
}
