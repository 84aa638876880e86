namespace PrinterMath.Tension;

/// <summary>What a pulley or the end of a belt travels with.</summary>
public enum RidesOn
{
    /// <summary>It stands still.</summary>
    Frame,

    /// <summary>It moves along y with the cross-beam.</summary>
    Beam,

    /// <summary>It moves along x and y with the head.</summary>
    Head,
}
