namespace PrinterMath.Tension;

/// <summary>How the ends of a span are held against turning.</summary>
public enum SpanEnds
{
    /// <summary>
    /// Somewhere between pinned and clamped, no place more likely than another: a belt on a pulley or in a belt clamp is neither.
    /// Goes into the budget as a rectangular distribution.
    /// </summary>
    Between,

    /// <summary>Free to turn.</summary>
    Pinned,

    /// <summary>Held so that they cannot turn.</summary>
    Clamped,
}
