namespace PrinterMath.Tramming;

/// <summary>Which way a screw thread winds.</summary>
public enum Handedness
{
    /// <summary>Right-hand: turned clockwise, the turned part moves away from the hand. Nearly every screw.</summary>
    Right,

    /// <summary>Left-hand: turned clockwise, the turned part moves towards the hand.</summary>
    Left,
}
