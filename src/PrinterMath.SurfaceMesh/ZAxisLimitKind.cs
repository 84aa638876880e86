namespace PrinterMath.SurfaceMesh;

/// <summary>Which limit of the Z axis.</summary>
public enum ZAxisLimitKind
{
    /// <summary><see cref="ZAxisLimits.MaximumSpeed"/>.</summary>
    Speed,

    /// <summary><see cref="ZAxisLimits.MaximumAcceleration"/>.</summary>
    Acceleration,

    /// <summary><see cref="ZAxisLimits.MaximumSpeedStep"/>.</summary>
    SpeedStep,
}
