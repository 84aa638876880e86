namespace PrinterMath.Tension;

/// <summary>What a pulley does.</summary>
public enum PulleyKind
{
    /// <summary>Sits on the motor; each belt has one.</summary>
    Motor,

    /// <summary>Runs on a bearing.</summary>
    BearingIdler,

    /// <summary>Does not turn: the belt slides over a pin or a bush.</summary>
    SlidingPin,
}
