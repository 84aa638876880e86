namespace PrinterMath.Measurement;

/// <summary>Shape of the distribution that describes what is known of an input. Its standard deviation is always the input's standard uncertainty.</summary>
/// <remarks>First-order propagation does not need it; second order and Monte Carlo do. Source: JCGM 101:2008, 6.4 and table 1.</remarks>
public enum InputShape
{
    /// <summary>Normal, or Student's t scaled and shifted when the degrees of freedom are finite. JCGM 101:2008, 6.4.7 and 6.4.9.</summary>
    Normal,

    /// <summary>Rectangular: anywhere within ±√3 u. JCGM 101:2008, 6.4.2.</summary>
    Rectangular,

    /// <summary>Triangular: within ±√6 u, the middle most likely. JCGM 101:2008, 6.4.5.</summary>
    Triangular,

    /// <summary>Arc sine: within ±√2 u, the ends most likely, as for a cycling temperature. JCGM 101:2008, 6.4.6.</summary>
    ArcSine,
}
