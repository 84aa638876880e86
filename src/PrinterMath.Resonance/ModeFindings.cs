namespace PrinterMath.Resonance;

/// <summary>Codes of the findings about modes.</summary>
public static class ModeFindings
{
    /// <summary>Blocking: nothing rises from the noise far enough to be a mode.</summary>
    public const string None = "mode.none";

    /// <summary>Blocking: the record is too short to hold a mode.</summary>
    public const string TooShort = "mode.too-short";

    /// <summary>Note: a steady tone (mains, fan, motor), which does not decay, was found and set aside.</summary>
    public const string SteadyTone = "mode.steady-tone";

    /// <summary>Caution: a mode's damping ratio is known to no better than half of itself.</summary>
    public const string DampingUnknown = "mode.damping-unknown";
}
