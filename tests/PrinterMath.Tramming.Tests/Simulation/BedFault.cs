namespace PrinterMath.Tramming.Tests.Simulation;

public enum BedFault
{
    None,

    /// <summary>The plate twists in proportion to all that was turned so far.</summary>
    Flex,

    /// <summary>One corner moves once, in an interval after the first.</summary>
    LooseCorner,

    /// <summary>Every screw has play.</summary>
    Backlash,

    /// <summary>All heights grow with time.</summary>
    CommonDrift,

    /// <summary>The height at one screw grows with time.</summary>
    CornerDrift,

    /// <summary>One screw has another lead than stated.</summary>
    WrongLead,
}
