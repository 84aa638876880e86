using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>How a surface is predicted from points by kriging, and what a single height reading is worth.</summary>
public sealed record KrigingOptions
{
    /// <summary>The covariance of the surface.</summary>
    /// <value>Null: Matérn's with ν = 5/2, standard deviation and length integrated over what the readings leave open.</value>
    public SurfaceCovariance? Covariance { get; init; }

    /// <summary>What the surface does at large.</summary>
    /// <value><see cref="KrigingTrend.Plane"/>.</value>
    public KrigingTrend Trend { get; init; } = KrigingTrend.Plane;

    /// <summary>The rectangle in which the surface is predicted; kriging carries on beyond the points, with the uncertainty that this has.</summary>
    /// <value>Null: the rectangle that the points span.</value>
    public SurfaceRectangle? Domain { get; init; }

    /// <summary>What happens outside <see cref="Domain"/>.</summary>
    /// <value><see cref="OutsideRule.Refuse"/>.</value>
    public OutsideRule Outside { get; init; } = OutsideRule.Refuse;

    /// <summary>Standard deviation of one height reading, for points that carry no uncertainty of their own; greater than zero.</summary>
    /// <value>Null: integrated over as well; with a stated <see cref="Covariance"/> readings without an uncertainty are taken as exact.</value>
    public Length? Repeatability { get; init; }
}
