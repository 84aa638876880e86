using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>One reading of a least-squares fit, with what tells whether it agrees with the others and how much it decides.</summary>
/// <remarks>
/// The diagnostics that need a spread, or a model that stands without this reading, are null where there is none: when the fit is exact,
/// when too few readings are left, or when <see cref="Leverage"/> is 1 and no other reading checks this one.
/// Source: Cook, Weisberg 1982, Residuals and Influence in Regression, chapters 2 and 3.
/// </remarks>
/// <example><code>foreach (FittedReading r in fit.Readings.Where(r =&gt; Math.Abs(r.StudentizedResidual ?? 0) &gt; 3)) { ... }</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FittedReading
{
    internal FittedReading(double response, double fittedValue, double residual, double leverage)
    {
        Response = response;
        FittedValue = fittedValue;
        Residual = residual;
        Leverage = leverage;
    }

    /// <summary>The reading y, in its own unit.</summary>
    public double Response { get; }

    /// <summary>The model's value ŷ, in the unit of the response.</summary>
    public double FittedValue { get; }

    /// <summary>e = y − ŷ, in the unit of the response; positive when the reading is above the model.</summary>
    public double Residual { get; }

    /// <summary>
    /// h, the diagonal of the hat matrix, a ratio from 0 to 1: how much this reading decides its own fitted value. The leverages sum to
    /// the number of coefficients.
    /// </summary>
    public double Leverage { get; }

    /// <summary>e/(1 − h), the residual against the model fitted without this reading, in the unit of the response.</summary>
    public double? LeaveOneOutResidual { get; init; }

    /// <summary>
    /// Internally studentised residual e/(σ√(1 − h)), a ratio: σ is the residual standard deviation, or the given absolute uncertainty of
    /// the reading.
    /// </summary>
    public double? StandardizedResidual { get; init; }

    /// <summary>
    /// Externally studentised residual e/(s₍ᵢ₎√(1 − h)), a ratio, with s₍ᵢ₎ from the fit without this reading. If the reading belongs to the
    /// others it follows Student's t with one degree of freedom less than the fit.
    /// </summary>
    public double? StudentizedResidual { get; init; }

    /// <summary>Cook's distance D = r²h/(p(1 − h)) with the standardised residual r: how far all coefficients move without this reading, a ratio.</summary>
    public double? CookDistance { get; init; }

    /// <summary>Invariant text.</summary>
    /// <returns>Reading, residual and leverage.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"y = {Response:G6}, e = {Residual:G3}, h = {Leverage:G3}");
}
