namespace PrinterMath.Tramming;

/// <summary>Which way to turn a screw, as seen from where the hand is.</summary>
public enum TurnSense
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>Clockwise as seen from the hand.</summary>
    Clockwise,

    /// <summary>Counterclockwise as seen from the hand.</summary>
    Counterclockwise,
}
