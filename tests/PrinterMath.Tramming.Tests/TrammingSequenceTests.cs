using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class TrammingSequenceTests
{
    private static readonly TrammingSequenceOptions FourMicrons = new() { ProbeRepeatability = Length.FromMicrometers(4) };

    private static BedSupports Three => BedSupports.Of(Screw("left", 0, 0), Screw("right", 200, 0), Screw("rear", 100, 200));

    // Screw "right" alone is turned by a quarter turn that raises: heights grow by .125·x/200 less the rear's share; the plane through (0, 0), (200, 0), (100, 200) with 1 at "right" is x/200 - y/400.
    private static List<ProbePoint> Raised(double right, double rear = 0, int countX = 3, int countY = 3) =>
        Grid(100, countX, countY, (x, y) => .1 + (.0005 * x) + (right * ((x / 200) - (y / 400))) + (rear * y / 200));

    private static AppliedTurn Up(string screw, double turns) => turns > 0
        ? AppliedTurn.Counterclockwise(screw, Angle.FromRevolutions(turns))
        : AppliedTurn.Clockwise(screw, Angle.FromRevolutions(-turns));

    [Fact]
    public void ALeadIsLearnedFromWhatMoved()
    {
        // .5 mm stated, .52 found: prior .5 ± .025, turned a turn set to 3° (.0042 mm) and read to .004·sqrt(...) of a micrometre or so: the posterior lies close to .52
        var sequence = TrammingSequence.Of(Three, [TrammingPass.First(Raised(0)), TrammingPass.After([Up("right", 1)], Raised(.52))], FourMicrons);
        Measured<Length> lead = sequence.Responses[1].EffectiveLead;

        Assert.Empty(sequence.Diagnoses);
        Assert.Equal(.519, lead.Millimeters(), .0015);
        Assert.InRange(lead.UncertaintyMillimeters(), .0042, .0075);
        Assert.Equal(.5, sequence.Responses[0].EffectiveLead.Millimeters(), 1e-9); // never turned: the prior stands
        Assert.Equal(.025, sequence.Responses[0].EffectiveLead.UncertaintyMillimeters(), 1e-9);
    }

    // One lead, one number: posterior of normal prior and normal reading, precision adds up. Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., equation (2.10) (from memory).
    [Fact]
    [Trait("Evidence", "Published")]
    public void ThePosteriorIsThatOfANormalMean()
    {
        var options = new TrammingSequenceOptions { ProbeRepeatability = Length.FromMicrometers(4), CrossCoupling = 0, TurnUncertainty = Angle.Zero };
        List<ProbePoint> before = Raised(0);
        var sequence = TrammingSequence.Of(Three, [TrammingPass.First(before), TrammingPass.After([Up("right", 1)], Raised(.53))], options);

        // differences of two readings have variance 2·.004²; their regression on g = x/200 - y/400 has information sum g²/(2·.004²)
        double information = before.Sum(p => Math.Pow((p.XMeters * 1e3 / 200) - (p.YMeters * 1e3 / 400), 2)) / (2 * .004 * .004);
        double precision = information + (1 / (.025 * .025));
        Assert.Equal(((.53 * information) + (.5 / (.025 * .025))) / precision, sequence.Responses[1].EffectiveLead.Millimeters(), 1e-9); // rounding
        Assert.Equal(1 / Math.Sqrt(precision), sequence.Responses[1].EffectiveLead.UncertaintyMillimeters(), 1e-9);
    }

    [Fact]
    public void TheNextTurnsUseWhatWasLearned()
    {
        var options = FourMicrons with { Next = new TrammingOptions { KeepStill = "left" } };
        var sequence = TrammingSequence.Of(Three, [TrammingPass.First(Raised(0)), TrammingPass.After([Up("right", 1)], Raised(.52))], options);
        ScrewTurn right = sequence.NextTurns[1];

        // right stands .62 mm above left, where .1 mm of it was there before; with .519 mm a turn (and the rear's coupling) that is 1.19 turns down, clockwise
        Assert.Equal(TurnSense.Clockwise, right.Sense);
        Assert.Equal(.62 / .519, right.Turns.SiValue, .01);
        Assert.Equal(TurnSense.None, sequence.NextTurns[0].Sense);
        Assert.Equal(0, sequence.NextTurns[0].HeightChange.SiValue);
    }

    [Fact]
    public void AScrewThatTurnsTheOtherWayIsNamedAndTurnedBack()
    {
        var sequence = TrammingSequence.Of(Three, [TrammingPass.First(Raised(0)), TrammingPass.After([Up("right", .5)], Raised(-.25))], FourMicrons);

        Assert.Equal(SequenceCause.Lead, sequence.Diagnoses[0].Cause);
        Assert.Equal("sequence.lead", sequence.Diagnoses[0].Code);
        Assert.Equal("right", sequence.Diagnoses[0].Subject);
        Assert.Equal(-1, sequence.Diagnoses[0].Effect.Millimeters(), .05); // -.5 instead of +.5
        Assert.Equal(-.5, sequence.Responses[1].EffectiveLead.Millimeters(), .05);
        Assert.Contains(sequence.Findings, finding => finding.Code == "sequence.lead");
    }

    [Fact]
    public void AMoveInTheIntervalOfItsOwnTurnIsUndecided()
    {
        // right was turned a little and moved by far more: a lead of another kind, or loose. One interval cannot tell.
        var sequence = TrammingSequence.Of(Three, [TrammingPass.First(Raised(0)), TrammingPass.After([Up("right", .1)], Raised(.25))], FourMicrons);
        SequenceDiagnosis diagnosis = sequence.Diagnoses[0];

        Assert.False(diagnosis.IsDecided);
        Assert.Equal([SequenceCause.Lead, SequenceCause.Loose], new[] { diagnosis.Cause }.Concat(diagnosis.Rivals).Order());
        Assert.Contains("Undecided", diagnosis.Finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALooseCornerIsNamedWithItsPassAndItsMove()
    {
        var sequence = TrammingSequence.Of(
            Three,
            [
                TrammingPass.First(Raised(0)),
                TrammingPass.After([Up("right", .5)], Raised(.25)),
                TrammingPass.After([], Raised(.25, rear: .06)),
                TrammingPass.After([Up("right", .25)], Raised(.375, rear: .06)),
            ],
            FourMicrons);
        SequenceDiagnosis diagnosis = Assert.Single(sequence.Diagnoses);

        Assert.Equal((SequenceCause.Loose, "rear", 2), (diagnosis.Cause, diagnosis.Subject, diagnosis.Pass));
        Assert.Equal(.06, diagnosis.Effect.Millimeters(), .002);
        Assert.True(diagnosis.Probability < 1e-6);
    }

    [Fact]
    public void ConvergenceComparesTiltsAfterAndBefore()
    {
        // a tilt to x alone: heights at the screws about their mean shrink to a tenth
        List<ProbePoint> Tilted(double slope) => Grid(100, 3, 3, (x, _) => slope * x);
        var sequence = TrammingSequence.Of(Three, [TrammingPass.First(Tilted(.002)), TrammingPass.After([Up("right", -.36), Up("left", .36)], Tilted(.0002))], FourMicrons);
        Assert.Equal(.1, sequence.ConvergenceFactor.SiValue, .001); // the noise's share of the squares is taken off
        Assert.InRange(sequence.ConvergenceFactor.SiStandardUncertainty, .003, .02);
    }

    [Fact]
    public void ForecastsSayWhatLimits()
    {
        var sequence = TrammingSequence.Of(
            Three, [TrammingPass.First(Raised(0)), TrammingPass.After([Up("right", .5)], Raised(.25))], new TrammingSequenceOptions { ProbeRepeatability = Length.FromMicrometers(4), TurnUncertainty = Angle.FromDegrees(1) });

        PassForecast wide = sequence.Forecast(Mm(.05));
        Assert.True(wide.Reaches);
        Assert.InRange(wide.Rounds, 1, 2);
        PassForecast narrow = sequence.Forecast(Mm(.01));
        Assert.Equal(ForecastLimit.ProbeNoise, narrow.Limit);
        Assert.InRange(narrow.ReadingsForEachPoint!.Value, 2, 100);
        Assert.Throws<IndeterminateException>(() => narrow.Rounds);
        Assert.Contains("noise", narrow.ToString(), StringComparison.Ordinal);
        Assert.Equal(ForecastLimit.TurnSetting, sequence.Forecast(Mm(.0015)).Limit);
        Assert.Equal(0, sequence.Forecast(Mm(5)).Rounds);
        Assert.Equal(Conclusion.Outside, sequence.Judge(Tolerance.AtMost(Mm(.05))).Conclusion);
    }

    [Fact]
    public void OnePassPlansByTheStatedLeads()
    {
        var sequence = TrammingSequence.Of(Three, [TrammingPass.First(Raised(0))], FourMicrons);
        TrammingPlan plan = Three.Plan(PlaneFit.Fit(Raised(0), new PlaneFitOptions { ProbeRepeatability = Length.FromMicrometers(4) }));

        Assert.Contains(sequence.Findings, finding => finding.Code == "sequence.one");
        Assert.False(sequence.TryGetConvergenceFactor(out _));
        Assert.Throws<IndeterminateException>(() => sequence.ConvergenceFactor);
        Assert.All(plan.Turns.Zip(sequence.NextTurns), pair => Assert.Equal(pair.First.Turns.SiValue, pair.Second.Turns.SiValue, 1e-12));
    }

    [Fact]
    public void WhatTheReadingsLackIsSaid()
    {
        var without = TrammingSequence.Of(Three, [TrammingPass.First(Raised(0)), TrammingPass.After([], Raised(0))]);
        Assert.False(without.IsDeterminate);
        Assert.Equal("sequence.uncertainty.unknown", without.Findings[0].Code);
        Assert.Throws<IndeterminateException>(() => without.NextTurns);
        Assert.False(without.TryGetNextTurns(out _));

        var line = TrammingSequence.Of(Three, [TrammingPass.First([Point(0, 0, 0), Point(1, 1, 0), Point(2, 2, 0)])], FourMicrons);
        Assert.Equal("plane.collinear", line.Findings[0].Code);

        var unturned = TrammingSequence.Of(Three, [TrammingPass.First(Raised(0)), TrammingPass.After([Up("right", 0)], Raised(0))], FourMicrons);
        Assert.Contains(unturned.Findings, finding => finding.Code == "sequence.turns.none");
        Assert.Contains(unturned.Findings, finding => finding.Code == "sequence.times.none");
        Assert.All(unturned.Responses, r => Assert.Equal(r.Prior.SiStandardUncertainty, r.EffectiveLead.SiStandardUncertainty, 1e-12));

        var dead = TrammingSequence.Of(Three, [TrammingPass.First(Raised(0)), TrammingPass.After([Up("right", 1)], Raised(0)), TrammingPass.After([Up("right", 1), Up("rear", .5)], Raised(0, .25))], FourMicrons);
        Assert.Contains(dead.Findings, finding => finding.Code == "sequence.response.none");
        Assert.False(dead.TryGetNextTurns(out _));
        Assert.Throws<IndeterminateException>(() => dead.PredictedSpread);
    }

    [Fact]
    public void MistakesOfTheCallerAreRefused()
    {
        Assert.Throws<ArgumentException>(() => TrammingPass.First([Point(0, 0, 0), Point(1, 0, 0)]));
        Assert.Throws<ArgumentException>(() => TrammingPass.After([Up("right", 1), Up("right", -1)], Raised(0)));
        Assert.Throws<ArgumentException>(() => TrammingPass.First(Raised(0), [Duration.Zero]));
        Assert.Throws<ArgumentException>(() => TrammingPass.First(Raised(0), [.. Enumerable.Range(0, 9).Select(i => Duration.FromSeconds(-i))]));
        Assert.ThrowsAny<ArgumentException>(() => AppliedTurn.Clockwise("right", Angle.FromDegrees(double.NaN)));
        Assert.Throws<ArgumentOutOfRangeException>(() => AppliedTurn.Clockwise("right", Angle.FromDegrees(-1)));
        Assert.Throws<ArgumentException>(() => AppliedTurn.Clockwise(" ", Angle.FromDegrees(1)));
        Assert.Throws<ArgumentNullException>(() => TrammingPass.After([null!], Raised(0)));
        Assert.Throws<ArgumentException>(() => TrammingSequence.Of(Three, []));
        Assert.Throws<ArgumentNullException>(() => TrammingSequence.Of(Three, null!));
        Assert.Throws<ArgumentNullException>(() => TrammingSequence.Of(null!, [TrammingPass.First(Raised(0))]));
        Assert.Throws<ArgumentException>(() => TrammingSequence.Of(Three, [TrammingPass.After([Up("right", 1)], Raised(0))]));
        Assert.Throws<ArgumentException>(() => TrammingSequence.Of(Three, [TrammingPass.First(Raised(0)), TrammingPass.After([Up("nobody", 1)], Raised(0))]));
        Duration[] late = [.. Enumerable.Range(0, 9).Select(i => Duration.FromSeconds(100 + i))];
        Duration[] early = [.. Enumerable.Range(0, 9).Select(i => Duration.FromSeconds(i))];
        Assert.Throws<ArgumentException>(() => TrammingSequence.Of(Three, [TrammingPass.First(Raised(0), late), TrammingPass.After([], Raised(0), early)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => TrammingSequence.Of(Three, [TrammingPass.First(Raised(0))], new TrammingSequenceOptions { RelativeLeadUncertainty = -1 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => TrammingSequence.Of(Three, [TrammingPass.First(Raised(0))], new TrammingSequenceOptions { FamilyWiseRisk = 0 }));
        Assert.Throws<ArgumentException>(() => TrammingSequence.Of(Three, [TrammingPass.First(Raised(0))], FourMicrons with { Next = new TrammingOptions { KeepStill = "nobody" } }));
    }

    [Fact]
    public void TextsAreInvariant()
    {
        var sequence = TrammingSequence.Of(Three, [TrammingPass.First(Raised(0)), TrammingPass.After([Up("right", 1)], Raised(.52))], FourMicrons);
        Assert.Contains("nothing found", sequence.ToString(), StringComparison.Ordinal);
        Assert.Equal("right: 360° counterclockwise", sequence.Passes[1].Turned[0].ToString());
        Assert.Contains("9 readings after right", sequence.Passes[1].ToString(), StringComparison.Ordinal);
        Assert.StartsWith("right: 0.51", sequence.Responses[1].ToString(), StringComparison.Ordinal);
    }
}
