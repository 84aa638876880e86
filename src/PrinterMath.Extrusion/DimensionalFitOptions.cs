namespace PrinterMath.Extrusion;

/// <summary>How dimensions are fitted.</summary>
public sealed record DimensionalFitOptions
{
    /// <summary>Relative standard uncertainty of the instrument's scale, the same for all features: it goes into the scale of the axis in full.</summary>
    /// <value>0: included in the uncertainty of each length. Zero or more.</value>
    public double InstrumentScaleUncertainty { get; init; }

    /// <summary>Probability that features which agree with the model are said to scatter too much.</summary>
    /// <value>0.05. Greater than 0 and less than 0.5.</value>
    public double Significance { get; init; } = 0.05;
}
