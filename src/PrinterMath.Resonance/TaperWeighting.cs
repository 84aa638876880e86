namespace PrinterMath.Resonance;

/// <summary>How the spectra of several tapers are averaged.</summary>
public enum TaperWeighting
{
    /// <summary>Each by its share of energy within the band: the same at every frequency.</summary>
    Concentration,

    /// <summary>
    /// At each frequency less of those that would leak more than is there, for spectra of a wide range.
    /// Source: D. J. Thomson, 1982, Proc. IEEE 70(9), 1055-1096, section V (from memory).
    /// </summary>
    Adaptive,
}
