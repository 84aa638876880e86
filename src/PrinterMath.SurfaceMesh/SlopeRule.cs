namespace PrinterMath.SurfaceMesh;

/// <summary>Where the slopes at the nodes of a bicubic model come from.</summary>
public enum SlopeRule
{
    /// <summary>The parabola through the node and its two neighbours (Catmull-Rom; Bessel where spacings vary). Error of third order; may overshoot a step by 7 % of its height.</summary>
    Neighbours,

    /// <summary>Slopes limited so that each cell stays within the heights of its four nodes, and along grid lines rises only where the nodes rise. Flattens peaks; error of second order there.</summary>
    ShapePreserving,

    /// <summary>Akima's weighted mean of the slopes on either side, which ignores a lone kink. May overshoot, less than the others.</summary>
    Akima,

    /// <summary>Continuous curvature, zero across the border (natural spline): the smoothest surface through the nodes. Error of fourth order inside, second at the border.</summary>
    NaturalSpline,
}
