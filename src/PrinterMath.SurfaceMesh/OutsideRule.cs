namespace PrinterMath.SurfaceMesh;

/// <summary>What a height model does outside the rectangle its points span.</summary>
public enum OutsideRule
{
    /// <summary>It throws an <see cref="ArgumentOutOfRangeException"/>.</summary>
    Refuse,

    /// <summary>It takes the nearest place on the border: the height goes on level.</summary>
    Clamp,

    /// <summary>It goes on straight along x and along y with the slope at the border; beyond a corner the twist there goes on as well.</summary>
    ExtendLinearly,
}
