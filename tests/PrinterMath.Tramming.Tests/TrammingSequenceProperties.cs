using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using PrinterMath.Tramming.Tests.Simulation;
using UnitsNet;

namespace PrinterMath.Tramming.Tests;

[Properties(MaxTest = 40)]
public class TrammingSequenceProperties
{
    private static TrammingSequence Of(ScrewedBed bed, IReadOnlyList<TrammingPass> passes) => TrammingSequence.Of(bed.Supports, passes);

    private static bool Same(double one, double other, double scale) => Math.Abs(one - other) <= 1e-7 * scale; // conditioning of the normal equations times rounding

    private static bool SameAnswer(TrammingSequence one, TrammingSequence other, double scale = 1) =>
        one.Diagnoses.Select(d => (d.Cause, d.Subject, d.Pass)).SequenceEqual(other.Diagnoses.Select(d => (d.Cause, d.Subject, d.Pass)))
        && one.Responses.All(r => other.Responses.Any(s =>
            s.Screw.Name == r.Screw.Name
            && Same(r.EffectiveLead.SiValue * scale, s.EffectiveLead.SiValue, 5e-4 * scale)
            && Same(r.EffectiveLead.SiStandardUncertainty * scale, s.EffectiveLead.SiStandardUncertainty, 5e-5 * scale)))
        && one.NextTurns.All(t => other.NextTurns.Any(s => s.Name == t.Name && Same(Signed(t), Signed(s), 1)));

    private static double Signed(ScrewTurn turn) => turn.Turns.SiValue * (turn.Sense == TurnSense.Clockwise ? 1 : -1);

    [Property]
    public Property TheOrderOfPointsAndScrewsChangesNothing(PositiveInt seed, bool hunts, bool loose)
    {
        var bed = new ScrewedBed(seed.Get, new BedStory(3, 4, hunts, loose ? BedFault.LooseCorner : BedFault.None, .1));
        List<TrammingPass> passes = bed.Run();
        TrammingPass[] untimed = [.. passes.Select((p, i) => Again(p, i, p.Points))];
        TrammingPass[] turnedAround = [.. passes.Select((p, i) => Again(p, i, [.. p.Points.Reverse()]))];
        TrammingSequence one = Of(bed, untimed);
        var other = TrammingSequence.Of(BedSupports.Of([.. bed.Supports.Screws.Reverse()]), turnedAround);
        return SameAnswer(one, other).ToProperty();

        static TrammingPass Again(TrammingPass pass, int i, IReadOnlyList<ProbePoint> points) => i == 0 ? TrammingPass.First(points) : TrammingPass.After([.. pass.Turned.Reverse()], points);
    }

    [Property]
    public Property ScalingAllLengthsScalesTheLeads(PositiveInt seed, bool four, bool larger)
    {
        // powers of two: rounding alone would otherwise decide borderline tests
        double scale = larger ? 2 : .5;
        var bed = new ScrewedBed(seed.Get, new BedStory(four ? 4 : 3, 3, true, BedFault.None, 0));
        List<TrammingPass> passes = bed.Run();
        var scaled = BedSupports.Of([.. bed.Supports.Screws.Select(s => AdjustingScrew.At(s.Name, s.X * scale, s.Y * scale, ScrewThread.FromLead(s.Thread.Lead.Value * scale), s.Clockwise))]);
        TrammingPass[] same = [.. passes.Select((p, i) =>
        {
            ProbePoint[] points = [.. p.Points.Select(q => ProbePoint.FromMeters(q.XMeters * scale, q.YMeters * scale, q.ZMeters * scale))];
            return i == 0 ? TrammingPass.First(points, p.Times) : TrammingPass.After(p.Turned, points, p.Times);
        })];
        return SameAnswer(Of(bed, passes), TrammingSequence.Of(scaled, same), scale).ToProperty();
    }

    [Property]
    public Property RaisingTheZeroChangesNothing(PositiveInt seed, bool hunts)
    {
        var bed = new ScrewedBed(seed.Get, new BedStory(3, 3, hunts, BedFault.None, 0));
        List<TrammingPass> passes = bed.Run();
        TrammingPass[] raised = [.. passes.Select((p, i) =>
        {
            ProbePoint[] points = [.. p.Points.Select(q => ProbePoint.FromMeters(q.XMeters, q.YMeters, q.ZMeters + .003))];
            return i == 0 ? TrammingPass.First(points, p.Times) : TrammingPass.After(p.Turned, points, p.Times);
        })];
        return SameAnswer(Of(bed, passes), Of(bed, raised)).ToProperty();
    }

    [Property]
    public Property AZeroThatIsLostBetweenPassesChangesNothingWhenSaidSo(PositiveInt seed, PositiveInt shift)
    {
        var bed = new ScrewedBed(seed.Get, new BedStory(3, 3, true, BedFault.None, 0));
        var lost = new TrammingSequenceOptions { ZeroIsKept = false };
        List<TrammingPass> passes = bed.Run();
        TrammingPass[] shifted = [.. passes.Select((p, i) =>
        {
            ProbePoint[] points = [.. p.Points.Select(q => ProbePoint.FromMeters(q.XMeters, q.YMeters, q.ZMeters + (i * (shift.Get % 50) * 1e-5)))];
            return i == 0 ? TrammingPass.First(points, p.Times) : TrammingPass.After(p.Turned, points, p.Times);
        })];
        return SameAnswer(TrammingSequence.Of(bed.Supports, passes, lost), TrammingSequence.Of(bed.Supports, shifted, lost)).ToProperty();
    }

    [Property]
    public Property WithoutTurnsTheResponseStaysAtThePrior(PositiveInt seed, bool four)
    {
        var bed = new ScrewedBed(seed.Get, new BedStory(four ? 4 : 3, 3, true, BedFault.None, 0));
        List<TrammingPass> passes = bed.Run();
        TrammingSequence still = Of(bed, [passes[0], TrammingPass.After([], passes[0].Points.Zip(passes[1].Points, (a, b) => ProbePoint.FromMeters(a.XMeters, a.YMeters, a.ZMeters + ((b.ZMeters - a.ZMeters) * 1e-3))).ToArray())]);
        return still.Responses.All(r =>
            Same(r.EffectiveLead.SiValue, r.Prior.SiValue, 5e-4)
            && Same(r.EffectiveLead.SiStandardUncertainty, r.Prior.SiStandardUncertainty, 5e-4)).ToProperty();
    }

    [Property]
    public Property LearningNeverWidensALead(PositiveInt seed, bool four)
    {
        var bed = new ScrewedBed(seed.Get, new BedStory(four ? 4 : 3, 4, true, BedFault.None, 0));
        List<TrammingPass> passes = bed.Run();
        var stated = new TrammingSequenceOptions { ProbeRepeatability = Length.FromMicrometers(20), FamilyWiseRisk = 1e-12 };
        Measured<Length>[][] leads = [.. Enumerable.Range(1, 4).Select(n => TrammingSequence.Of(bed.Supports, passes.Take(n).ToArray(), stated).Responses.Select(r => r.EffectiveLead).ToArray())];
        return Enumerable.Range(1, 3).All(n => leads[n].Zip(leads[n - 1]).All(pair =>
            pair.First.SiStandardUncertainty <= pair.Second.SiStandardUncertainty * (1 + 1e-9))).ToProperty(); // rounding
    }
}
