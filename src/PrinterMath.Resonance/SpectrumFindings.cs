namespace PrinterMath.Resonance;

/// <summary>Codes of the findings about spectra of two signals and frequency responses.</summary>
public static class SpectrumFindings
{
    /// <summary>Blocking: the signals hold one segment only, whose coherence is one whatever the signals are.</summary>
    public const string OneSegment = "spectrum.one-segment";

    /// <summary>Blocking: values were given without coherence, so that their random errors are not known.</summary>
    public const string NoCoherence = "spectrum.no-coherence";
}
