namespace PrinterMath.Resonance;

/// <summary>What a mode's spectrum looks like when the excitation is level across it; D = (ω_n² − ω²)² + (2ζω_nω)².</summary>
/// <remarks>Source: ISO 2041:2018, terms for frequency-response functions (from memory); D. J. Ewins, Modal Testing, 2nd ed. 2000, chapter 2 (from memory).</remarks>
public enum ResponseShape
{
    /// <summary>ω_n⁴/D: motion over commanded motion, what a machine shaken by its own motors gives. The shape of a receptance.</summary>
    Transmissibility,

    /// <summary>ω_n⁴/D: displacement over force.</summary>
    Receptance,

    /// <summary>ω_n²ω²/D: velocity over force.</summary>
    Mobility,

    /// <summary>ω⁴/D: acceleration over force, level far above the mode.</summary>
    Accelerance,
}
