using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Extrusion;

/// <summary>Whether the answers of a fit series hold an estimate, and whether they contradict the order that the model assumes.</summary>
internal static class FitChecks
{
    /// <summary>Strong evidence for the reversed order.</summary>
    private const double ReversedEvidence = 20;

    /// <summary>An overlap wider than this part of the bracket is no sharp transition any more.</summary>
    private const double WideOverlap = 0.25;

    internal static IEnumerable<Finding> Find(FitTrial[] trials, FitGrid grid, bool bracketMissed)
    {
        Finding? blocking = Blocking(trials, grid);
        if (blocking is not null)
        {
            yield return blocking;
        }

        if (bracketMissed)
        {
            yield return new Finding(
                ExtrusionFindings.FitBracketMissed,
                FindingSeverity.Caution,
                "The 50 % flow lies outside the bracket: start again with another one, or look for an offset that no flow should make up for.",
                new FindingNumber("trials", trials.Length, "1"));
        }

        if (blocking is null && Overlap(trials) is var overlap && overlap > WideOverlap * (grid.Flow(grid.Candidates - 1) - grid.Flow(0)))
        {
            yield return new Finding(
                ExtrusionFindings.FitOrderContradicted,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"Some pieces fit at a flow {overlap:0.000} above others that do not: the printing or the test does not repeat."),
                new FindingNumber("overlap", overlap, "1"));
        }
    }

    internal static Finding? Blocking(FitTrial[] trials, FitGrid grid)
    {
        double[] fitting = Flows(trials, FitOutcome.Fits), tight = Flows(trials, FitOutcome.DoesNotFit);
        return (fitting.Length, tight.Length) switch
        {
            (0, 0) => new Finding(ExtrusionFindings.FitNoTrials, FindingSeverity.Blocking, "Nothing has been tried yet."),
            (_, 0) => OneSided(ExtrusionFindings.FitAllFit, "All {0} trials fit, up to a flow of {1:0.000}: the 50 % flow lies higher.", trials.Length, fitting.Max()),
            (0, _) => OneSided(ExtrusionFindings.FitNoneFits, "None of {0} trials fits, down to a flow of {1:0.000}: the 50 % flow lies lower.", trials.Length, tight.Min()),
            _ => fitting.Average() > tight.Average() && EvidenceForReversal(trials, grid) > ReversedEvidence
                ? new Finding(
                    ExtrusionFindings.FitOrderReversed,
                    FindingSeverity.Blocking,
                    "The pieces fit at high flow and not at low flow: answers or flows are interchanged, or something other than flow decides.",
                    new FindingNumber("meanFittingFlow", fitting.Average(), "1"),
                    new FindingNumber("meanTightFlow", tight.Average(), "1"))
                : null,
        };
    }

    private static Finding OneSided(string code, string format, int trials, double last) => new(
        code,
        FindingSeverity.Blocking,
        string.Format(CultureInfo.InvariantCulture, format, trials, last),
        new FindingNumber("trials", trials, "1"),
        new FindingNumber("lastFlow", last, "1"));

    /// <summary>Highest fitting minus lowest tight flow.</summary>
    private static double Overlap(FitTrial[] trials) => Flows(trials, FitOutcome.Fits).Max() - Flows(trials, FitOutcome.DoesNotFit).Min();

    /// <summary>Probability of the answers if more flow made the fit looser, over that of the model.</summary>
    private static double EvidenceForReversal(FitTrial[] trials, FitGrid grid)
    {
        double[] ordered = grid.Prior(), reversed = grid.Prior();
        double ratio = 1, likely = 1, unlikely = 1;
        foreach (FitTrial trial in trials)
        {
            bool fits = trial.Outcome == FitOutcome.Fits;
            likely = grid.Update(ordered, 1 / likely, trial.Flow, fits, ordered);
            unlikely = grid.Update(reversed, 1 / unlikely, trial.Flow, !fits, reversed);
            ratio *= unlikely / likely;
        }

        return ratio;
    }

    private static double[] Flows(FitTrial[] trials, FitOutcome outcome) =>
        [.. trials.Where(trial => trial.Outcome == outcome).Select(trial => trial.Flow)];
}
