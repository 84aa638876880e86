using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

/// <summary>Supports that are not screws turned by hand; beds and numbers are worked by hand.</summary>
public class SupportKindsTests
{
    private static readonly PlaneFitOptions FourMicrons = new() { ProbeRepeatability = Length.FromMicrometers(4) };
    private static readonly LeadScrew EightMillimeters = LeadScrew.Of(Measured.Exact(Mm(8))); // 3200 microsteps of 2.5 um

    // z = .001 x + .002 y
    private static PlaneFit Tilted => PlaneFit.Fit(Grid(100, 3, 3, (x, y) => (.001 * x) + (.002 * y)), FourMicrons);

    private static BedHinge Rear => BedHinge.Between("rear", Mm(0), Mm(200), Mm(200), Mm(200));

    [Fact]
    public void AHingeLeavesTheTiltAlongIt()
    {
        // the front must come up by the .4 mm that it is below the hinge; .001 along the hinge stays, .2 mm over the bed
        TrammingPlan plan = BedSupports.Of(Screw("front", 100, 0), Rear).Plan(Tilted);
        Assert.Equal(.4, Assert.Single(plan.Turns).HeightChange.Millimeters(), 1e-12);
        Assert.Equal(.2 * Tilted.SlopeY.SiStandardUncertainty, plan.Turns[0].HeightChange.SiStandardUncertainty, 1e-15); // the probed square is symmetrical: no share of the other slope
        Assert.Equal(.001, plan.PredictedPlane.SlopeX.SiValue, 1e-12);
        Assert.Equal(0, plan.PredictedPlane.SlopeY.SiValue, 1e-12);
        Assert.Equal(.4, plan.PredictedPlane.HeightAt(Mm(0), Mm(0)).Millimeters(), 1e-12); // the left end of the hinge keeps its height
        Assert.Equal(.6, plan.PredictedPlane.HeightAt(Mm(200), Mm(50)).Millimeters(), 1e-12);
        Finding finding = Assert.Single(plan.Findings, f => f.Code == "plan.tilt.unreached");
        Assert.Equal(FindingSeverity.Caution, finding.Severity);
        Assert.Equal(.001, Math.Abs(Number(finding, "slope")), 1e-12);
        Assert.Equal(Tilted.SlopeX.SiStandardUncertainty, Number(finding, "standardUncertainty"), 1e-15);
        Assert.Equal(1, Math.Abs(Math.Cos(Number(finding, "direction"))), 1e-12); // along x
        Assert.Equal(2e-4, Number(finding, "remainingSpread"), 1e-12);
    }

    [Fact]
    public void ATiltOutOfReachThatCannotBeToldFromNoneIsANote()
    {
        PlaneFit plane = PlaneFit.Fit(Grid(100, 3, 3, (x, y) => (5e-6 * x) + (.002 * y)), FourMicrons); // 1 um over the bed
        Finding finding = Assert.Single(BedSupports.Of(Screw("front", 100, 0), Rear).Plan(plane).Findings, f => f.Code == "plan.tilt.unreached");
        Assert.Equal(FindingSeverity.Note, finding.Severity);
    }

    [Fact]
    public void TwoFixedSupportsAreAHinge()
    {
        var hinge = BedSupports.Of(Screw("front", 100, 0), Rear);
        var posts = BedSupports.Of(Screw("front", 100, 0), FixedSupport.At("rear left", Mm(0), Mm(200)), FixedSupport.At("rear right", Mm(200), Mm(200)));
        Assert.Equal(hinge.Plan(Tilted).Turns[0].HeightChange, posts.Plan(Tilted).Turns[0].HeightChange);
    }

    [Fact]
    public void AFixedSupportIsAScrewKeptStill()
    {
        var fast = BedSupports.Of(FixedSupport.At("a", Mm(0), Mm(0)), Screw("b", 200, 0), Screw("c", 100, 200));
        var still = BedSupports.Of(Screw("a", 0, 0), Screw("b", 200, 0), Screw("c", 100, 200));
        TrammingPlan one = fast.Plan(Tilted);
        TrammingPlan other = still.Plan(Tilted, new TrammingOptions { KeepStill = "a" });
        double[] expected = [-.2, -.5];
        for (int i = 0; i < 2; i++)
        {
            Assert.Equal(expected[i], one.Turns[i].HeightChange.Millimeters(), 1e-12);
            Assert.Equal(other.Turns[i + 1].HeightChange.SiStandardUncertainty, one.Turns[i].HeightChange.SiStandardUncertainty, 1e-15);
        }

        Assert.Equal(0, one.PredictedPlane.HeightAt(Mm(150), Mm(20)).Millimeters(), 1e-12);
        Assert.DoesNotContain(one.Findings, f => f.Code == "plan.tilt.unreached");

        // with another one still as well the bed turns about their line: only the tilt square to it is within reach
        TrammingPlan turned = fast.Plan(Tilted, new TrammingOptions { KeepStill = "b" });
        Assert.Equal(0, turned.Turns[0].HeightChange.SiValue);
        Assert.Equal(-.4, turned.Turns[1].HeightChange.Millimeters(), 1e-12);
        Assert.Equal(.001, turned.PredictedPlane.SlopeX.SiValue, 1e-12);
    }

