namespace PrinterMath.Tension;

/// <summary>How far and how exactly a person turns a tensioner.</summary>
public sealed record TensionerOptions
{
    /// <summary>Largest number of turns to make before the next reading.</summary>
    /// <value>0.5 (common practice, no source). Greater than 0, at most 10.</value>
    public double LargestAdjustment { get; init; } = 0.5;

    /// <summary>Standard uncertainty of a turn made by hand, in turns.</summary>
    /// <value>0.02, some 7°. Zero or more, below 0.5.</value>
    public double TurnStandardUncertainty { get; init; } = 0.02;

    internal TensionerOptions Checked()
    {
        Guard.Between(Guard.Positive(LargestAdjustment), 0, 10, nameof(LargestAdjustment));
        Guard.Between(TurnStandardUncertainty, 0, 0.5, nameof(TurnStandardUncertainty));
        return this;
    }
}
