namespace PrinterMath.Extrusion;

/// <summary>Codes of the findings about melt, hot end, drive, flow ceiling, lag and heater.</summary>
public static class MeltFindings
{
    /// <summary>Caution: the viscosity is used at a temperature at which its constants were not measured.</summary>
    public const string TemperatureOutsideRange = "melt.temperature-outside-range";

    /// <summary>Caution: the viscosity is used at a shear rate at which its constants were not measured.</summary>
    public const string ShearRateOutsideRange = "melt.shear-rate-outside-range";

    /// <summary>Caution: a taper is so blunt that its flow is no longer that of a slender channel; the pressure is a lower bound.</summary>
    public const string BluntTaper = "melt.blunt-taper";

    /// <summary>Blocking: no temperature up to 50 K above the measured range makes the pressure as low as wanted.</summary>
    public const string PressureTooLow = "melt.pressure-too-low";

    /// <summary>Blocking: down to 50 K below the measured range the flow takes less than the pressure.</summary>
    public const string PressureNeverReached = "melt.pressure-never-reached";

    /// <summary>Caution: no viscosity of the plastic is known, so that forces were not checked.</summary>
    public const string ViscosityUnknown = "melt.viscosity-unknown";

    /// <summary>Blocking: the flow is so large that the centre of the filament stays cold whatever the temperature of the block.</summary>
    public const string CenterStaysCold = "hotend.center-stays-cold";

    /// <summary>Blocking: the block is not surely hotter than where the plastic gets soft.</summary>
    public const string BlockTooCold = "hotend.block-too-cold";

    /// <summary>Note: another limit lies so close to the one that binds that it may bind instead.</summary>
    public const string LimitsClose = "hotend.limits-close";

    /// <summary>Blocking: friction on the way takes all of the force that the drive has.</summary>
    public const string ForceSpent = "drive.force-spent";
}
