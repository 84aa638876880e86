using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;

namespace PrinterMath.Extrusion;

/// <summary>Several estimates of the flow combined by inverse variance, tested for consistency, and applied to the present flow.</summary>
/// <remarks>
/// <para>x = Σ xᵢ/uᵢ² / Σ 1/uᵢ²; χ² = Σ (xᵢ − x)²/uᵢ² with N − 1 degrees of freedom; Birge ratio R = √(χ²/(N − 1)). When χ² passes its quantile the estimates are
/// inconsistent: a finding says so, and u is multiplied by R. The estimates count as independent: two walls measured with one caliper share its error, so join
/// their readings first or state the larger uncertainty for both.
/// Source: Birge 1932, Physical Review 40, 207 to 227 (from memory); Bodnar, Elster 2014, Metrologia 51, 516 to 521 (from memory).</para>
/// <para>Flow is set by wall or mass, never by a fit: see <see cref="FitSeries.CompareWith"/>.</para>
/// </remarks>
/// <example><code>
/// FlowCorrection flow = FlowCorrection.Combine(presentFlow: 0.97, [wall, part], new FlowCorrectionOptions { Limit = Tolerance.Around(1.0, 0.01) });
/// Measured&lt;double&gt; next = flow.NewFlow;
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FlowCorrection
{
    private readonly ReadOnlyCollection<Finding> _findings;

    private FlowCorrection(double present, Measured<double> ratio, double? chiSquare, double? birge, Verdict<double>? verdict, List<Finding> findings)
    {
        PresentFlow = present;
        Ratio = ratio;
        ChiSquare = chiSquare;
        BirgeRatio = birge;
        Verdict = verdict;
        _findings = findings.AsReadOnly();
    }

    /// <summary>The flow the parts were printed at, a ratio.</summary>
    public double PresentFlow { get; }

    /// <summary>Factor on the present flow.</summary>
    public Measured<double> Ratio { get; }

    /// <summary>The flow to set, present flow times factor, a ratio.</summary>
    public Measured<double> NewFlow =>
        Measured<double>.FromSi(PresentFlow * Ratio.SiValue, PresentFlow * Ratio.SiStandardUncertainty, Ratio.DegreesOfFreedom);

    /// <summary>χ² of the estimates about their mean, with one degree of freedom less than there are estimates; null for a single one.</summary>
    public double? ChiSquare { get; }

    /// <summary>Birge ratio R: near 1 when scatter and uncertainties agree; null for a single estimate.</summary>
    public double? BirgeRatio { get; }

    /// <summary>The factor against the limit; null when no limit was given.</summary>
    public Verdict<double>? Verdict { get; }

    /// <summary>What was noticed, those of the estimates included, see <see cref="ExtrusionFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Combines estimates.</summary>
    /// <param name="presentFlow">Flow the parts were printed at, a ratio greater than zero; the same for all of them.</param>
    /// <param name="estimates">At least one estimate with an answer, names unique, each with an uncertainty.</param>
    /// <param name="options">Limit and significance; null for the defaults.</param>
    /// <returns>The correction.</returns>
    /// <exception cref="ArgumentException">A name stands twice, or an estimate has no uncertainty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No estimates, a flow that is not positive, or an option out of range.</exception>
    /// <exception cref="IndeterminateException">An estimate holds no answer.</exception>
    public static FlowCorrection Combine(double presentFlow, IReadOnlyList<FlowEstimate> estimates, FlowCorrectionOptions? options = null)
    {
        options ??= new FlowCorrectionOptions();
        Guard.Positive(presentFlow);
        Guard.AtLeast(Guard.NotNull(estimates).Count, 1, nameof(estimates));
        Guard.StrictlyBetween(options.Significance, 0, 0.5);
        List<Finding> findings = [.. estimates.SelectMany(estimate => estimate.Findings)];
        if (estimates.Count == 1)
        {
            UncertaintyBudget<double> only = estimates[0].Ratio;
            return new FlowCorrection(presentFlow, only.Result, null, null, options.Limit?.Judge(only), findings);
        }

        double[] weights = [.. estimates.Select(Weight)];
        double sum = weights.Sum(), mean = 0, chiSquare = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            weights[i] /= sum;
            mean += weights[i] * estimates[i].Ratio.Result.SiValue;
        }

        BudgetInput[] inputs = [.. estimates.Select(estimate => BudgetInput.Of(estimate.Name, estimate.Ratio.Result))];
        UncertaintyBudget<double> budget = Propagation.FirstOrder<double>(mean, inputs, weights);
        foreach (BudgetInput input in inputs)
        {
            double deviation = (input.SiValue - mean) / input.SiStandardUncertainty;
            chiSquare += deviation * deviation;
        }

        int freedom = inputs.Length - 1;
        double birge = Math.Sqrt(chiSquare / freedom);
        double limit = ChiSquared.InvCDF(freedom, 1 - options.Significance);
        if (chiSquare <= limit)
        {
            return new FlowCorrection(presentFlow, budget.Result, chiSquare, birge, options.Limit?.Judge(budget), findings);
        }

        findings.Add(new Finding(
            ExtrusionFindings.FlowInconsistent,
            FindingSeverity.Caution,
            string.Create(CultureInfo.InvariantCulture, $"The {inputs.Length} estimates scatter {birge:G2} times as much as their uncertainties say: look for a bias, such as crests, density or a wrong layer height."),
            new FindingNumber("chiSquare", chiSquare, "1"),
            new FindingNumber("chiSquareLimit", limit, "1"),
            new FindingNumber("birgeRatio", birge, "1")));
        var enlarged = Measured<double>.FromSi(mean, birge * budget.Result.SiStandardUncertainty, freedom);
        return new FlowCorrection(presentFlow, enlarged, chiSquare, birge, options.Limit?.Judge(enlarged), findings);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Factor and new flow.</returns>
    public override string ToString() => $"flow x {Ratio} = {NewFlow}";

    private static double Weight(FlowEstimate estimate)
    {
        double u = estimate.Ratio.Result.SiStandardUncertainty;
        return u > 0 ? 1 / (u * u) : throw new ArgumentException($"The estimate '{estimate.Name}' has no uncertainty; it would outweigh all others.", nameof(estimate));
    }
}
