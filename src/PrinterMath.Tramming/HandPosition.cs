namespace PrinterMath.Tramming;

/// <summary>Where the hand is that turns a screw; clockwise is as seen from there.</summary>
public enum HandPosition
{
    /// <summary>Below the bed, turning a knob or a nut.</summary>
    BelowBed,

    /// <summary>Above the bed, turning the head of a screw.</summary>
    AboveBed,
}
