using CommissioningPass.Inputs;
using CommissioningPass.Pictures;
using CommissioningPass.Report;
using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

namespace CommissioningPass.Steps;

/// <summary>First link: each belt's tension from its plucked span, and whether the two carry the same.</summary>
internal static class TensionStep
{
    private static readonly string[] Cautions =
    [
        "Power off and move the head slowly by hand while you reach for a tensioner: a turned motor generates.",
        "A tight belt stores energy. Slacken it before you cut it or take it off.",
        "Too much tension ruins motor bearings; the motor maker's limit on the shaft load comes before any figure here.",
    ];

    internal static PassStep Take(Recording recordingA, Recording recordingB, Readings readings, Limits limits, DriveReadings? drive)
    {
        Measured<LinearDensity> density = LinearDensityOf.Sample(
            readings.Of<Mass>(ReadingKind.SampleMass), readings.Of<Length>(ReadingKind.SampleLength));
        var options = new BeltSpanOptions
        {
            Rigidity = readings.Holds(ReadingKind.FlexuralRigidity) ? readings.Of<FlexuralRigidity>(ReadingKind.FlexuralRigidity) : null,
        };
        PluckReading pluckA = Hear(recordingA);
        PluckReading pluckB = Hear(recordingB);
        var beltA = new HeardSpan("A", new BeltSpan(readings.Of<Length>(ReadingKind.SpanA), density, options), pluckA.Fundamental);
        var beltB = new HeardSpan("B", new BeltSpan(readings.Of<Length>(ReadingKind.SpanB), density, options), pluckB.Fundamental);
        DriveWindow? window = drive is null ? null : new DriveWindow(drive, beltA, beltB, limits.BeltTension);
        BeltComparison comparison = Compare(beltA, beltB, window?.Target ?? Middle(limits.BeltTension));

        Verdict<Force> verdictA = limits.BeltTension.Judge(comparison.FirstTension.Budget);
        Verdict<Force> verdictB = limits.BeltTension.Judge(comparison.SecondTension.Budget);
        Verdict<double> equal = limits.BeltTensionDifference.Judge(comparison.RelativeDifference);
        bool leave = new[] { verdictA.Conclusion, verdictB.Conclusion, equal.Conclusion }.Concat(window?.Conclusions(comparison) ?? []).All(conclusion => conclusion == Conclusion.Within);
        DriveAnswers? answers = window is null ? null : new DriveAnswers(drive!, window, comparison, beltA, beltB, limits, leave);
        return new PassStep(
            "tension",
            "1. Tension",
            [
                PassEntry.Of("tension.linear_density", "Mass per length", density),
                PassEntry.Of("tension.a.frequency", "A sounds at", pluckA.Fundamental),
                PassEntry.Of("tension.b.frequency", "B sounds at", pluckB.Fundamental),
                PassEntry.Judged("tension.a.tension", "Tension of A", verdictA, whatToDo: Advice(verdictA, comparison.FirstChange, leave)),
                PassEntry.Judged("tension.b.tension", "Tension of B", verdictB, whatToDo: Advice(verdictB, comparison.SecondChange, leave)),
                PassEntry.Judged("tension.difference", "(A - B) / mean", equal, "%", Equality(equal, comparison, leave)),
                PassEntry.Of("tension.a.target_frequency", "A should sound at", comparison.FirstChange.TargetFrequency),
                PassEntry.Of("tension.b.target_frequency", "B should sound at", comparison.SecondChange.TargetFrequency),
                .. answers?.Entries ?? [],
            ],
            [
                .. pluckA.Findings.Select(finding => (recordingA.File, finding)),
                .. pluckB.Findings.Select(finding => (recordingB.File, finding)),
                .. comparison.FirstTension.Findings.Select(finding => ("belt A", finding)),
                .. comparison.SecondTension.Findings.Select(finding => ("belt B", finding)),
                .. answers?.Findings ?? [],
            ],
            [
                .. new[] { recordingA.Remark, recordingB.Remark }.OfType<string>(),
                Weakest("A", comparison.FirstTension.Budget),
                Weakest("B", comparison.SecondTension.Budget),
                .. answers?.Remarks ?? [],
                "Damp the other belt with a finger while one sounds, and move the head to and fro between readings.",
            ],
            Cautions)
        {
            Settings = [.. answers?.Settings ?? []],
            ToDo = leave ? [] : [.. Changes(comparison).Where(change => change.IsNeeded).Select(change => answers?.Sentence(change) ?? change.ToString()), .. First(equal, comparison)],
            LeaveAlone = leave ? ["Leave both belts as they are."] : [.. Changes(comparison).Where(change => !change.IsNeeded).Select(change => change.ToString())],
            WouldAdd = drive is null ? [$"{DriveReadings.File}, the drive's layout, masses and motors, would add the window of tension, the turns and what the motors can do."] : [],
            Pictures = [PluckData.Of("A", recordingA, pluckA), PluckData.Of("B", recordingB, pluckB), .. answers is null ? Array.Empty<PictureData>() : [answers.Picture]],
        };
    }

    private static PluckReading Hear(Recording recording)
    {
        PluckReading pluck = Pluck.Read(recording.Signal);
        return pluck.TryGetFundamental(out _)
            ? pluck
            : throw new InputException(recording.File, null, pluck.Findings.First(finding => finding.Severity == FindingSeverity.Blocking).Message);
    }

    private static BeltComparison Compare(HeardSpan beltA, HeardSpan beltB, Force? target)
    {
        try
        {
            return BeltComparison.Of(beltA, beltB, new BeltComparisonOptions { Target = target });
        }
        catch (IndeterminateException slack)
        {
            throw new InputException("readings.csv", null, slack.Message);
        }
    }

    private static Force? Middle(Tolerance<Force> owner) => owner is { Lower: { } lower, Upper: { } upper } ? (lower + upper) / 2 : null;

    private static string Advice(Verdict<Force> verdict, BeltChange change, bool leave) =>
        (leave, verdict.Conclusion) switch
        {
            (true, _) => "leave it",
            (_, Conclusion.Undecided) => $"{verdict.Limitation}; or {change}",
            _ => change.ToString(),
        };

    private static string Equality(Verdict<double> equal, BeltComparison comparison, bool leave) =>
        (leave, equal.Conclusion) switch
        {
            (true, _) => "leave it",
            (_, Conclusion.Undecided) => $"{equal.Limitation}",
            (_, Conclusion.Within) => "equal: turn both alike",
            _ => $"turn belt {comparison.Turn.Name} first",
        };

    private static BeltChange[] Changes(BeltComparison comparison) => [comparison.FirstChange, comparison.SecondChange];

    private static IEnumerable<string> First(Verdict<double> equal, BeltComparison comparison) =>
        equal.Conclusion == Conclusion.Outside ? [$"Begin with belt {comparison.Turn.Name}."] : [];

    private static string Weakest(string belt, UncertaintyBudget<Force> budget) => FormattableString.Invariant(
        $"Belt {belt}: {budget.Largest.VarianceShare * 100:0} % of the variance of its tension comes from '{budget.Largest.Input.Name}'.");
}
