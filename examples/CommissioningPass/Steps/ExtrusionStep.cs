using CommissioningPass.Inputs;
using CommissioningPass.Pictures;
using CommissioningPass.Report;
using PrinterMath.Extrusion;

namespace CommissioningPass.Steps;

/// <summary>Fifth link: the flow from a measured wall, and what a fit says beside it.</summary>
internal static class ExtrusionStep
{
    private static readonly string[] Cautions =
    [
        "Hot end and bed burn: let parts cool before you take them off or measure near the nozzle.",
        "Molten plastic gives off fumes: ventilate. Join pieces by hand, without force.",
    ];

    internal static PassStep Take(WallReadings? wall, FitSeries? fit)
    {
        FlowCorrection? correction = wall is null ? null : Correct(wall);
        FitEstimate? estimate = null;
        fit?.TryGetEstimate(out estimate);
        FitComparison? comparison = correction is not null && estimate is not null ? fit!.CompareWith(correction.NewFlow) : null;
        return new PassStep(
            "extrusion",
            "5. Extrusion",
            [.. Wall(wall, correction), .. Fit(estimate, comparison)],
            [
                .. (correction?.Findings ?? []).Select(finding => (WallReadings.File, finding)),
                .. (fit?.Findings ?? []).Concat(comparison?.Findings ?? []).Select(finding => (FitReadings.File, finding)),
            ],
            [.. Remarks(fit, estimate)],
            Cautions)
        {
            Settings = fit?.State == FitSeriesState.Running ? [new PassSetting("extrusion.next_flow", fit.NextFlow, "1")] : [],
            ToDo = [.. NewFlow(correction), .. NextPair(fit)],
            LeaveAlone = correction is not null && Leave(correction) ? [FormattableString.Invariant($"Leave the flow at {correction.PresentFlow:0.###}.")] : [],
            WouldAdd =
            [
                .. wall is null ? new[] { $"{WallReadings.File}, caliper readings of a wall, would add the flow to set." } : [],
                .. fit is null ? new[] { $"{FitReadings.File}, a series of fits, would add a check by parts that go together." } : [],
            ],
            Pictures = fit is null ? [] : [new FitData(fit, estimate, correction?.NewFlow)],
        };
    }

    private static FlowCorrection Correct(WallReadings wall)
    {
        FlowEstimate estimate = FlowEstimate.FromWall(wall.Target, wall.Thickness);
        return estimate.TryGetRatio(out _)
            ? FlowCorrection.Combine(wall.Flow, [estimate])
            : throw new InputException(WallReadings.File, null, estimate.Findings[0].Message);
    }

    private static bool Leave(FlowCorrection correction) => correction.Ratio.Interval().Contains(1);

    private static IEnumerable<string> NewFlow(FlowCorrection? correction) =>
        correction is null || Leave(correction) ? [] : [$"Set the flow to {correction.NewFlow.ToString("V")}."];

    private static IEnumerable<string> NextPair(FitSeries? fit) =>
        fit?.State == FitSeriesState.Running ? [FormattableString.Invariant($"Print the next pair of the fit at a flow of {fit.NextFlow:0.000}.")] : [];

    private static IEnumerable<PassEntry> Wall(WallReadings? wall, FlowCorrection? correction)
    {
        if (wall is not null && correction is not null)
        {
            yield return PassEntry.Of("extrusion.wall", "Wall of one bead", wall.Thickness);
            yield return PassEntry.Of("extrusion.flow_factor", "Flow times", correction.Ratio);
            yield return PassEntry.Of("extrusion.flow", "Flow by the wall", correction.NewFlow, whatToDo: Leave(correction) ? "leave it" : "set this flow");
        }
    }

    private static IEnumerable<PassEntry> Fit(FitEstimate? estimate, FitComparison? comparison)
    {
        if (estimate is not null)
        {
            yield return PassEntry.Of("extrusion.fit_flow", "Flow by the fit", estimate.Flow, whatToDo: "compare, do not set").With(estimate.Lower, estimate.Upper);
        }

        if (comparison is not null)
        {
            yield return PassEntry.Of("extrusion.fit_minus_wall", "Fit minus wall", comparison.Difference.Result);
        }
    }

    private static IEnumerable<string> Remarks(FitSeries? fit, FitEstimate? estimate)
    {
        yield return "The wall sets the flow; the fit only shows whether edges lie where they should.";
        if (fit is null)
        {
            yield break;
        }

        yield return fit.State switch
        {
            FitSeriesState.Running => FormattableString.Invariant($"{fit.Trials.Count} trials of the fit so far; print the next pair at a flow of {fit.NextFlow:0.000}."),
            FitSeriesState.WidthReached => FormattableString.Invariant($"{fit.Trials.Count} trials of the fit are enough."),
            FitSeriesState.TrialsUsedUp => FormattableString.Invariant($"The fit has had its {fit.Trials.Count} trials."),
            _ => "The fit lies outside fit_flow in limits.csv: widen it and begin again.",
        };
        if (estimate is not null)
        {
            yield return FormattableString.Invariant($"Half of the pairs fit at a flow from {estimate.Lower:0.0000} to {estimate.Upper:0.0000}, with 95 %.");
        }
    }
}
