namespace PrinterMath.Measurement;

/// <summary>How a linear least-squares fit is made.</summary>
/// <example><code>var options = new LinearFitOptions { Uncertainty = ResponseUncertainty.Absolute };</code></example>
public sealed record LinearFitOptions
{
    /// <summary>Whether a constant is fitted before the columns of the design; it is then coefficient 0.</summary>
    /// <value>True unless stated.</value>
    public bool Intercept { get; init; } = true;

    /// <summary>What given standard uncertainties mean; without given uncertainties all readings weigh the same and this has no effect.</summary>
    /// <value><see cref="ResponseUncertainty.Absolute"/> unless stated.</value>
    public ResponseUncertainty Uncertainty { get; init; } = ResponseUncertainty.Absolute;
}
