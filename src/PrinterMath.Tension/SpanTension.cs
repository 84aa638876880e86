using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Tension of a span from its frequency, with the budget that says which input to improve.</summary>
/// <remarks>Not to be confused with <see cref="IdealString.Tension"/>, which is the bare formula.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SpanTension
{
    private const double LowestPlausible = 0.5;
    private const double HighestPlausible = 1000;
    private const double LargestBendingShare = 0.2;
    private readonly UncertaintyBudget<Force>? _budget;
    private readonly ReadOnlyCollection<Finding> _findings;

    private SpanTension(UncertaintyBudget<Force>? budget, params Finding[] findings)
    {
        _budget = budget;
        _findings = Array.AsReadOnly(findings);
    }

    /// <summary>What was noticed, see <see cref="TensionFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>The tension T with its standard uncertainty.</summary>
    /// <exception cref="IndeterminateException">The frequency is too low for the span's rigidity.</exception>
    public Measured<Force> Value => Budget.Result;

    /// <summary>Where the uncertainty comes from, largest first.</summary>
    /// <exception cref="IndeterminateException">The frequency is too low for the span's rigidity.</exception>
    public UncertaintyBudget<Force> Budget => _budget ?? throw new IndeterminateException(_findings[0]);

    /// <summary>The tension, if the data hold one.</summary>
    /// <param name="tension">The tension, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetValue(out Measured<Force> tension)
    {
        tension = _budget?.Result ?? default;
        return _budget is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The tension, or the finding that stands in its place.</returns>
    public override string ToString() => _budget?.Result.ToString() ?? _findings[0].ToString();

    internal static SpanTension From(UncertaintyBudget<Force> budget, double idealNewtons)
    {
        double newtons = budget.Result.SiValue;
        double bendingShare = 1 - (newtons / idealNewtons);
        FindingNumber[] numbers = [new("tension", newtons, "N"), new("bendingShare", bendingShare, "1")];
        if (newtons <= 0)
        {
            return new SpanTension(null, new Finding(
                TensionFindings.Slack,
                FindingSeverity.Blocking,
                "The span sounds lower than its bending stiffness alone would make it: check length, linear density and which partial was heard.",
                numbers));
        }

        if (newtons is < LowestPlausible or > HighestPlausible)
        {
            return new SpanTension(budget, new Finding(
                TensionFindings.Implausible,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"A tension of {newtons:G3} N is far from any belt of such a machine: check the units of length and linear density."),
                numbers));
        }

        return bendingShare > LargestBendingShare
            ? new SpanTension(budget, new Finding(
                TensionFindings.StiffnessDominates,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"Bending makes up {bendingShare * 100:0} % of what the span's frequency shows: pluck a longer span."),
                numbers))
            : new SpanTension(budget);
    }
}
