namespace PrinterMath.Resonance;

/// <summary>What is taken out of each segment before its spectrum.</summary>
public enum Detrending
{
    /// <summary>The mean.</summary>
    Mean,

    /// <summary>Nothing.</summary>
    None,

    /// <summary>The straight line of least squares.</summary>
    Line,
}
