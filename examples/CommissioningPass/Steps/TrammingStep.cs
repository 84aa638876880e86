using CommissioningPass.Inputs;
using CommissioningPass.Pictures;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using PrinterMath.Tramming;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>Second link: how the bed lies to the plane of the nozzle, and which screw to turn.</summary>
internal static class TrammingStep
{
    private static readonly string[] Cautions =
    [
        "Never turn a bed screw with the nozzle in contact: raise the nozzle first.",
        "A hot bed burns. Probe it hot if it prints hot, let it cool or wear gloves to turn.",
        "Keep fingers out of the gap that closes, and every spring compressed.",
    ];

    internal static PassStep Take(IReadOnlyList<ProbePoint> probed, LaterPasses? later, IReadOnlyList<BedScrew> screws, Limits limits)
    {
        BedSupports supports = Supports(screws);
        PassStep first = First(probed, supports, screws, limits, later is null ? "Spread by tilt" : "Pass 1: spread");
        return later is null ? first : TrammingAgain.Add(first, TrammingSequence.Of(supports, [TrammingPass.First(probed), .. later.Passes]), screws, limits);
    }

    internal static SupportMark Support(ScrewTurn turn, BedScrew screw, Verdict<Length> now) => new(
        turn.Name,
        screw.XMillimetres,
        screw.YMillimetres,
        Spelling.Of(turn.Rotation.ToString()),
        turn.Sense == TurnSense.Clockwise ? "clockwise" : "counterclockwise",
        screw.TurnedFromAbove ? "from above" : "from below",
        turn.HeightChange.SiValue > 0,
        now.Conclusion == Conclusion.Within || !turn.WorthTurning);

    internal static IReadOnlyList<string> ToDo(IReadOnlyList<SupportMark> supports) =>
        [.. supports.Where(support => !support.Leave).Select(support => "Turn " + support.Words), .. supports.All(support => support.Leave) ? Array.Empty<string>() : ["Then probe again to see."]];

    internal static IReadOnlyList<string> LeaveAlone(IReadOnlyList<SupportMark> supports) => [.. supports.Where(support => support.Leave).Select(support => support.Words)];

    internal static BedPlanData Picture(IReadOnlyList<SupportMark> supports, IReadOnlyList<ProbePoint> probed) =>
        new(supports, [.. probed.Select(point => (point.X.Millimeters, point.Y.Millimeters))]);

    internal static string Advice(Verdict<Length> now) => now.Conclusion switch
    {
        Conclusion.Within => "level enough: leave it",
        Conclusion.Outside => "turn the screws as below",
        _ => $"{now.Limitation}; or turn as below",
    };

    private static PassStep First(IReadOnlyList<ProbePoint> probed, BedSupports stand, IReadOnlyList<BedScrew> screws, Limits limits, string spread)
    {
        PlaneFit plane = PlaneFit.Fit(probed);
        if (plane.Findings.FirstOrDefault(finding => finding.Severity == FindingSeverity.Blocking) is { } blocking)
        {
            throw new InputException(ProbeReadings.File, null, blocking.Message);
        }

        TrammingPlan plan = stand.Plan(plane);
        Verdict<Length> now = plan.Judge(limits.FirstLayerSpread);
        SupportMark[] supports = [.. plan.Turns.Select((turn, i) => Support(turn, screws[i], now))];
        Verdict<Length> later = limits.FirstLayerSpread.Judge(plan.PredictedPlane.HeightSpread);
        return new PassStep(
            "tramming",
            "2. Tramming",
            [
                PassEntry.Of("tramming.tilt_about_x", "Tilt about x", plane.TiltAboutX, "mrad"),
                PassEntry.Of("tramming.tilt_about_y", "Tilt about y", plane.TiltAboutY, "mrad"),
                PassEntry.Judged("tramming.height_spread", spread, now, whatToDo: Advice(now)),
                .. Turns(plan, supports),
                PassEntry.Judged("tramming.predicted_spread", "Spread after turning", later, whatToDo: "probe again to see"),
                .. Twist(plan),
            ],
            [.. plan.Findings.Select(finding => (ProbeReadings.File, finding))],
            [FormattableString.Invariant($"Turning cannot remove the bed's own shape: {plan.RemainingRawFlatness.Micrometers:0.0} µm from lowest to highest reading about the plane, probe noise in it.")],
            Cautions)
        {
            ToDo = ToDo(supports),
            LeaveAlone = LeaveAlone(supports),
            WouldAdd = ["again.csv and turned.csv, the bed probed again and what was turned, would add what each screw really does and why the bed does not come level, if it does not."],
            Pictures = [Picture(supports, probed)],
        };
    }

    private static BedSupports Supports(IReadOnlyList<BedScrew> screws)
    {
        try
        {
            return BedSupports.Of([.. screws.Select(screw => AdjustingScrew.At(
                screw.Name,
                Length.FromMillimeters(screw.XMillimetres),
                Length.FromMillimeters(screw.YMillimetres),
                ScrewThread.IsoCoarse(screw.Thread),
                screw.ClockwiseRaises ? BedMotion.Raises : BedMotion.Lowers))]);
        }
        catch (ArgumentException refused)
        {
            throw new InputException(BedScrew.File, null, refused.Message.Split(" (Parameter")[0]);
        }
    }

    private static IEnumerable<PassEntry> Turns(TrammingPlan plan, SupportMark[] supports)
    {
        for (int i = 0; i < plan.Turns.Count; i++)
        {
            ScrewTurn turn = plan.Turns[i];
            string name = "tramming.screw." + turn.Name.Replace(' ', '_');
            string seen = $"{supports[i].Sense} {supports[i].From}, {(supports[i].Raises ? "raises" : "lowers")}";
            yield return PassEntry.Of(name + ".height_change", $"{turn.Name}: raise", turn.HeightChange);
            yield return PassEntry.Of(name + ".rotation", $"{turn.Name}: turn", turn.Rotation, whatToDo: supports[i].Leave ? "leave it" : seen);
        }
    }

    private static IEnumerable<PassEntry> Twist(TrammingPlan plan)
    {
        if (plan.Twist?.TryGetAmplitude(out Measured<Length> twist) == true)
        {
            yield return PassEntry.Of("tramming.twist", "Twist at a screw", twist, whatToDo: plan.Twist.IsSignificant ? "no tilt removes it; look for a strained screw" : null);
        }
    }
}
