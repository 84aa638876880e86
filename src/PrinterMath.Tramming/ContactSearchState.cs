namespace PrinterMath.Tramming;

/// <summary>Where a contact search stands.</summary>
public enum ContactSearchState
{
    /// <summary>There is a next height to try.</summary>
    Running,

    /// <summary>The bracket is as narrow as was asked for.</summary>
    Found,

    /// <summary>There was contact where none should be yet: begin again higher up.</summary>
    StartTouches,

    /// <summary>No contact down to the lowest height allowed.</summary>
    NoContact,

    /// <summary>Contact above a height that was found clear, beyond the stated error of a reading.</summary>
    Contradictory,
}
