namespace PrinterMath.Resonance;

/// <summary>How values between samples are found.</summary>
public enum Interpolation
{
    /// <summary>A straight line between the two neighbours.</summary>
    Linear,

    /// <summary>The cubic through the four nearest samples; across a gap still a straight line.</summary>
    Cubic,

    /// <summary>
    /// The polynomial of seventh degree through the eight nearest samples; up to six to one side at the ends, fewer beside a gap, and across it a straight line. A sine of frequency f at rate r sampled a share τ of a
    /// period off the grid is wrong by about 0.0036·τ·(2πf/r)⁸ of its amplitude, where the cubic's share is 0.083·τ·(2πf/r)⁴: at f = r/8 and τ = 0.05, 3e-5 against 1.6e-3.
    /// </summary>
    Seventh,
}
