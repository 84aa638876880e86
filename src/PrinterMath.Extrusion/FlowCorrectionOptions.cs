using PrinterMath.Measurement;

namespace PrinterMath.Extrusion;

/// <summary>How estimates of the flow are combined and judged.</summary>
public sealed record FlowCorrectionOptions
{
    /// <summary>Limits of the factor on the present flow within which the flow is left as it is.</summary>
    /// <value>Null: no limit, so no verdict. Usually around 1.</value>
    public Tolerance<double>? Limit { get; init; }

    /// <summary>Probability that estimates which agree are called inconsistent.</summary>
    /// <value>0.05. Greater than 0 and less than 0.5.</value>
    public double Significance { get; init; } = 0.05;
}
