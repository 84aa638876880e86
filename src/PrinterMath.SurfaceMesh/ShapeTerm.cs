namespace PrinterMath.SurfaceMesh;

/// <summary>A term of the surface's shape: a product of Legendre polynomials of ξ and η, which run from −1 to 1 across the rectangle.</summary>
public enum ShapeTerm
{
    /// <summary>1: the mean height over the rectangle.</summary>
    Offset,

    /// <summary>ξ: positive when the surface rises towards larger x.</summary>
    TiltX,

    /// <summary>η: positive when the surface rises towards larger y.</summary>
    TiltY,

    /// <summary>(3ξ² − 1)/2: positive when the left and right borders stand above the middle.</summary>
    BowX,

    /// <summary>ξη: positive when the corners at smallest x and y and at largest x and y stand above the other two.</summary>
    Twist,

    /// <summary>(3η² − 1)/2: positive when the front and rear borders stand above the middle.</summary>
    BowY,
}
