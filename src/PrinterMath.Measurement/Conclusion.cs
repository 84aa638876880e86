namespace PrinterMath.Measurement;

/// <summary>What a measured value, with its uncertainty, says about a limit.</summary>
/// <remarks>Source: JCGM 106:2012, 8.3.</remarks>
public enum Conclusion
{
    /// <summary>Neither can be said at the agreed risk; see what limits it.</summary>
    Undecided,

    /// <summary>Inside the limits, with at most the agreed risk of being wrong.</summary>
    Within,

    /// <summary>Outside the limits, with at most the agreed risk of being wrong.</summary>
    Outside,
}
