using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class LeastTurningTests
{
    private static readonly TrammingOptions Least = new() { LeastTotalTurning = true };

    [Fact]
    public void TheMedianScrewStaysStill()
    {
        // heights 0, .3 and .15 mm: the rear is the middle one
        PlaneFit plane = PlaneFit.Fit(Grid(100, 3, 3, (x, _) => .0015 * x), new PlaneFitOptions { ProbeRepeatability = Length.FromMicrometers(4) });
        TrammingPlan plan = BedSupports.Of(Screw("left", 0, 0), Screw("right", 200, 0), Screw("rear", 100, 190)).Plan(plane, Least);
        Assert.Equal(TurnSense.None, plan.Turns[2].Sense);
        Assert.Equal(.6, plan.TotalTurns, 1e-12); // .15/.5 twice

        // a coarse screw is cheap to turn: with lead 2 mm at the rear, a half turn of it by .15 mm counts .075 and left (.3) + right (.3) weigh more than it
        TrammingPlan coarse = BedSupports.Of(Screw("left", 0, 0), Screw("right", 200, 0), AdjustingScrew.At("rear", Mm(100), Mm(190), ScrewThread.FromLead(Mm(2)), BedMotion.Raises)).Plan(plane, Least);
        Assert.Equal(TurnSense.None, coarse.Turns[2].Sense); // still the weighted median: 2 + .5 > half of 4.5 only there
        Assert.Equal(.6, coarse.TotalTurns, 1e-12);
    }

    [Fact]
    public void AUncertaintyIsThatOfAStillScrew()
    {
        PlaneFit plane = PlaneFit.Fit(ReferenceBeds.P9());
        var supports = BedSupports.Of(Screw("left", 30, 30), Screw("right", 190, 30), Screw("rear", 110, 190));
        TrammingPlan least = supports.Plan(plane, Least);
        string still = Assert.Single(least.Turns, turn => turn.Sense == TurnSense.None).Name;
        TrammingPlan kept = supports.Plan(plane, new TrammingOptions { KeepStill = still });
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(kept.Turns[i].HeightChange.SiValue, least.Turns[i].HeightChange.SiValue, 1e-15);
            Assert.Equal(kept.Turns[i].HeightChange.SiStandardUncertainty, least.Turns[i].HeightChange.SiStandardUncertainty, 1e-15);
        }
    }

    // Brute force over the common height: 4001 heights within the limits, and each height at which a screw stays still or meets a limit.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void NoOtherHeightNeedsFewerTurns(bool limited)
    {
        int compared = 0;
        for (int seed = 1; seed <= 200; seed++)
        {
            var bed = new RandomBed(seed);
            TrammingPlan plan = bed.Supports.Plan(bed.Plane, limited ? Least with { Limits = bed.Limits } : Least);
            double[] changes = bed.Changes(plan);
            double low = limited ? changes.Select((change, i) => bed.Low[i] - change).Max() : -2;
            double high = limited ? changes.Select((change, i) => bed.High[i] - change).Min() : 2;
            double best = Total(bed, changes, 0);
            Assert.Equal(best, plan.TotalTurns, 1e-12);
            IEnumerable<double> heights = [low, high, .. Enumerable.Range(0, 4001).Select(k => low + ((high - low) * k / 4000)), .. changes.Select(change => -change).Where(shift => shift >= low && shift <= high)];
            Assert.All(heights, shift => Assert.True(Total(bed, changes, shift) >= best - 1e-9, $"seed {seed}: {shift} mm higher is better"));
            compared += high - low > 1e-6 ? 1 : 0;
        }

        Assert.True(compared > 50, $"{compared} beds had heights to choose from");
    }

    [Fact]
    public void AtATieTheHeightNearestToTheMeanIsTaken()
    {
        // four equal leads at heights 0, .1, .2, .4: every height from .1 to .2 needs the same turns; the mean is .175, so the screw at .2 stays
        PlaneFit plane = PlaneFit.Fit(Grid(100, 5, 3, (x, _) => .001 * x), new PlaneFitOptions { ProbeRepeatability = Length.FromMicrometers(4) });
        TrammingPlan plan = BedSupports.Of(Screw("a", 0, 0), Screw("b", 100, 200), Screw("c", 200, 0), Screw("d", 400, 200)).Plan(plane, Least);
        Assert.Equal([false, false, true, false], plan.Turns.Select(turn => turn.Sense == TurnSense.None));
        Assert.Equal(1, plan.TotalTurns, 1e-12); // (.2 + .1 + .2)/.5
    }

    private static double Total(RandomBed bed, double[] changes, double shift) => changes.Select((change, i) => Math.Abs(change + shift) / bed.Lead[i]).Sum();
}
