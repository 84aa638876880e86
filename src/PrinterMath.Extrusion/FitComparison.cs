using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>The flow that a fit asks for against the flow of a measured wall.</summary>
/// <remarks>
/// Where they conflict, the wall is right about the flow: the fit shows a boundary offset, shrinkage, or pressure lag that fattens corners, and changing the flow would hide it
/// under thin or fat walls. Common practice, no source, for the list of causes.
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FitComparison
{
    private readonly Finding? _finding;

    private FitComparison(UncertaintyBudget<double> difference, Verdict<double>? verdict, Finding? finding)
    {
        Difference = difference;
        Verdict = verdict;
        _finding = finding;
    }

    /// <summary>Flow of the fit minus flow of the wall, a ratio, with its budget: negative when the pieces are tight at the right flow.</summary>
    public UncertaintyBudget<double> Difference { get; }

    /// <summary>The difference against the limit; null when no limit was given.</summary>
    public Verdict<double>? Verdict { get; }

    /// <summary>The conflict, when zero lies outside the 95 % interval of the difference, see <see cref="ExtrusionFindings.FitConflictsWithWall"/>.</summary>
    public IReadOnlyList<Finding> Findings => _finding is null ? [] : [_finding];

    /// <summary>Boundary offset of each face that would explain the difference, −difference·A/(2h): positive when faces lie too far out of the plastic they bound.</summary>
    /// <param name="bead">The bead of the outermost wall at the flow of the wall.</param>
    /// <returns>The offset, for both pieces printed alike.</returns>
    /// <remarks>One unit of relative flow moves the edge of a bead by half its change of width, A/(2h). Compare with <see cref="DimensionalFit.OuterOffset"/> and <see cref="DimensionalFit.InnerOffset"/>.</remarks>
    /// <exception cref="InvalidOperationException">The bead is the default.</exception>
    public Measured<Length> EquivalentOffset(Bead bead)
    {
        double slope = FitClearance.EdgeShiftMeters(bead);
        Measured<double> difference = Difference.Result;
        return Measured<Length>.FromSi(-slope * difference.SiValue, slope * difference.SiStandardUncertainty, difference.DegreesOfFreedom);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The difference and the conflict, if there is one.</returns>
    public override string ToString() => $"fit minus wall {Difference.Result}{(_finding is null ? string.Empty : $"; {_finding}")}";

    internal static FitComparison Of(Measured<double> fit, Measured<double> wall, Tolerance<double>? limit)
    {
        Guard.Positive(wall.SiValue, "flowFromWall");
        UncertaintyBudget<double> difference = Propagation.FirstOrder<double>(
            fit.SiValue - wall.SiValue, [BudgetInput.Of("flow of the fit", fit), BudgetInput.Of("flow of the wall", wall)], [1, -1]);
        double value = difference.Result.SiValue;
        Finding? finding = difference.Result.Interval().Contains(0) ? null : new Finding(
            ExtrusionFindings.FitConflictsWithWall,
            FindingSeverity.Caution,
            string.Create(CultureInfo.InvariantCulture, $"The fit asks for {Math.Abs(value) * 100:0.0} % {(value < 0 ? "less" : "more")} flow than the wall: leave the flow, and look for boundary offset, shrinkage or pressure lag."),
            new FindingNumber("difference", value, "1"),
            new FindingNumber("standardUncertainty", difference.Result.SiStandardUncertainty, "1"));
        return new FitComparison(difference, limit?.Judge(difference), finding);
    }
}
