using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The lines of a budget as inputs of another, without losing how they are correlated.</summary>
/// <remarks>
/// A budget holds no correlations but each line's share of the variance: a line whose share is not c²u² is correlated with others. Such lines are joined into one input with the
/// variance that they have together and the fewest degrees of freedom among them, just as Welch-Satterthwaite joins them, so value, uncertainty and degrees of freedom stay.
/// </remarks>
internal static class KeptCorrelations
{
    private const double Rounding = 1e-9;

    internal static (List<BudgetInput> Inputs, List<double> Sensitivities) Of(UncertaintyBudget<Force> budget)
    {
        double variance = budget.Result.SiStandardUncertainty * budget.Result.SiStandardUncertainty;
        List<BudgetInput> inputs = [];
        List<double> sensitivities = [];
        List<BudgetInput> joined = [];
        double joint = 0;
        foreach (BudgetLine line in budget.Lines)
        {
            double own = line.SiContribution * line.SiContribution;
            double share = line.VarianceShare * variance;
            if (Math.Abs(own - share) <= Rounding * (own + variance))
            {
                inputs.Add(line.Input);
                sensitivities.Add(line.SiSensitivity);
            }
            else
            {
                joined.Add(line.Input);
                joint += share;
            }
        }

        if (joined.Count > 0)
        {
            inputs.Add(BudgetInput.Of(
                string.Join(" with ", joined.Select(input => input.Name)),
                Measured<Force>.FromSi(budget.Result.SiValue, Math.Sqrt(Math.Max(0, joint)), joined.Min(input => input.DegreesOfFreedom))));
            sensitivities.Add(1);
        }

        return (inputs, sensitivities);
    }
}
