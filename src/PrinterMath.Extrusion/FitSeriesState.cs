namespace PrinterMath.Extrusion;

/// <summary>Whether a fit series goes on.</summary>
public enum FitSeriesState
{
    /// <summary>Print the next flow.</summary>
    Running,

    /// <summary>The wanted width is reached.</summary>
    WidthReached,

    /// <summary>The number of trials is used up before the wanted width is reached; the estimate stands with the interval it has.</summary>
    TrialsUsedUp,

    /// <summary>The 50 % flow lies outside the bracket with a probability of at least 95 %.</summary>
    BracketMissed,
}
