namespace PrinterMath.SurfaceMesh;

/// <summary>How a height model is made.</summary>
public sealed record HeightModelOptions
{
    /// <summary>What happens outside the probed rectangle.</summary>
    /// <value><see cref="OutsideRule.Refuse"/>.</value>
    public OutsideRule Outside { get; init; } = OutsideRule.Refuse;
}