    [Fact]
    public void TwoPoweredScrewsTakeTheTiltAlongTheirLine()
    {
        var supports = BedSupports.Of(PoweredScrew.At("left", Mm(-20), Mm(100), EightMillimeters), PoweredScrew.At("right", Mm(220), Mm(100), EightMillimeters));
        TrammingPlan plan = supports.Plan(Tilted);
        Assert.Empty(plan.Turns);
        Assert.Equal([48, -48], plan.Moves.Select(move => move.Steps)); // .24 mm apart, half each, 2.5 um a microstep
        Assert.Equal(.12, plan.Moves[0].HeightChange.Millimeters(), 1e-12);
        Assert.Equal(0, plan.Moves[0].Remainder.Millimeters, 1e-12);
        Assert.True(plan.Moves[0].WorthMoving);
        Assert.Equal(.24 / 8, plan.TotalTurns, 1e-12);
        Assert.Equal(.002, plan.PredictedPlane.SlopeY.SiValue, 1e-12); // held by the guides
        Assert.Equal(4e-4, Number(Assert.Single(plan.Findings, f => f.Code == "plan.tilt.unreached"), "remainingSpread"), 1e-12);

        TrammingPlan high = supports.Plan(Tilted, new TrammingOptions { TargetHeight = Mm(1) });
        double[] expected = [1 + .02 - .2, 1 - .22 - .2];
        Assert.All(expected, (change, i) => Assert.Equal(change, high.Moves[i].HeightChange.Millimeters(), 1e-12));
    }

    [Fact]
    public void MovesAreWholeSteps()
    {
        var drive = LeadScrew.Of(Measured.Of(Mm(8), Mm(.08)), microsteps: 16);
        BedSupports Stand(bool full) => BedSupports.Of(
            PoweredScrew.At("a", Mm(0), Mm(0), drive, full), PoweredScrew.At("b", Mm(200), Mm(0), drive, full), PoweredScrew.At("c", Mm(100), Mm(200), drive, full));
        PoweredMove fine = Stand(false).Plan(Tilted, new TrammingOptions { KeepStill = "a" }).Moves[1];
        PoweredMove coarse = Stand(true).Plan(Tilted, new TrammingOptions { KeepStill = "a" }).Moves[2];

        Assert.Equal(-80, fine.Steps); // -.2 mm by 2.5 um
        Assert.Equal(-12, coarse.Steps); // -.5 mm by 40 um is -12.5, to even
        Assert.Equal(-192, coarse.Microsteps);
        Assert.Equal(-.02, coarse.Remainder.Millimeters, 1e-12);
        Assert.StartsWith("c: -12 full steps, -0.500", coarse.ToString(), StringComparison.Ordinal);
        Assert.StartsWith("b: -80 microsteps, -0.200", fine.ToString(), StringComparison.Ordinal);

        // rounding to whole steps of 40 um, rectangular, and 1 % of the lead are in the height at the screw: the noise of the probe is the same for both
        double Variance(bool full) => Math.Pow(Stand(full).Plan(Tilted).PredictedPlane.HeightAt(Mm(0), Mm(0)).UncertaintyMillimeters(), 2);
        Assert.Equal(((.04 * .04) - (.0025 * .0025)) / 12, Variance(true) - Variance(false), 1e-12);
    }

    [Fact]
    public void HandAndMotorStandSideBySide()
    {
        var supports = BedSupports.Of(PoweredScrew.At("a", Mm(0), Mm(0), EightMillimeters), Screw("b", 200, 0), Screw("c", 100, 200));
        TrammingPlan plan = supports.Plan(Tilted);
        Assert.Equal(["b", "c"], plan.Turns.Select(turn => turn.Name));
        Assert.Equal("a", Assert.Single(plan.Moves).Name);
        Assert.Equal(["a", "b", "c"], plan.HeightChanges.Inputs.Select((_, i) => supports.Supports[i].Name));
        Assert.Equal(0, plan.HeightChanges.Inputs.Sum(input => input.SiValue), 1e-15);
        Assert.Equal(2, supports.Screws.Count);
        Assert.Throws<ArgumentException>(() => TrammingSequence.Of(supports, [TrammingPass.First([.. Tilted.Points])]));
    }

