namespace PrinterMath.Tramming;

/// <summary>What turning a screw clockwise, as seen from the hand, does to the bed at that screw.</summary>
public enum BedMotion
{
    /// <summary>The bed comes up, towards the nozzle.</summary>
    Raises,

    /// <summary>The bed goes down, away from the nozzle.</summary>
    Lowers,
}
