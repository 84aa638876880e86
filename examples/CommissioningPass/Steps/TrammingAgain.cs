using CommissioningPass.Inputs;
using CommissioningPass.Pictures;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using PrinterMath.Tramming;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>The bed probed again: how far it came, what each screw really does, what to turn now, and why it does not come level, if it does not.</summary>
internal static class TrammingAgain
{
    /// <summary>What the later passes show, below the first; what there is to do comes from the last alone.</summary>
    internal static PassStep Add(PassStep first, TrammingSequence passes, IReadOnlyList<BedScrew> screws, Limits limits)
    {
        (string, Finding)[] findings = [.. first.Findings, .. passes.Findings.Select(finding => (LaterPasses.File, finding))];
        if (!passes.IsDeterminate)
        {
            return first with { Findings = findings, ToDo = [], LeaveAlone = [], WouldAdd = [] };
        }

        string label = FormattableString.Invariant($"Pass {passes.Passes.Count}: ");
        Verdict<Length> now = passes.Judge(limits.FirstLayerSpread);
        SupportMark[] supports = passes.TryGetNextTurns(out IReadOnlyList<ScrewTurn> turns) ? [.. turns.Select((turn, i) => TrammingStep.Support(turn, screws[i], now))] : [];
        return first with
        {
            Entries =
            [
                .. first.Entries,
                PassEntry.Judged("tramming.now.height_spread", label + "spread", now, whatToDo: TrammingStep.Advice(now)),
                .. Convergence(passes),
                .. passes.Responses.Select(response => PassEntry.Of(Name(response.Screw.Name) + ".lead", $"{response.Screw.Name}: lead", response.EffectiveLead, "mm")),
                .. Turns(turns, supports),
                .. supports.Length == 0 ? Array.Empty<PassEntry>() : [Predicted(passes, limits)],
            ],
            Findings = findings,
            Remarks = [.. first.Remarks, .. Forecast(passes, limits)],
            ToDo = TrammingStep.ToDo(supports),
            LeaveAlone = TrammingStep.LeaveAlone(supports),
            WouldAdd = [],
            Pictures = supports.Length == 0 ? [] : [TrammingStep.Picture(supports, passes.Passes[^1].Points)],
        };
    }

    private static IEnumerable<PassEntry> Convergence(TrammingSequence passes)
    {
        if (passes.TryGetConvergenceFactor(out Measured<double> factor))
        {
            yield return PassEntry.Of("tramming.now.convergence", "Tilt left", factor, "%", "share of the tilt before");
        }
    }

    private static IEnumerable<PassEntry> Turns(IReadOnlyList<ScrewTurn> turns, SupportMark[] supports)
    {
        for (int i = 0; i < turns.Count; i++)
        {
            string seen = $"{supports[i].Sense} {supports[i].From}, {(supports[i].Raises ? "raises" : "lowers")}";
            yield return PassEntry.Of(Name(turns[i].Name) + ".height_change", $"{turns[i].Name}: now raise", turns[i].HeightChange);
            yield return PassEntry.Of(Name(turns[i].Name) + ".rotation", $"{turns[i].Name}: now turn", turns[i].Rotation, whatToDo: supports[i].Leave ? "leave it" : seen);
        }
    }

    private static PassEntry Predicted(TrammingSequence passes, Limits limits) => PassEntry.Judged(
        "tramming.now.predicted_spread", "Spread after that", limits.FirstLayerSpread.Judge(passes.PredictedSpread));

    private static IEnumerable<string> Forecast(TrammingSequence passes, Limits limits)
    {
        if (limits.FirstLayerSpread.Upper is { } most && passes.TryGetNextTurns(out _))
        {
            yield return $"Rounds of turning still needed for the accepted spread: {passes.Forecast(most)}.";
        }

        yield return "What a turn moves is learned from what was turned and what moved, beside the thread's pitch with 5 % and a hand that sets a turn to 3 degrees.";
    }

    private static string Name(string screw) => "tramming.now.screw." + screw.Replace(' ', '_');
}
