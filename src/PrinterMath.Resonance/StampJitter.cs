namespace PrinterMath.Resonance;

/// <summary>What the irregularity of time stamps means.</summary>
public enum StampJitter
{
    /// <summary>The samples were really taken at the stamped times: values are interpolated onto the uniform grid.</summary>
    OfSampling,

    /// <summary>The sensor sampled uniformly and the stamps are late by varying amounts: samples keep their values and take their place in the count.</summary>
    OfStamping,
}
