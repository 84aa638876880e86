using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>How a thin plate is fitted to points, and what a single height reading is worth.</summary>
public sealed record ThinPlateOptions
{
    /// <summary>Weight λ of the bending energy, see <see cref="ThinPlateModel"/>; zero lets the plate pass through the points.</summary>
    /// <value>Null: by generalised cross-validation. Zero or more.</value>
    public Area? Smoothing { get; init; }

    /// <summary>What happens outside the rectangle that the points span.</summary>
    /// <value><see cref="OutsideRule.Refuse"/>.</value>
    public OutsideRule Outside { get; init; } = OutsideRule.Refuse;

    /// <summary>Standard deviation of one height reading, for points that carry no uncertainty of their own; greater than zero.</summary>
    /// <value>Null: judged from what the plate leaves over.</value>
    public Length? Repeatability { get; init; }

    /// <summary>Degrees of freedom behind <see cref="Repeatability"/>: the readings it was found from, less one.</summary>
    /// <value>Infinite. 1 or more.</value>
    public double RepeatabilityDegreesOfFreedom { get; init; } = double.PositiveInfinity;
}
