namespace PrinterMath.Tension;

/// <summary>On which side of the belt a pulley's centre lies, as seen from above when following the belt from its first end.</summary>
public enum WrapSide
{
    /// <summary>Centre to the left: the belt turns counterclockwise around it.</summary>
    Left,

    /// <summary>Centre to the right: the belt turns clockwise around it.</summary>
    Right,
}
