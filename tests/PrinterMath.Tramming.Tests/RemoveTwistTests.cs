using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class RemoveTwistTests
{
    private static readonly PlaneFitOptions FourMicrons = new() { ProbeRepeatability = Length.FromMicrometers(4) };
    private static readonly TrammingOptions Remove = new() { RemoveTwist = true };

    private static BedSupports Four => BedSupports.Of(Screw("a", 0, 0), Screw("b", 200, 0), Screw("c", 200, 200), Screw("d", 0, 200));

    // corners (0, 0) and (200, 200) stand .05 high, the others low, on a tilt of .2 mm along x
    private static PlaneFit Twisted => PlaneFit.Fit(Grid(100, 3, 3, (x, y) => (.001 * x) + (.05 * (x - 100) * (y - 100) / 1e4)), FourMicrons);

    [Fact]
    public void TheTwistIsTurnedOutOfThePlane()
    {
        TrammingPlan plan = Four.Plan(Twisted, Remove);
        double[] expected = [.1 - .05, -.1 + .05, -.1 - .05, .1 + .05];
        Assert.All(expected, (change, i) => Assert.Equal(change, plan.Turns[i].HeightChange.Millimeters(), 1e-12));
        Assert.Equal(0, plan.RemainingTwist!.Value.SiValue);
        Assert.Equal(.004 / 2, plan.RemainingTwist.Value.UncertaintyMillimeters(), 1e-12); // sum of squares of the saddle over nine places: 4
        Assert.Contains(plan.Findings, f => f.Code == "twist.significant" && f.Message.Contains("take it out", StringComparison.Ordinal));

        // kept out: the twist stays as it is
        TrammingPlan kept = Four.Plan(Twisted);
        Assert.Equal(.1, kept.Turns[0].HeightChange.Millimeters(), 1e-12);
        Assert.Equal(.05, kept.RemainingTwist!.Value.Millimeters(), 1e-12);
        Assert.Contains(kept.Findings, f => f.Code == "twist.significant" && f.Message.Contains("kept out", StringComparison.Ordinal));
    }

    [Fact]
    public void ItsUncertaintyIsThatOfTheJointFit()
    {
        // heights at the corners: u^2 = s^2 (1/9 + 1/6 + 1/6 + 1/4), 6 units of 100 mm squared along each axis, 4 of the saddle; about their mean 1/6 + 1/6 + 1/4 remain
        TrammingPlan plan = Four.Plan(Twisted, Remove);
        Assert.Equal(.004 * Math.Sqrt(7.0 / 12), plan.Turns[0].HeightChange.UncertaintyMillimeters(), 1e-12);
        Assert.Equal(.004 * Math.Sqrt((1.0 / 9) + (7.0 / 12)), plan.PredictedPlane.HeightAt(Mm(0), Mm(0)).UncertaintyMillimeters(), 1e-12);

        // without a stated repeatability the scatter is that about plane and saddle: here none but rounding and what is added
        double[] scatter = [1, -1, 0, 0, 1, -1, 1, 0, -1];
        int k = 0;
        PlaneFit plane = PlaneFit.Fit(Grid(100, 3, 3, (x, y) => (.05 * (x - 100) * (y - 100) / 1e4) + (.001 * scatter[k++])));
        TrammingPlan removed = Four.Plan(plane, Remove), kept = Four.Plan(plane);
        Assert.Equal(5, removed.Turns[0].HeightChange.DegreesOfFreedom);
        Assert.Equal(6, kept.Turns[0].HeightChange.DegreesOfFreedom);
        Assert.True(removed.Turns[0].HeightChange.SiStandardUncertainty < kept.Turns[0].HeightChange.SiStandardUncertainty / 10); // a plane alone takes the twist for scatter
    }

    [Fact]
    public void AStillScrewIsStill()
    {
        TrammingPlan plan = Four.Plan(Twisted, Remove with { KeepStill = "b" });
        double[] expected = [.1, 0, -.1, .2];
        Assert.All(expected, (change, i) => Assert.Equal(change, plan.Turns[i].HeightChange.Millimeters(), 1e-12));
        Assert.Equal(0, plan.HeightChanges.Covariance(1, 3));
        Assert.Equal(0, plan.Turns[1].HeightChange.SiStandardUncertainty);
    }

    [Fact]
    public void LimitsHoldWithTheTwistRemoved()
    {
        // d needs .15: with .1 all come down by .05
        TrammingPlan plan = Four.Plan(Twisted, Remove with { Limits = [TravelLimit.Between("d", Mm(-1), Mm(.1))] });
        double[] expected = [0, -.1, -.2, .1];
        Assert.All(expected, (change, i) => Assert.Equal(change, plan.Turns[i].HeightChange.Millimeters(), 1e-12));
    }

    [Fact]
    public void SixSupportsHaveASaddleToo()
    {
        // four corners and the middles of two sides: the saddle along the sides is 1, -1, 1, -1 at the corners and 0 between
        var six = BedSupports.Of(Screw("a", 0, 0), Screw("b", 200, 0), Screw("c", 200, 200), Screw("d", 0, 200), Screw("e", 100, 0), Screw("f", 100, 200));
        TrammingPlan plan = six.Plan(Twisted, Remove);
        Assert.Equal(.05, plan.Twist!.Amplitude.Millimeters(), 1e-12);
        double[] expected = [.05, -.05, -.15, .15, 0, 0];
        Assert.All(expected, (change, i) => Assert.Equal(change, plan.Turns[i].HeightChange.Millimeters(), 1e-12));
        TrammingPlan turned = BedSupports.Of([.. Enumerable.Range(0, 8).Select(i => Screw($"s{i}", 100 + (100 * Math.Cos(i * Math.PI / 4)), 100 + (100 * Math.Sin(i * Math.PI / 4))))]).Plan(Twisted);
        Assert.True(turned.Twist!.TryGetAmplitude(out _)); // eight on a circle: any direction of the saddle is as good, one is taken
    }

    [Fact]
    public void ATwistThatIsNotKnownIsNotRemoved()
    {
        var points = new List<ProbePoint> { Point(0, 100, .1), Point(50, 100, .11), Point(100, 100, .105), Point(100, 50, .1), Point(100, 0, .09), Point(200, 100, .1) };
        TrammingPlan plan = Four.Plan(PlaneFit.Fit(points), Remove);
        Assert.False(plan.IsDeterminate);
        Assert.Equal("twist.notProbed", Assert.Throws<IndeterminateException>(() => plan.Turns).Finding!.Code);
        Assert.Null(plan.RemainingTwist);
        Assert.True(Four.Plan(PlaneFit.Fit(points)).IsDeterminate);
    }

    [Fact]
    public void ThreeScrewsCannotRemoveATwist()
    {
        var three = BedSupports.Of(Screw("a", 0, 0), Screw("b", 200, 0), Screw("c", 200, 200));
        Assert.Throws<ArgumentException>(() => three.Plan(Twisted, Remove));
        Assert.Null(three.Plan(Twisted).RemainingTwist);
    }

    [Fact]
    public void ASequenceRefusesWhatItDoesNotKnow()
    {
        TrammingPass pass = TrammingPass.First([.. Twisted.Points]);
        Assert.Throws<ArgumentException>(() => TrammingSequence.Of(Four, [pass], new TrammingSequenceOptions { Next = Remove }));
        Assert.Throws<ArgumentException>(() => TrammingSequence.Of(Four, [pass], new TrammingSequenceOptions { Next = new TrammingOptions { Limits = [TravelLimit.Between("a", Mm(-1), Mm(1))] } }));
    }
}
