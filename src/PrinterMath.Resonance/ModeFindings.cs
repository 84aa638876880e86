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

    /// <summary>Caution: a resonance is narrower than a line of the spectrum; longer segments are needed to tell its damping.</summary>
    public const string Unresolved = "mode.unresolved";

    /// <summary>Caution: the spectrum departs from the shape fitted by more than its scatter; uncertainties were widened.</summary>
    public const string ShapeMisfit = "mode.shape-misfit";

    /// <summary>Note: one mode more would have been found if more had been allowed.</summary>
    public const string MoreToFind = "mode.more-to-find";
}
