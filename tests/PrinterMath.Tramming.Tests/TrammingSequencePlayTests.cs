using PrinterMath.Measurement;
using PrinterMath.Tramming.Tests.Simulation;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

/// <summary>Next turns where the screws have play. Planted beds: leads as stated, turns set exactly, so that probe noise and play are all there is.</summary>
public class TrammingSequencePlayTests
{
    private const double Play = .05;

    private static readonly TrammingSequenceOptions Good = new() { RelativeLeadUncertainty = 0, CrossCoupling = 0, TurnUncertainty = Angle.Zero };

    private static readonly TrammingSequenceOptions Known = Good with { Play = Measured.Exact(Mm(Play)), ProbeRepeatability = Mm(BedStory.Repeatability) };

    private static BedSupports Three => BedSupports.Of(Screw("left", 0, 0), Screw("right", 200, 0), Screw("rear", 100, 200));

    private static AppliedTurn Raise(string screw, double millimeters) => millimeters > 0
        ? AppliedTurn.Counterclockwise(screw, Angle.FromRevolutions(millimeters / .5))
        : AppliedTurn.Clockwise(screw, Angle.FromRevolutions(-millimeters / .5));

    private static TrammingSequence After(params double[] raisedAtRight)
    {
        static List<ProbePoint> Raised(double right) => Grid(100, 3, 3, (x, y) => .1 + (.0005 * x) + (right * ((x / 200) - (y / 400))));
        List<TrammingPass> passes = [TrammingPass.First(Raised(0))];
        double stands = 0;
        foreach (double raised in raisedAtRight)
        {
            stands += raised;
            passes.Add(TrammingPass.After([Raise("right", raised)], Raised(stands)));
        }

        return TrammingSequence.Of(Three, passes, Known with { Next = new TrammingOptions { KeepStill = "left" } });
    }

    // right was raised by 0.2 mm, 0.05 mm of play: it stands at the flank that raises; back down takes up all of it, (Δh + 0.05)/0.5 turns. Readings are as if nothing had been lost; the change itself is not the matter here.
    [Fact]
    public void AReversedTurnIsLongerByThePlay()
    {
        ScrewTurn right = After(.2).NextTurns[1];

        Assert.True(right.HeightChange.SiValue < 0);
        Assert.Equal(Play, right.PlayTakenUp.Millimeters(), 1e-12);
        Assert.Equal((Math.Abs(right.HeightChange.Millimeters()) + Play) / .5, right.Turns.SiValue, 1e-9);
        Assert.EndsWith("of play", right.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void ATurnInTheSameSenseIsNot() => Assert.Equal(0, After(-.06).NextTurns[1].PlayTakenUp.SiValue, 1e-15);

    // Never turned: anywhere in the gap, a rectangle of mean b/2 and u = b/√12. Turned up by 0.02 mm of 0.05: the room to the upper flank is spread over 0 to 0.03 mm, so that down takes 0.05 - 0.015 mm.
    [Fact]
    public void WhereAScrewStandsInItsGapIsARectangle()
    {
        ScrewTurn untouched = TrammingSequence.Of(Three, [TrammingPass.First(Grid(100, 3, 3, (x, _) => .001 * x))], Known).NextTurns[1];
        Assert.Equal(Play / 2, untouched.PlayTakenUp.Millimeters(), 1e-12);
        Assert.Equal(Play / Math.Sqrt(12), untouched.PlayTakenUp.UncertaintyMillimeters(), 1e-12);
        Assert.True(untouched.Turns.SiStandardUncertainty > Play / Math.Sqrt(12) / .5);

        ScrewTurn little = After(.02).NextTurns[1];
        Assert.Equal(TurnSense.Clockwise, little.Sense);
        Assert.Equal(.035, little.PlayTakenUp.Millimeters(), 1e-12);
        Assert.Equal(.03 / Math.Sqrt(12), little.PlayTakenUp.UncertaintyMillimeters(), 1e-12);
    }

    // Beds whose first turns are all longer than the play: after them every screw stands at a known flank, and the second round leaves what the probe's noise makes, .0045 mm as without play
    // (TrammingSequenceCoverageTests.WithGoodScrewsTwoPassesReachTheProbesNoise); 1.3 times that is the limit of the scatter over the beds. Without the allowance a reversed turn falls short by the play.
    [Fact]
    public void WithKnownPlayTwoPassesReachTheProbesNoise()
    {
        var story = new BedStory(3, 2, false, BedFault.Backlash, Play) { Spread = (1e-9, 1e-9, 0), Dome = 0 };
        double with = 0, without = 0;
        int beds = 0;
        for (int seed = 1; beds < 100; seed++)
        {
            (double spread, bool all) = AfterTwoRounds(seed, story, Known);
            if (all)
            {
                with += spread / 100;
                without += AfterTwoRounds(seed, story, Known with { Play = null }).Spread / 100;
                beds++;
            }
        }

        Assert.InRange(with, .0045 / 1.3, .0045 * 1.3);
        Assert.True(without > 1.5 * with, $"{with} mm with, {without} mm without");
    }

    [Fact]
    public void WhatWasLearnedOfThePlayServesTheNextTurns()
    {
        var story = new BedStory(3, 6, true, BedFault.Backlash, Play) { Spread = (1e-9, 1e-9, 0), Dome = 0 };
        double spread = 0, predicted = 0;
        int named = 0;
        for (int seed = 1; seed <= 60; seed++)
        {
            var bed = new ScrewedBed(seed, story);
            TrammingSequence passes = TrammingSequence.Of(bed.Supports, bed.Run(), Good);
            if (passes.Diagnoses is [{ Cause: SequenceCause.Backlash, Subject: "all screws" }, ..])
            {
                named++;
                predicted += passes.PredictedSpread.SiValue * 1e3;
                bed.Make(passes.NextTurns.Select(AppliedTurn.AsPlanned));
                spread += bed.Spread();
            }
        }

        Assert.True(named >= 50, $"{named} of 60");
        Assert.InRange(spread / named, predicted / named / 1.3, predicted / named * 1.3); // scatter of the mean of 50 and more
        Assert.True(spread / named < Play / 3, $"{spread / named} mm");
    }

    [Fact]
    public void MistakesAreRefused()
    {
        TrammingPass[] one = [TrammingPass.First(Grid(100, 3, 3, (x, _) => .001 * x))];
        Assert.ThrowsAny<ArgumentException>(() => TrammingSequence.Of(Three, one, Known with { Play = Measured.Exact(Mm(-1)) }));
        Assert.ThrowsAny<ArgumentException>(() => TrammingSequence.Of(Three, one, Known with { Play = default(Measured<Length>) }));
        Assert.Equal(0, TrammingSequence.Of(Three, one, Known with { Play = Measured.Exact(Length.Zero) }).NextTurns[1].PlayTakenUp.SiValue);
    }

    private static (double Spread, bool TurnedPastThePlay) AfterTwoRounds(int seed, BedStory story, TrammingSequenceOptions options)
    {
        var bed = new ScrewedBed(seed, story with { Passes = 1 });
        List<TrammingPass> passes = bed.Run();
        AppliedTurn[] first = [.. TrammingSequence.Of(bed.Supports, passes, options).NextTurns.Select(AppliedTurn.AsPlanned)];
        passes.Add(bed.Next(first));
        bed.Make(TrammingSequence.Of(bed.Supports, passes, options).NextTurns.Select(AppliedTurn.AsPlanned));
        return (bed.Spread(), first.All(turn => Math.Abs(turn.ClockwiseTurns) * .5 > Play));
    }
}
