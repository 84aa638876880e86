namespace PrinterMath.Tramming;

/// <summary>How the variance components of a <see cref="GaugeStudy"/> were found.</summary>
public enum GaugeMethod
{
    /// <summary>From mean ranges and the constants of the range distribution; quick, without limits, blind to what operators and places do together.</summary>
    Range,

    /// <summary>From the analysis of variance of the crossed design.</summary>
    Anova,
}
