namespace PrinterMath.Tramming;

/// <summary>What was found at one height: contact or none. Light seen, or a gauge that slides freely, is no contact.</summary>
public enum ContactOutcome
{
    /// <summary>No contact.</summary>
    Clear,

    /// <summary>Contact.</summary>
    Touching,
}
