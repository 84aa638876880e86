using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class PlaneFitTests
{
    private static readonly PlaneFitOptions FourMicrons = new() { ProbeRepeatability = Length.FromMicrometers(4) };

    [Fact]
    public void SignsAreAsDocumented()
    {
        // rises 0.1 mm over 100 mm along x and falls 0.2 mm over 100 mm along y
        PlaneFit plane = PlaneFit.Fit(Grid(50, 3, 3, (x, y) => (0.001 * x) - (0.002 * y)), FourMicrons);

        Assert.Equal(0.001, plane.SlopeX.SiValue, 1e-12);
        Assert.Equal(-0.002, plane.SlopeY.SiValue, 1e-12);
        Assert.Equal(Math.Atan(-0.002), plane.TiltAboutX.SiValue, 1e-12);
        Assert.Equal(-Math.Atan(0.001), plane.TiltAboutY.SiValue, 1e-12);
        Assert.True(plane.TryGetSteepestAscent(out Measured<double> slope, out Measured<Angle> direction));
        Assert.Equal(Math.Sqrt(5e-6), slope.SiValue, 1e-12);
        Assert.Equal(Math.Atan2(-2, 1), direction.SiValue, 1e-9);
    }

    [Fact]
    public void StatedRepeatabilityGivesTextbookUncertainty()
    {
        // z mean: sigma/sqrt(9); slope: sigma/sqrt(sum dx^2), sum dx^2 = 6 * 50^2 mm^2
        PlaneFit plane = PlaneFit.Fit(Grid(50, 3, 3, (_, _) => 0.2), FourMicrons);

        Assert.Equal(0.004 / 3, plane.HeightAt(Mm(50), Mm(50)).UncertaintyMillimeters(), 1e-12);
        Assert.Equal(0.004 / Math.Sqrt(15000), plane.SlopeX.SiStandardUncertainty, 1e-12);
        Assert.True(double.IsPositiveInfinity(plane.SlopeX.DegreesOfFreedom));
    }

    [Fact]
    public void APointOfDoubleUncertaintyCountsAQuarter()
    {
        // four readings of 1 um at one place equal one of 0.5 um there
        List<ProbePoint> many = [Point(0, 0, .01, .001), Point(100, 0, .02, .001), Point(0, 100, .05, .001), .. Enumerable.Repeat(Point(100, 100, .05, .001), 4)];
        List<ProbePoint> few = [Point(0, 0, .01, .001), Point(100, 0, .02, .001), Point(0, 100, .05, .001), Point(100, 100, .05, .0005)];
        var options = new PlaneFitOptions { WidenForMisfit = false };

        Measured<Length> a = PlaneFit.Fit(many, options).HeightAt(Mm(30), Mm(70));
        Measured<Length> b = PlaneFit.Fit(few, options).HeightAt(Mm(30), Mm(70));

        Assert.Equal(a.SiValue, b.SiValue, 1e-15);
        Assert.Equal(a.SiStandardUncertainty, b.SiStandardUncertainty, 1e-15);
    }

    [Fact]
    public void ThreePointsOfKnownUncertaintyFixAPlane()
    {
        PlaneFit plane = PlaneFit.Fit([Point(0, 0, 0), Point(100, 0, .1), Point(0, 100, 0)], FourMicrons);

        Measured<Length> corner = plane.HeightAt(Mm(100), Mm(100));
        Assert.Equal(0.1, corner.Millimeters(), 1e-12);
        Assert.Equal(0.004 * Math.Sqrt(3), corner.UncertaintyMillimeters(), 1e-12); // z2 + z3 - z1
        Assert.All(plane.Residuals, r => Assert.Null(r.Standardised));
        Assert.Throws<IndeterminateException>(() => plane.ResidualStandardDeviation);
    }

    [Fact]
    public void ThreePointsOfUnknownUncertaintySayNothingAboutScatter()
    {
        PlaneFit plane = PlaneFit.Fit([Point(0, 0, 0), Point(100, 0, .1), Point(0, 100, 0)]);

        AssertBlocked(plane, "plane.uncertainty.unknown");
    }

    [Fact]
    public void ReadingsWithoutScatterHideItBehindTheResolution() =>
        AssertBlocked(PlaneFit.Fit(Grid(50, 3, 3, (_, _) => 0.35)), "plane.uncertainty.unknown");

    [Fact]
    public void PointsInOneLineAreExplainedInTheTradesWords()
    {
        PlaneFit plane = PlaneFit.Fit([Point(0, 0, 0), Point(50, 50.02, .1), Point(100, 100, .2), Point(150, 150, .3)]);

        AssertBlocked(plane, "plane.collinear");
        Assert.Contains("4 probe points lie within 0.01 mm of one line", plane.Findings[0].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    [InlineData(1, -1)]
    public void PointsInAnyLineAreRefused(double dx, double dy) =>
        AssertBlocked(PlaneFit.Fit([.. Enumerable.Range(0, 5).Select(i => Point(i * 30 * dx, i * 30 * dy, .01 * i * i))]), "plane.collinear");

    [Fact]
    public void PointsInOnePlaceAreRefused() =>
        AssertBlocked(PlaneFit.Fit([.. Enumerable.Range(0, 5).Select(i => Point(10, 10, .01 * i))]), "plane.collinear");

    [Fact]
    public void MisfitWidensUnlessToldNotTo()
    {
        PlaneFit widened = PlaneFit.Fit(ReferenceBeds.P9(), new PlaneFitOptions { ProbeRepeatability = Mm(.001) });
        PlaneFit trusted = PlaneFit.Fit(ReferenceBeds.P9(), new PlaneFitOptions { ProbeRepeatability = Mm(.001), WidenForMisfit = false });

        Assert.Contains(widened.Findings, f => f.Code == "plane.misfit" && f.Severity == FindingSeverity.Caution);
        Assert.Contains(trusted.Findings, f => f.Code == "plane.misfit");
        Assert.Equal(PlaneFit.Fit(ReferenceBeds.P9()).SlopeX.SiStandardUncertainty, widened.SlopeX.SiStandardUncertainty, 1e-15);
        Assert.Equal(6, widened.SlopeX.DegreesOfFreedom);
        Assert.Equal(1e-6 / Math.Sqrt(6 * 0.09 * 0.09), trusted.SlopeX.SiStandardUncertainty, 1e-15);
    }

    [Fact]
    public void AnOutlierIsNamedAndKept()
    {
        List<ProbePoint> points = ReferenceBeds.P25();
        points[7] = Point(100, 50, .159 + .15);

        PlaneFit plane = PlaneFit.Fit(points);

        Assert.Equal([7], plane.Outliers);
        Assert.Equal(25, plane.Points.Count);
        Finding finding = Assert.Single(plane.Findings, f => f.Code == "plane.outlier");
        Assert.Contains("(100, 50) mm by 0.1", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void PartlyStatedUncertaintiesAreSetAsideAloud()
    {
        List<ProbePoint> points = ReferenceBeds.P9();
        points[0] = Point(20, 20, .02, .0001);

        PlaneFit plane = PlaneFit.Fit(points);

        Assert.Contains(plane.Findings, f => f.Code == "plane.uncertainties.mixed");
        Assert.Equal(PlaneFit.Fit(ReferenceBeds.P9()).SlopeX, plane.SlopeX);
    }

    [Fact]
    public void ALevelBedHasNoDirection()
    {
        PlaneFit plane = PlaneFit.Fit(Grid(50, 3, 3, (_, _) => 0.2), FourMicrons);

        Assert.Contains(plane.Findings, f => f.Code == "plane.level");
        Assert.False(plane.TryGetSteepestAscent(out _, out _));
        Assert.True(plane.HeightSpread.Interval().Contains(Length.Zero));
    }

    [Fact]
    public void SpreadOfASteepBedIsFirstOrder()
    {
        PlaneFit plane = PlaneFit.Fit(Grid(50, 3, 3, (x, y) => (0.001 * x) - (0.002 * y)), FourMicrons);

        Assert.Equal(0.3, plane.HeightSpread.Millimeters(), 1e-12);
        Assert.Equal(100 * Math.Sqrt(2) * 0.004 / Math.Sqrt(15000), plane.HeightSpread.UncertaintyMillimeters(), 1e-12);
        Assert.Equal(0.5, plane.HeightSpreadOver(Mm(100), Mm(200)).Millimeters(), 1e-12);
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        Assert.Throws<ArgumentNullException>(() => PlaneFit.Fit(null!));
        ArgumentException few = Assert.Throws<ArgumentException>(() => PlaneFit.Fit([Point(0, 0, 0), Point(1, 0, 0)]));
        Assert.Contains("2 probe points", few.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => PlaneFit.Fit(ReferenceBeds.P9(), new PlaneFitOptions { ProbeRepeatability = Length.Zero }));
        Assert.Throws<ArgumentOutOfRangeException>(() => PlaneFit.Fit(ReferenceBeds.P9(), new PlaneFitOptions { PlacementUncertainty = Mm(-1) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => PlaneFit.Fit(ReferenceBeds.P9()).HeightSpreadOver(Length.Zero, Mm(1)));
        Assert.ThrowsAny<ArgumentException>(() => ProbePoint.FromMeters(0, 0, double.NaN));
        Assert.ThrowsAny<ArgumentException>(() => PlaneFit.Fit([Point(0, 0, 0), Point(1, 0, 0), Point(0, 0, double.NaN)]));
    }

    private static void AssertBlocked(PlaneFit plane, string code)
    {
        Finding finding = Assert.Single(plane.Findings);
        Assert.Equal(code, finding.Code);
        Assert.Equal(FindingSeverity.Blocking, finding.Severity);
        Assert.False(plane.IsDeterminate);
        Assert.False(plane.TryGetHeight(Length.Zero, Length.Zero, out Measured<Length> height));
        Assert.False(height.HasValue);
        Assert.False(plane.TryGetSteepestAscent(out _, out _));
        Assert.Equal(code, Assert.Throws<IndeterminateException>(() => plane.HeightAt(Length.Zero, Length.Zero)).Finding!.Code);
        Assert.Throws<IndeterminateException>(() => plane.SlopeX);
        Assert.Throws<IndeterminateException>(() => plane.Coefficients);
        Assert.Throws<IndeterminateException>(() => plane.Residuals);
        Assert.Throws<IndeterminateException>(() => plane.RawFlatness);
        Assert.Throws<IndeterminateException>(() => plane.RootMeanSquare);
        Assert.Throws<IndeterminateException>(() => plane.ResidualStandardDeviation);
        Assert.Throws<IndeterminateException>(() => plane.HeightSpread);
    }

    [Theory]
    [InlineData(1e200, 0, 1e-5)]
    [InlineData(0, -1e7, 1e-5)]
    [InlineData(0, 0, 1e-200)]
    public void PointsBeyondAllPrintersAreRefusedByName(double x, double z, double u)
    {
        ProbePoint[] points = [Point(0, 0, 0, .01), Point(100, 0, 0, .01), ProbePoint.FromMeters(x, .1, z, u)];

        Assert.Equal("points[2]", Assert.Throws<ArgumentOutOfRangeException>(() => PlaneFit.Fit(points)).ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => OrthogonalPlane.Fit(points));
        Assert.Throws<ArgumentOutOfRangeException>(() => MinimumZone.InZ(points));
        Assert.Throws<ArgumentOutOfRangeException>(() => PlaneFit.Fit(ReferenceBeds.P9(), new PlaneFitOptions { ProbeRepeatability = Mm(1e-20) }));
    }

    [Fact]
    public void VeryUnequalUncertaintiesStayFinite()
    {
        PlaneFit plane = PlaneFit.Fit([Point(0, 0, 0, 1e-9), Point(100, 0, .1, 1e3), Point(0, 100, .2, 1e-9), Point(100, 100, .3, 1)]);

        Assert.Equal(.002, plane.SlopeY.SiValue, 1e-9); // two readings are good to 1e-9 mm over 100 mm
        Assert.True(plane.SlopeX.SiStandardUncertainty > 1e-3);
    }
}
