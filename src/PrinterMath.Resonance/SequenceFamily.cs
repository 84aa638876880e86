namespace PrinterMath.Resonance;

/// <summary>Kind of impulse sequence.</summary>
public enum SequenceFamily
{
    /// <summary>Zero vibration, half a damped period.</summary>
    ZV,

    /// <summary>Zero vibration and derivative, one damped period.</summary>
    ZVD,

    /// <summary>Zero vibration and two derivatives, one and a half damped periods.</summary>
    ZVDD,

    /// <summary>Extra-insensitive, one damped period.</summary>
    EI,
}
