namespace PrinterMath.Resonance;

/// <summary>Codes of the findings about transmissibilities.</summary>
public static class TransmissibilityFindings
{
    /// <summary>Blocking: ratios were given without coherence, so that their random errors are not known.</summary>
    public const string NoCoherence = "transmissibility.no-coherence";
}
