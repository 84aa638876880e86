namespace PrinterMath.Resonance;

/// <summary>How values between samples are found.</summary>
public enum Interpolation
{
    /// <summary>A straight line between the two neighbours.</summary>
    Linear,

    /// <summary>The cubic through the four nearest samples; across a gap still a straight line.</summary>
    Cubic,
}
