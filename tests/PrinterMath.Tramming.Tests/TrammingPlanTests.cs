using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class TrammingPlanTests
{
    private static readonly PlaneFitOptions FourMicrons = new() { ProbeRepeatability = Length.FromMicrometers(4) };

    private static BedSupports Three => BedSupports.Of(Screw("left", 0, 0), Screw("right", 200, 0), Screw("rear", 100, 200));

    private static BedSupports Four => BedSupports.Of(Screw("a", 0, 0), Screw("b", 200, 0), Screw("c", 200, 200), Screw("d", 0, 200));

    [Fact]
    public void AStillScrewIsExactlyStill()
    {
        TrammingPlan plan = Three.Plan(PlaneFit.Fit(ReferenceBeds.P9()), new TrammingOptions { KeepStill = "right" });
        ScrewTurn still = plan.Turns[1];

        Assert.Equal(0, still.HeightChange.SiValue);
        Assert.Equal(0, still.HeightChange.SiStandardUncertainty);
        Assert.Equal(TurnSense.None, still.Sense);
        Assert.False(still.WorthTurning);
        Assert.Equal(0, plan.HeightChanges.Covariance(1, 0));
    }

    [Fact]
    public void ADifferenceOfHeightsIsCorrelated()
    {
        // h_right - h_left = 200 mm * b whatever the mean height: u = 200 mm * u(b), less than two independent heights would give
        PlaneFit plane = PlaneFit.Fit(ReferenceBeds.P9());
        ScrewTurn turn = Three.Plan(plane, new TrammingOptions { KeepStill = "right" }).Turns[0];

        Assert.Equal(.2 * plane.SlopeX.SiValue, turn.HeightChange.SiValue, 1e-15);
        Assert.Equal(.2 * plane.SlopeX.SiStandardUncertainty, turn.HeightChange.SiStandardUncertainty, 1e-15);
    }

    [Fact]
    public void WithoutAReferenceChangesAddUpToZero()
    {
        JointEstimate changes = Four.Plan(PlaneFit.Fit(ReferenceBeds.P9())).HeightChanges;
        Assert.Equal(0, changes.Inputs.Sum(input => input.SiValue), 1e-15);
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(0, Enumerable.Range(0, 4).Sum(j => changes.Covariance(i, j)), 1e-22); // 1e-12 of the variances
        }
    }

    [Fact]
    public void SenseFollowsWhatClockwiseDoes()
    {
        PlaneFit plane = PlaneFit.Fit(Grid(100, 3, 3, (x, _) => .001 * x), FourMicrons);
        ScrewThread m3 = ScrewThread.IsoCoarse("M3");
        var supports = BedSupports.Of(
            AdjustingScrew.At("left", Mm(0), Mm(0), m3, BedMotion.Raises), Screw("right", 200, 0), Screw("rear", 100, 200));
        IReadOnlyList<ScrewTurn> turns = supports.Plan(plane).Turns;

        Assert.Equal(.1, turns[0].HeightChange.Millimeters(), 1e-12);
        Assert.Equal(TurnSense.Clockwise, turns[0].Sense);
        Assert.Equal(-.1, turns[1].HeightChange.Millimeters(), 1e-12);
        Assert.Equal(TurnSense.Clockwise, turns[1].Sense);
        Assert.Equal(.2, turns[0].Turns.SiValue, 1e-12);
        Assert.Equal(72, turns[0].Rotation.Value.Degrees, 1e-9);
        Assert.True(turns[0].WorthTurning);
        Assert.False(turns[2].WorthTurning);
    }

    [Fact]
    public void TheLeadsUncertaintyIsInTheTurns()
    {
        PlaneFit plane = PlaneFit.Fit(Grid(100, 3, 3, (x, _) => .001 * x), new PlaneFitOptions { ProbeRepeatability = Length.FromNanometers(1) });
        ScrewThread loose = ScrewThread.FromLead(Measured.Of(Mm(.5), Mm(.01)));
        AdjustingScrew At(string name, double x, double y) => AdjustingScrew.At(name, Mm(x), Mm(y), loose, BedMotion.Lowers);
        TrammingPlan plan = BedSupports.Of(At("l", 0, 0), At("r", 200, 0), At("b", 100, 200)).Plan(plane, new TrammingOptions { KeepStill = "l" });

        Assert.Equal(.4 * .02, plan.Turns[1].Turns.SiStandardUncertainty, 1e-6); // 2 % of .4 turns; the probe's share is 1e-6
        Assert.Equal(.2 * .02, plan.PredictedPlane.HeightAt(Mm(200), Mm(0)).UncertaintyMillimeters(), 1e-5);
        Assert.Equal(0, plan.PredictedPlane.HeightAt(Mm(0), Mm(0)).UncertaintyMillimeters(), 1e-5);
    }

    [Fact]
    public void SmallTurnsAreLeft()
    {
        PlaneFit plane = PlaneFit.Fit(Grid(100, 3, 3, (x, _) => 2.5e-5 * x), new PlaneFitOptions { ProbeRepeatability = Length.FromNanometers(10) });

        Assert.True(Three.Plan(plane).NothingWorthTurning); // 2.5 um is 1.8 degrees of M3
        Assert.False(Three.Plan(plane, new TrammingOptions { SmallestUsefulTurn = Angle.FromDegrees(1) }).NothingWorthTurning);
    }

    [Fact]
    public void TheTwistStaysOutOfTheTurns()
    {
        // saddle centred on the screws: no tilt in it
        TrammingPlan plan = Four.Plan(PlaneFit.Fit(Grid(100, 3, 3, (x, y) => .05 * (x - 100) * (y - 100) / 1e4), FourMicrons));

        Assert.All(plan.Turns, turn => Assert.Equal(0, turn.HeightChange.Millimeters(), 1e-12));
        Assert.Equal(.05, plan.Twist!.Amplitude.Millimeters(), 1e-12); // corners (0, 0) and (200, 200) stand high
        Assert.Null(Three.Plan(PlaneFit.Fit(ReferenceBeds.P9())).Twist);
    }

    [Fact]
    public void ARhombusOfScrewsCarriesItsOwnSaddle()
    {
        var supports = BedSupports.Of(Screw("front", 100, 0), Screw("right", 200, 100), Screw("rear", 100, 200), Screw("left", 0, 100));
        PlaneFit plane = PlaneFit.Fit(Grid(50, 5, 5, (x, y) => .03 * (((y - 100) * (y - 100)) - ((x - 100) * (x - 100))) / 1e4), FourMicrons);

        Assert.Equal(.03, supports.Plan(plane).Twist!.Amplitude.Millimeters(), 1e-12); // front and rear high by t, left and right low by t
    }

    [Fact]
    public void AnyOtherConvexFourCarriesTheNullVectorOfTheirHeights()
    {
        // heights at four screws = plane + t n, n their null vector, probed at the screws alone: t is recovered whatever the quadrilateral
        double[] x = [0, 210, 180, 30], y = [10, 0, 170, 220];
        double[] n = NullVector(x, y);
        ProbePoint[] points = [.. Enumerable.Range(0, 4).Select(i => Point(x[i], y[i], .1 + (.0003 * x[i]) - (.0002 * y[i]) + (.04 * n[i]), .004))];
        var supports = BedSupports.Of([.. Enumerable.Range(0, 4).Select(i => Screw($"s{i}", x[i], y[i]))]);

        Assert.Equal(.04, supports.Plan(PlaneFit.Fit(points)).Twist!.Amplitude.Millimeters(), 1e-10);
    }

    [Fact]
    public void PointsThatDoNotCarryTheTwistSaySo()
    {
        var points = new List<ProbePoint> { Point(0, 100, .1), Point(50, 100, .11), Point(100, 100, .105), Point(100, 50, .1), Point(100, 0, .09), Point(200, 100, .1) };
        TrammingPlan plan = Four.Plan(PlaneFit.Fit(points));

        Assert.False(plan.Twist!.TryGetAmplitude(out _));
        Assert.Equal("twist.notProbed", Assert.Throws<IndeterminateException>(() => plan.Twist.Amplitude).Finding!.Code);
        Assert.Equal(4, plan.Turns.Count);
    }

    [Fact]
    public void AScrewInsideTheOthersHasNoSaddle()
    {
        var supports = BedSupports.Of(Screw("a", 0, 0), Screw("b", 200, 0), Screw("c", 100, 200), Screw("middle", 100, 70));
        Assert.Contains(supports.Plan(PlaneFit.Fit(ReferenceBeds.P9())).Findings, f => f.Code == "twist.noSaddle");
    }

    [Fact]
    public void AnIndeterminatePlaneMakesAnIndeterminatePlan()
    {
        TrammingPlan plan = Four.Plan(PlaneFit.Fit([Point(0, 0, 0), Point(100, 100, .1), Point(200, 200, .2)]));

        Assert.Equal("plane.collinear", Assert.Single(plan.Findings).Code);
        Assert.False(plan.TryGetTurns(out IReadOnlyList<ScrewTurn> turns));
        Assert.Empty(turns);
        Assert.Throws<IndeterminateException>(() => plan.Turns);
        Assert.Throws<IndeterminateException>(() => plan.PredictedPlane);
        Assert.Throws<IndeterminateException>(() => plan.HeightChanges);
        Assert.Throws<IndeterminateException>(() => plan.Judge(Tolerance.AtMost(Mm(.1))));
    }

    [Theory]
    [InlineData(.3, Conclusion.Within)]
    [InlineData(.1, Conclusion.Outside)]
    [InlineData(.19, Conclusion.Undecided)]
    public void AVerdictOnTheSpread(double limit, Conclusion expected)
    {
        // spread .18667 mm = 180 mm (5.926e-4 + 4.444e-4), u = .0178 mm
        Verdict<Length> verdict = Three.Plan(PlaneFit.Fit(ReferenceBeds.P9())).Judge(Tolerance.AtMost(Mm(limit)));

        Assert.Equal(expected, verdict.Conclusion);
        Assert.Equal(expected == Conclusion.Undecided, verdict.Limitation is not null);
    }

    [Fact]
    public void AnUndecidedVerdictSaysHowManyReadingsDecide()
    {
        Verdict<Length> verdict = Three.Plan(PlaneFit.Fit(ReferenceBeds.P9())).Judge(Tolerance.AtMost(Mm(.205)));

        Assert.Equal(Conclusion.Undecided, verdict.Conclusion);
        Assert.Equal(LimitationKind.Repeat, verdict.Limitation!.Kind);
        Assert.True(verdict.Limitation.Observations > 9);
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        PlaneFit plane = PlaneFit.Fit(ReferenceBeds.P9());
        Assert.Throws<ArgumentException>(() => BedSupports.Of(Screw("a", 0, 0)));
        Assert.Throws<ArgumentException>(() => BedSupports.Of(Screw("a", 0, 0), Screw("b", 1, 0)));
        Assert.Throws<ArgumentException>(() => BedSupports.Of([.. Enumerable.Range(0, 65).Select(i => Screw($"s{i}", i, i * i))]));
        Assert.Throws<ArgumentNullException>(() => BedSupports.Of(Screw("a", 0, 0), Screw("b", 1, 0), null!));
        ArgumentException twice = Assert.Throws<ArgumentException>(() => BedSupports.Of(Screw("a", 0, 0), Screw("b", 100, 0), Screw("a", 0, 100)));
        Assert.Contains("'a'", twice.Message, StringComparison.Ordinal);
        ArgumentException line = Assert.Throws<ArgumentException>(() => BedSupports.Of(Screw("a", 0, 0), Screw("b", 100, 100), Screw("c", 200, 200.1)));
        Assert.Contains("one line", line.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => BedSupports.Of(Screw("a", 0, 0), Screw("b", 0, 0), Screw("c", 100, 0)));
        Assert.Throws<ArgumentException>(() => Three.Plan(plane, new TrammingOptions { KeepStill = "front" }));
        Assert.Throws<ArgumentException>(() => Three.Plan(plane, new TrammingOptions { KeepStill = "left", TargetHeight = Mm(1) }));
        Assert.ThrowsAny<ArgumentException>(() => Three.Plan(plane, new TrammingOptions { TargetHeight = Mm(double.NegativeInfinity) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Three.Plan(plane, new TrammingOptions { SmallestUsefulTurn = Angle.FromDegrees(-1) }));
        Assert.Throws<ArgumentNullException>(() => Three.Plan(null!));
        Assert.Throws<ArgumentNullException>(() => Three.Plan(plane).Judge(null!));
    }

    /// <summary>Null vector of [1 x y]ᵀ by elimination, first entry positive, largest 1.</summary>
    private static double[] NullVector(double[] x, double[] y)
    {
        // solve n0 = 1: sum n = 0, sum n x = 0, sum n y = 0 for n1, n2, n3 relative to screw 3
        double a1 = x[1] - x[3], a2 = x[2] - x[3], ra = -(x[0] - x[3]);
        double b1 = y[1] - y[3], b2 = y[2] - y[3], rb = -(y[0] - y[3]);
        double determinant = (a1 * b2) - (a2 * b1);
        double n1 = ((ra * b2) - (a2 * rb)) / determinant;
        double n2 = ((a1 * rb) - (ra * b1)) / determinant;
        double[] n = [1, n1, n2, -1 - n1 - n2];
        double largest = n.Max(Math.Abs);
        return [.. n.Select(value => value / largest)];
    }
}
