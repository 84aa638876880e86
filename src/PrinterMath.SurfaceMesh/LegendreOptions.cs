using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>How polynomials are fitted to points, and what a single height reading is worth.</summary>
public sealed record LegendreOptions
{
    /// <summary>Total degree of the polynomials: 1 is a plane, 2 adds bows and twist.</summary>
    /// <value>Null: that of least prediction error, each reading left out in turn, from 1 to <see cref="LegendreModel.MostDegree"/>. From 1 to that otherwise.</value>
    public int? Degree { get; init; }

    /// <summary>The rectangle on which the polynomials are defined and heights are given.</summary>
    /// <value>Null: the rectangle that the points span.</value>
    public SurfaceRectangle? Domain { get; init; }

    /// <summary>What happens outside <see cref="Domain"/>.</summary>
    /// <value><see cref="OutsideRule.Refuse"/>.</value>
    public OutsideRule Outside { get; init; } = OutsideRule.Refuse;

    /// <summary>Standard deviation of one height reading, for points that carry no uncertainty of their own; greater than zero.</summary>
    /// <value>Null: judged from what the polynomials leave over.</value>
    public Length? Repeatability { get; init; }

    /// <summary>Degrees of freedom behind <see cref="Repeatability"/>: the readings it was found from, less one.</summary>
    /// <value>Infinite. 1 or more.</value>
    public double RepeatabilityDegreesOfFreedom { get; init; } = double.PositiveInfinity;
}
