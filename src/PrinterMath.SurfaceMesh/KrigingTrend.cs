namespace PrinterMath.SurfaceMesh;

/// <summary>What a surface does at large, beside the part that varies from place to place.</summary>
public enum KrigingTrend
{
    /// <summary>A level of its own, not known: ordinary kriging.</summary>
    Level,

    /// <summary>A plane, not known: universal kriging. A bed that is not trammed is one.</summary>
    Plane,
}
