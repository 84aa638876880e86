using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>How probed points are sorted into a grid, and what a single height reading is worth.</summary>
public sealed record ProbedGridOptions
{
    /// <summary>How far apart along x (or y) two neighbouring points may lie and still count as one column (or row).</summary>
    /// <value>0.1 mm. Zero or more. A column as a whole may be twice as wide.</value>
    public Length PositionTolerance { get; init; } = Length.FromMillimeters(0.1);

    /// <summary>Standard deviation of one height reading, for points that carry no uncertainty of their own; greater than zero.</summary>
    /// <value>Null: judged from places probed more than once, and unknown if there are none.</value>
    public Length? Repeatability { get; init; }

    /// <summary>Degrees of freedom behind <see cref="Repeatability"/>: the readings it was found from, less one.</summary>
    /// <value>Infinite. 1 or more.</value>
    public double RepeatabilityDegreesOfFreedom { get; init; } = double.PositiveInfinity;
}
