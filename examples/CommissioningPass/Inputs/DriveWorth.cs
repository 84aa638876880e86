namespace CommissioningPass.Inputs;

/// <summary>Whether a number of drive.csv has an uncertainty.</summary>
internal enum DriveWorth
{
    /// <summary>Chosen, counted or drawn: it has none.</summary>
    Exact,

    /// <summary>A maker's or owner's limit: it may have one.</summary>
    Stated,

    /// <summary>Measured: it must have one.</summary>
    Measured,
}
