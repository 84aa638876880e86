namespace PrinterMath.Extrusion;

/// <summary>What stops a flow from being larger.</summary>
public enum LimitKind
{
    /// <summary>The centre of the filament does not get soft in time.</summary>
    Melt,

    /// <summary>The heater cannot give the heat.</summary>
    HeaterPower,

    /// <summary>The motor cannot give the torque.</summary>
    Torque,

    /// <summary>The driving wheel slips or grinds.</summary>
    Grip,

    /// <summary>The filament bends out between wheel and guide.</summary>
    Buckling,

    /// <summary>The filament is crushed.</summary>
    Yield,

    /// <summary>A force that was stated as the largest.</summary>
    StatedForce,
}
