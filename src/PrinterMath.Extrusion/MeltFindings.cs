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
}