    [Fact]
    public void AScrewFarFromTheProbedPlacesIsDoubted()
    {
        TrammingPlan plan = BedSupports.Of(Screw("a", 0, 0), Screw("b", 200, 0), Screw("c", 100, 2000)).Plan(Tilted);
        Finding finding = Assert.Single(plan.Findings, f => f.Code == "plan.support.away");
        Assert.Equal(1.8, Number(finding, "outside"), 1e-12);
        Assert.DoesNotContain(BedSupports.Of(Screw("a", -30, -30), Screw("b", 230, 0), Screw("c", 100, 250)).Plan(Tilted).Findings, f => f.Code == "plan.support.away");
    }

    [Fact]
    public void SupportsThatCannotTiltABedAreRefused()
    {
        FixedSupport post = FixedSupport.At("post", Mm(0), Mm(0));
        Refused("in line", "one line", post, Screw("b", 100, 0), Screw("c", 200, 0));
        Refused("powered in line", "one line", PoweredScrew.At("a", Mm(0), Mm(0), EightMillimeters), Screw("b", 100, 0), Screw("c", 200, .5));
        Refused("nothing to turn", "adjusted", post, Rear);
        Refused("held fast", "hold the bed", post, Rear, Screw("s", 100, 100));
        Refused("on the hinge", "stands on the line", Rear, Screw("s", 100, 200));
        Refused("one place", "1 mm", post, Screw("s", 0, .5));
        Refused("one place", "1 mm", Screw("r", 0, 0), Screw("s", 0, .5));
        Refused("twice", "'post'", post, Screw("post", 100, 0), Screw("c", 100, 100));
        Assert.Throws<ArgumentException>(() => BedHinge.Between("h", Mm(0), Mm(0), Mm(.5), Mm(0)));
        Assert.Throws<ArgumentException>(() => FixedSupport.At(string.Empty, Mm(0), Mm(0)));
        Assert.Throws<ArgumentNullException>(() => PoweredScrew.At("a", Mm(0), Mm(0), null!));
        Assert.Throws<ArgumentOutOfRangeException>(() => LeadScrew.Of(Measured.Exact(Mm(0))));
        Assert.Throws<ArgumentOutOfRangeException>(() => ScrewThread.FromLead(Mm(0)));

        static void Refused(string why, string says, params BedSupport[] supports) =>
            Assert.Contains(says, Assert.Throws<ArgumentException>(() => BedSupports.Of(supports)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OptionsThatTheSupportsDoNotAllowAreRefused()
    {
        var hinged = BedSupports.Of(Screw("front", 100, 0), Rear);
        Assert.Throws<ArgumentException>(() => hinged.Plan(Tilted, new TrammingOptions { TargetHeight = Mm(1) }));
        Assert.Throws<ArgumentException>(() => hinged.Plan(Tilted, new TrammingOptions { LeastTotalTurning = true }));
        Assert.Throws<ArgumentException>(() => hinged.Plan(Tilted, new TrammingOptions { KeepStill = "front" }));
        Assert.Contains("cannot be adjusted", Assert.Throws<ArgumentException>(() => hinged.Plan(Tilted, new TrammingOptions { KeepStill = "rear" })).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => hinged.Plan(Tilted, new TrammingOptions { RemoveTwist = true }));
    }

    [Fact]
    public void LimitsHoldAnchoredBedsToo()
    {
        // .4 mm are needed at the front, .3 allowed: .1 is left, and the hinge keeps its height
        TrammingPlan plan = BedSupports.Of(Screw("front", 100, 0), Rear).Plan(Tilted, new TrammingOptions { Limits = [TravelLimit.Between("front", Mm(-1), Mm(.3))] });
        Assert.Equal(.3, plan.Turns[0].HeightChange.Millimeters(), 1e-15);
        Assert.Equal(.0005, plan.PredictedPlane.SlopeY.SiValue, 1e-12);
        Assert.Contains(plan.Findings, f => f.Code == "plan.limits.bind");
    }

    [Fact]
    public void SupportsDescribeThemselves()
    {
        Assert.Equal("rear, hinge, from (0, 200) to (200, 200) mm", Rear.ToString());
        Assert.Equal("post, fixed, at (1, 2) mm", FixedSupport.At("post", Mm(1), Mm(2)).ToString());
        Assert.Equal((1, 2), (FixedSupport.At("post", Mm(1), Mm(2)).X.Millimeters, FixedSupport.At("post", Mm(1), Mm(2)).Y.Millimeters));
        Assert.Equal((0, 200, 200, 200), (Rear.FirstX.Millimeters, Rear.FirstY.Millimeters, Rear.SecondX.Millimeters, Rear.SecondY.Millimeters));
        PoweredScrew screw = PoweredScrew.At("left", Mm(3), Mm(4), EightMillimeters, wholeFullSteps: true);
        Assert.Equal("left at (3, 4) mm", screw.ToString());
        Assert.Equal(.04, screw.Step.Millimeters(), 1e-12);
        Assert.Equal((3, 4), (screw.X.Millimeters, screw.Y.Millimeters));
    }

    private static double Number(Finding finding, string name) => finding.Numbers.Single(number => number.Name == name).Value;
}
