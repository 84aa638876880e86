using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>One line of an uncertainty budget: an input, how strongly the result follows it, and what it adds.</summary>
/// <remarks>Source: JCGM 100:2008 (GUM), 5.1.2 to 5.2.2, and the tables of its Annex H.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class BudgetLine
{
    internal BudgetLine(BudgetInput input, double sensitivity, double share)
    {
        Input = input;
        SiSensitivity = sensitivity;
        VarianceShare = share;
    }

    /// <summary>The input.</summary>
    public BudgetInput Input { get; }

    /// <summary>Sensitivity coefficient c = ∂f/∂x at the estimates, in SI units of the result per SI unit of the input.</summary>
    public double SiSensitivity { get; }

    /// <summary>|c|·u(x), what this input alone would give, in the SI unit of the result.</summary>
    public double SiContribution => Math.Abs(SiSensitivity) * Input.SiStandardUncertainty;

    /// <summary>
    /// Share of the result's variance, a ratio; the shares of a budget add up to 1. With correlated inputs a share may be negative: the input
    /// then cancels part of another's.
    /// </summary>
    public double VarianceShare { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>Name, share and contribution.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Input.Name}: {VarianceShare * 100:0.#} % ({SiContribution:G3})");
}
