namespace PrinterMath.Resonance;

/// <summary>Where the noise is thought to be when a frequency response is estimated from its input u and output y.</summary>
/// <remarks>
/// Without noise all three agree; |H₁| ≤ |H_v| ≤ |H₂| always, and |H₁|/|H₂| is the coherence.
/// Source: J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 9.3; D. J. Ewins, Modal Testing, 2nd ed. 2000, section 3.7 (both from memory).
/// </remarks>
public enum ResponseEstimator
{
    /// <summary>S_uy/S_uu: no bias from noise in the output; low by S_uu/(S_uu + S_nn) with noise n in the input.</summary>
    H1,

    /// <summary>S_yy/S_yu: no bias from noise in the input; high by 1 + S_nn/S_yy with noise n in the output.</summary>
    H2,

    /// <summary>√(S_yy/S_uu) with the phase of S_uy: between the two, right when both signals are equally noisy for their size.</summary>
    Hv,
}
