namespace WorkshopSimulator;

/// <summary>What the owner asks of the drive and what its makers state, in SI but for the strength, N/mm; the same for every seed.</summary>
public static class DriveJob
{
    /// <summary>Wanted acceleration.</summary>
    public const double Acceleration = 20;

    /// <summary>Wanted speed.</summary>
    public const double Speed = 0.25;

    /// <summary>Radial load of a motor's shaft.</summary>
    public const double ShaftLoad = 90;

    /// <summary>Strength of a belt for each millimetre of width.</summary>
    public const double WorkingStrength = 12;

    /// <summary>Rated current of a motor, RMS; it runs at that.</summary>
    public const double RatedCurrent = 2;

    /// <summary>Supply.</summary>
    public const double Voltage = 24;
}
