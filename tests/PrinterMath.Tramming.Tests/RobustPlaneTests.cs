using PrinterMath.Measurement;
using PrinterMath.Tramming.Tests.Simulation;
using UnitsNet;
using Xunit.Abstractions;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class RobustPlaneTests(ITestOutputHelper output)
{
    private const double Repeatability = .005;

    [Theory]
    [InlineData(PlaneMethod.Huber)]
    [InlineData(PlaneMethod.LeastTrimmedSquares)]
    public void OneWrongReadingDoesNotTiltThePlane(PlaneMethod method)
    {
        List<ProbePoint> points = ReferenceBeds.P25();
        PlaneFit clean = PlaneFit.Fit(points);
        points[24] = Point(200, 200, 2.168); // a corner 2 mm too high
        PlaneFit robust = PlaneFit.Fit(points, new PlaneFitOptions { Method = method });
        PlaneFit squares = PlaneFit.Fit(points);

        Assert.Equal([24], robust.Outliers);
        Assert.True(robust.Residuals[24].RobustnessWeight < .05);
        Assert.Equal(clean.SlopeX.SiValue, robust.SlopeX.SiValue, 2 * clean.SlopeX.SiStandardUncertainty);
        Assert.True(Math.Abs(clean.SlopeX.SiValue - squares.SlopeX.SiValue) > 10 * clean.SlopeX.SiStandardUncertainty);
        Assert.True(robust.SlopeX.SiStandardUncertainty < .1 * squares.SlopeX.SiStandardUncertainty);
    }

    [Fact]
    public void EightWrongReadingsOfTwentyFiveAreSetAside()
    {
        List<ProbePoint> points = ReferenceBeds.P25();
        PlaneFit clean = PlaneFit.Fit(points);
        for (int i = 17; i < 25; i++)
        {
            points[i] = ProbePoint.FromMeters(points[i].XMeters, points[i].YMeters, points[i].ZMeters + 5e-4); // rear rows, all to one side
        }

        PlaneFit trimmed = PlaneFit.Fit(points, new PlaneFitOptions { Method = PlaneMethod.LeastTrimmedSquares });

        Assert.Equal(Enumerable.Range(17, 8), trimmed.Outliers);
        Assert.Equal(14, trimmed.ResidualDegreesOfFreedom);
        Assert.Equal(clean.SlopeY.SiValue, trimmed.SlopeY.SiValue, 4 * clean.SlopeY.SiStandardUncertainty);
    }

    [Fact]
    public void ARobustPlaneServesAPlan()
    {
        List<ProbePoint> points = Grid(50, 5, 5, (x, y) => .001 * x, .004);
        points[12] = Point(100, 100, 1, .004);
        PlaneFit plane = PlaneFit.Fit(points, new PlaneFitOptions { Method = PlaneMethod.Huber });
        TrammingPlan plan = BedSupports.Of(Screw("l", 0, 0), Screw("r", 200, 0), Screw("b", 100, 200)).Plan(plane, new TrammingOptions { KeepStill = "l" });

        Assert.Equal(-.2, plan.Turns[1].HeightChange.Millimeters(), .01);
    }

    [Fact]
    public void ExactFitsNeedAStatedRepeatability()
    {
        List<ProbePoint> points = Grid(50, 5, 5, (x, y) => .001 * x);
        points[12] = Point(100, 100, 1);
        foreach (PlaneMethod method in new[] { PlaneMethod.Huber, PlaneMethod.LeastTrimmedSquares })
        {
            PlaneFit unknown = PlaneFit.Fit(points, new PlaneFitOptions { Method = method });
            PlaneFit stated = PlaneFit.Fit(points, new PlaneFitOptions { Method = PlaneMethod.LeastTrimmedSquares, ProbeRepeatability = Mm(.004) });

            Assert.Equal("plane.uncertainty.unknown", Assert.Single(unknown.Findings).Code);
            Assert.Equal(.001, stated.SlopeX.SiValue, 1e-12);
            Assert.Equal([12], stated.Outliers);
        }
    }

    [Theory]
    [InlineData(PlaneMethod.Huber)]
    [InlineData(PlaneMethod.LeastTrimmedSquares)]
    public void ThreePointsAreFittedExactly(PlaneMethod method)
    {
        PlaneFit plane = PlaneFit.Fit([Point(0, 0, 0), Point(100, 0, .1), Point(0, 100, 0)], new PlaneFitOptions { Method = method, ProbeRepeatability = Mm(.004) });
        Assert.Equal(.001, plane.SlopeX.SiValue, 1e-12);
        Assert.Equal(PlaneFit.Fit([Point(0, 0, 0), Point(100, 0, .1), Point(0, 100, 0)]).Findings.Select(f => f.Code), PlaneFit.Fit([Point(0, 0, 0), Point(100, 0, .1), Point(0, 100, 0)], new PlaneFitOptions { Method = method }).Findings.Select(f => f.Code));
    }

    // Huber's slopes and heights: 93 to 97 % where n - p >= 30 (side 6 and 7). Few points, and readings chosen by their own fit (trimmed): below 95 %, as the documentation of the method says, but not below 86 %.
    [Theory]
    [InlineData(PlaneMethod.Huber, 5, NoiseKind.Normal, .91, .98)]
    [InlineData(PlaneMethod.Huber, 7, NoiseKind.Normal, .93, .97)]
    [InlineData(PlaneMethod.Huber, 7, NoiseKind.Laplace, .93, .97)]
    [InlineData(PlaneMethod.Huber, 7, NoiseKind.Uniform, .93, .97)]
    [InlineData(PlaneMethod.LeastTrimmedSquares, 5, NoiseKind.Normal, .86, .97)]
    [InlineData(PlaneMethod.LeastTrimmedSquares, 6, NoiseKind.Normal, .88, .97)]
    public void IntervalsHoldTheTruth(PlaneMethod method, int side, NoiseKind kind, double lowest, double highest)
    {
        var height = new CoverageCheck($"{method} height");
        int falseAlarms = 0;
        double squares = 0, robust = 0;
        for (int seed = 1; seed <= CoverageCheck.Cases; seed++)
        {
            var noise = new Noise(seed, kind, Repeatability);
            List<ProbePoint> points = Grid(240.0 / (side - 1), side, side, (x, y) => .4 + (.001 * x) - (.0004 * y) + noise.Next());
            PlaneFit fit = PlaneFit.Fit(points, new PlaneFitOptions { Method = method });
            Measured<Length> corner = fit.HeightAt(Mm(20), Mm(30));
            height.Add(corner.Interval().Contains(Mm(.408)), corner.SiStandardUncertainty);
            falseAlarms += fit.Outliers.Count > 0 ? 1 : 0;
            squares += Math.Pow(PlaneFit.Fit(points).HeightAt(Mm(20), Mm(30)).Millimeters() - .408, 2);
            robust += Math.Pow(corner.Millimeters() - .408, 2);
        }

        output.WriteLine($"{height.Report}, false outliers {falseAlarms} in {CoverageCheck.Cases}, RMSE over that of least squares {Math.Sqrt(robust / squares):0.000}");
        height.Assert(lowest, highest);
    }

    [Theory]
    [InlineData(PlaneMethod.Huber, 3)]
    [InlineData(PlaneMethod.Huber, 6)]
    [InlineData(PlaneMethod.LeastTrimmedSquares, 3)]
    [InlineData(PlaneMethod.LeastTrimmedSquares, 11)]
    public void ReadingsThatLieExactlyOnAPlaneWinWhenTheyAreMoreThanHalf(PlaneMethod method, int wrong)
    {
        // 25 readings: all but the wrong ones on z = 0.001 x - 0.002 y to the last digit; the wrong ones spread over the bed, each with its own error
        List<ProbePoint> points = Grid(50, 5, 5, (x, y) => (.001 * x) - (.002 * y), .004);
        int[] places = [.. Enumerable.Range(0, wrong).Select(i => i * 7 % 25).Order()];
        foreach (int i in places)
        {
            points[i] = Point(points[i].X.Millimeters, points[i].Y.Millimeters, points[i].Z.Millimeters + .5 + (.07 * i), .004);
        }

        PlaneFit plane = PlaneFit.Fit(points, new PlaneFitOptions { Method = method, WidenForMisfit = false });
        Assert.Equal(.001, plane.SlopeX.SiValue, 1e-9);
        Assert.Equal(-.002, plane.SlopeY.SiValue, 1e-9);
        Assert.Equal(places, plane.Outliers);
    }

    [Fact]
    public void ReadingsThatAgreeOnlyAlongALineLeaveTheTiltToOneAndNameTheOthers()
    {
        // nine readings along one line agree to a hair; three off it contradict each other by millimetres
        List<ProbePoint> points = [.. Enumerable.Range(0, 9).Select(i => Point(20 * i, 0, 1e-4 * (i % 2)))];
        points.AddRange([Point(10, 100, 5), Point(60, 110, -8), Point(120, 90, 20)]);
        PlaneFit plane = PlaneFit.Fit(points, new PlaneFitOptions { Method = PlaneMethod.LeastTrimmedSquares, ProbeRepeatability = Mm(.004) });

        Assert.Equal(2, plane.Outliers.Count);
        PlaneResidual held = Assert.Single(plane.Residuals, r => r.Index >= 9 && r.RobustnessWeight > 0);
        Assert.Equal(1, held.Leverage, 1e-9); // the plane passes through it, whatever it says
    }

    [Fact]
    public void RepeatedReadingsAtTwoPlacesAndOneBadThirdAreExplainedOrFitted()
    {
        // three places, ten readings each, no scatter at two of them: whatever half is kept, it must not pass for a plane when it lies on a line
        List<ProbePoint> points = [];
        for (int i = 0; i < 10; i++)
        {
            points.AddRange([Point(0, 0, 0), Point(100, 0, .1), Point(0, 100, .3 * i)]);
        }

        foreach (PlaneMethod method in new[] { PlaneMethod.Huber, PlaneMethod.LeastTrimmedSquares })
        {
            PlaneFit plane = PlaneFit.Fit(points, new PlaneFitOptions { Method = method, ProbeRepeatability = Mm(.004) });
            Assert.True(plane.IsDeterminate || plane.Findings[0].Code == "plane.agreement.collinear");
            Assert.True(!plane.IsDeterminate || double.IsFinite(plane.HeightAt(Mm(50), Mm(50)).SiStandardUncertainty));
        }
    }
}
