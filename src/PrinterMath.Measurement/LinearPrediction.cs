using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>The value of a fitted model at one place, with the standard uncertainty of that value: of the mean, not of a new reading.</summary>
/// <remarks>u² = xᵀVx, where V is the covariance of the coefficients, so their correlation is in it.</remarks>
/// <example><code>LinearPrediction correction = fit.Predict([30 - 20]);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class LinearPrediction
{
    private readonly double? _standardUncertainty;
    private readonly Finding? _missing;

    internal LinearPrediction(double value, double? standardUncertainty, double degreesOfFreedom, Finding? missing)
    {
        Value = value;
        _standardUncertainty = standardUncertainty;
        DegreesOfFreedom = degreesOfFreedom;
        _missing = missing;
    }

    /// <summary>The value, in the unit of the response.</summary>
    public double Value { get; }

    /// <summary>Standard uncertainty of <see cref="Value"/>, in the unit of the response, zero or more.</summary>
    /// <exception cref="IndeterminateException">There are as many coefficients as readings and no uncertainties were given.</exception>
    public double StandardUncertainty =>
        _standardUncertainty ?? throw (_missing is null ? new IndeterminateException() : new IndeterminateException(_missing));

    /// <summary>Degrees of freedom of the uncertainty; infinite when the uncertainties of the readings were given as absolute, 0 when there is no uncertainty.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The standard uncertainty, if there is one.</summary>
    /// <param name="standardUncertainty">Standard uncertainty of <see cref="Value"/>; zero when there is none.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetStandardUncertainty(out double standardUncertainty)
    {
        standardUncertainty = _standardUncertainty ?? 0;
        return _standardUncertainty is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Value and standard uncertainty.</returns>
    public override string ToString() => _standardUncertainty is double u
        ? string.Create(CultureInfo.InvariantCulture, $"{Value:G6} ± {u:G2}")
        : string.Create(CultureInfo.InvariantCulture, $"{Value:G6}");
}
