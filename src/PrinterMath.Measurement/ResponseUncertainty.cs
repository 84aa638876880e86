namespace PrinterMath.Measurement;

/// <summary>What the standard uncertainties given to a least-squares fit mean.</summary>
public enum ResponseUncertainty
{
    /// <summary>
    /// Only their ratios count: readings are weighted by 1/u², and the scatter of the residuals sets the scale of the covariance.
    /// </summary>
    Relative,

    /// <summary>
    /// They are known in the unit of the response: the covariance is not scaled by the scatter, and χ² tells whether model and
    /// uncertainties agree with the readings.
    /// </summary>
    Absolute,
}
