namespace PrinterMath.SurfaceMesh;

/// <summary>Whether a surface needs a compensating map.</summary>
public enum MapDecision
{
    /// <summary>Probing has not decided it; the verdict says what limits it.</summary>
    Undecided,

    /// <summary>What tramming leaves is within the limit.</summary>
    NotNeeded,

    /// <summary>What tramming leaves is outside the limit.</summary>
    Needed,
}
