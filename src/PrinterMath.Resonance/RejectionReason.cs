namespace PrinterMath.Resonance;

/// <summary>Why a rise of the spectrum is not reported as a mode.</summary>
public enum RejectionReason
{
    /// <summary>Noise alone would show one as strong more often than the chosen probability.</summary>
    NotSignificant,

    /// <summary>Its half-power bandwidth is below one line of the spectrum, or the lines of a response leave its damping or size open: closer lines are needed.</summary>
    Unresolved,

    /// <summary>Its damping ratio would exceed 0.35: a slope or a hump, not a resonance.</summary>
    TooWide,

    /// <summary>It lies at the edge of the band looked at.</summary>
    AtEdge,

    /// <summary>It does not stay where it is when one pole more is fitted: a shape that the model needed there, not a mode.</summary>
    Unstable,
}
