using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace PrinterMath.Measurement;

/// <summary>A result with the account of where its uncertainty comes from, the largest share first.</summary>
/// <typeparam name="T">The quantity of the result.</typeparam>
/// <remarks>Made by <see cref="Propagation"/>. Source: JCGM 100:2008 (GUM), clause 5 and Annex H.</remarks>
/// <example><code>
/// UncertaintyBudget&lt;Force&gt; budget = span.TensionBudget(heard);
/// Console.WriteLine($"{budget.Result}, mostly from {budget.Largest.Input.Name}");
/// </code></example>
[DebuggerDisplay("{Result,nq}")]
public sealed class UncertaintyBudget<T>
    where T : struct
{
    private readonly BudgetLine[] _lines;

    internal UncertaintyBudget(Measured<T> result, BudgetLine[] lines)
    {
        Result = result;
        _lines = [.. lines.OrderByDescending(line => Math.Abs(line.VarianceShare))];
        Lines = Array.AsReadOnly(_lines);
    }

    /// <summary>The result: value, combined standard uncertainty, effective degrees of freedom.</summary>
    public Measured<T> Result { get; }

    /// <summary>The inputs, ranked by their share of the variance.</summary>
    public IReadOnlyList<BudgetLine> Lines { get; }

    /// <summary>The input that adds most: the one to improve first.</summary>
    public BudgetLine Largest => _lines[0];

    /// <summary>Invariant text: the result, then a line for each input.</summary>
    /// <returns>The text.</returns>
    public override string ToString()
    {
        var text = new StringBuilder(Result.ToString());
        foreach (BudgetLine line in _lines)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n  {line.VarianceShare * 100,5:0.0} %  {line.Input.Name}");
        }

        return text.ToString();
    }
}
