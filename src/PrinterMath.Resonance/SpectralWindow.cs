namespace PrinterMath.Resonance;

/// <summary>Shape by which a segment is faded in and out before its spectrum is taken; always the periodic (DFT-even) form.</summary>
/// <remarks>Source: F. J. Harris, 1978, "On the use of windows for harmonic analysis with the discrete Fourier transform", Proc. IEEE 66(1), 51-83.</remarks>
public enum SpectralWindow
{
    /// <summary>½ − ½·cos: the usual choice.</summary>
    Hann,

    /// <summary>None: every sample counts alike.</summary>
    Rectangular,

    /// <summary>0.54 − 0.46·cos.</summary>
    Hamming,

    /// <summary>0.42 − 0.5·cos + 0.08·cos 2.</summary>
    Blackman,

    /// <summary>Four terms, side lobes at −92 dB.</summary>
    BlackmanHarris,
}
