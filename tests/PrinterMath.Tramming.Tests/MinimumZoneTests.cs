using PrinterMath.Measurement;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class MinimumZoneTests
{
    [Fact]
    public void ATwistIsAsWideAsItsCornersStandApart()
    {
        // pure twist of +-t at the corners of a square: two edges against two, width 2t; a plane fitted by least squares shows the same
        MinimumZone zone = MinimumZone.InZ([Point(0, 0, .03), Point(100, 0, -.03), Point(100, 100, .03), Point(0, 100, -.03)]);

        Assert.Equal(60, zone.Width.Micrometers, 1e-9);
        Assert.Equal([0, 2], zone.UpperPoints);
        Assert.Equal([1, 3], zone.LowerPoints);
        Assert.Equal(1, zone.NormalZ, 1e-12);
        Assert.Equal(0, zone.HeightAt(Mm(30), Mm(80)).Millimeters, 1e-12);
        Assert.Empty(zone.Findings);
    }

    [Fact]
    public void AnEdgeAgainstAnEdgeIsSeen()
    {
        // a regular tetrahedron of edge a: width a/sqrt(2) between opposite edges, a*sqrt(2/3) between a face and a corner
        double h = 50;
        MinimumZone zone = MinimumZone.Orthogonal([Point(h, h, h), Point(h, -h, -h), Point(-h, h, -h), Point(-h, -h, h)]);

        Assert.Equal(100, zone.Width.Millimeters, 1e-10); // a = 2 sqrt(2) h
    }

    [Fact]
    public void AFaceAgainstACornerIsSeen()
    {
        MinimumZone zone = MinimumZone.Orthogonal([Point(0, 0, 0), Point(100, 0, 0), Point(0, 100, 0), Point(30, 30, .02)]);

        Assert.Equal(20, zone.Width.Micrometers, 1e-9);
        Assert.Equal(3, zone.LowerPoints.Count);
        Assert.Equal([3], zone.UpperPoints);
    }

    [Fact]
    public void TwoReadingsOfOnePlaceSetTheWidth()
    {
        MinimumZone zone = MinimumZone.InZ([Point(50, 50, .00), Point(50, 50, .04), Point(0, 0, .02), Point(100, 0, .02), Point(0, 100, .02)]);

        Assert.Equal(40, zone.Width.Micrometers, 1e-9);
        Assert.Contains(zone.Findings, f => f.Code == "zone.notUnique"); // the other points leave room to tilt
    }

    [Fact]
    public void ThreeTouchingPointsInOneLineLeaveTheTiltOpen()
    {
        ProbePoint[] ridge = [Point(0, 50, 0), Point(50, 50, .04), Point(100, 50, 0), Point(50, 0, .02), Point(50, 100, .02)];
        MinimumZone free = MinimumZone.InZ(ridge);
        MinimumZone held = MinimumZone.InZ([.. ridge, Point(0, 0, 0), Point(0, 100, 0)]);

        Assert.Equal(40, free.Width.Micrometers, 1e-9);
        Assert.Contains(free.Findings, f => f.Code == "zone.notUnique");
        Assert.Equal(40, held.Width.Micrometers, 1e-9);
        Assert.DoesNotContain(held.Findings, f => f.Code == "zone.notUnique");
    }

    [Fact]
    public void APerfectPlaneHasNoWidth()
    {
        List<ProbePoint> points = Grid(50, 4, 4, (x, y) => .1 + (.001 * x) - (.0005 * y));

        Assert.Equal(0, MinimumZone.InZ(points).Width.Millimeters, 1e-12);
        Assert.Equal(0, MinimumZone.Orthogonal(points).Width.Millimeters, 1e-12);
        Assert.Equal(0, MinimumZone.Orthogonal(Grid(50, 3, 3, (_, _) => 0)).Width.Millimeters);
    }

    [Fact]
    public void TenThousandPointsOnAGridWithTiesAreExact()
    {
        // a dome of z = -(x^2 + y^2) on a centred grid, 99 x 99: by symmetry level, touching the middle and the four corners
        List<ProbePoint> points = [.. from i in Enumerable.Range(-49, 99) from j in Enumerable.Range(-49, 99) select Point(2 * i, 2 * j, -1e-5 * ((i * i) + (j * j)))];
        MinimumZone zone = MinimumZone.InZ(points);

        Assert.Equal(2 * 49 * 49 * 1e-2, zone.Width.Micrometers, 1e-8);
        Assert.Single(zone.UpperPoints);
        Assert.Equal(4, zone.LowerPoints.Count);
    }

    // Places that repeat, points in lines and in planes: what a search on faces and edges loses when it decides by rounding.
    [Theory]
    [InlineData(".01 .01 .01  .01 .02 0  .02 0 .01  0 .02 0  .02 .02 .02  .01 .01 .01  .02 .01 .01  .02 0 .02")]
    [InlineData(".05 0 1e-5  0 .05 1e-5  0 .05 0  .1 0 1e-5  .15 .05 0  .05 .05 0  .1 0 1e-5")]
    public void CoincidingFacesEdgesAndPointsLoseNothing(string coordinates)
    {
        double[] c = [.. coordinates.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(t => double.Parse(t, System.Globalization.CultureInfo.InvariantCulture))];
        ProbePoint[] points = [.. Enumerable.Range(0, c.Length / 3).Select(i => ProbePoint.FromMeters(c[3 * i], c[(3 * i) + 1], c[(3 * i) + 2]))];
        (double inZ, double orthogonal) = ZoneBruteForce.Widths(points);

        Assert.Equal(inZ, MinimumZone.InZ(points).Width.Meters, 1e-12 * inZ); // rounding of ten operations, some digits lost to differences
        Assert.Equal(orthogonal, MinimumZone.Orthogonal(points).Width.Meters, 1e-12 * orthogonal);
    }

    [Fact]
    public void AGridWithEveryPointTwiceIsAsWideAsTheGrid()
    {
        List<ProbePoint> once = Grid(30, 8, 8, (x, y) => 1e-6 * ((x * x) - (2 * y * y)));

        Assert.Equal(MinimumZone.Orthogonal(once).Width.Meters, MinimumZone.Orthogonal([.. once, .. once]).Width.Meters, 1e-15); // 1e-12 of 1 mm
    }

    [Fact]
    public void EveryPointOfABallOnTheHullIsNoTrouble()
    {
        // 2000 points on a sphere: no plane pair nearer than its diameter less the caps that 2000 points leave
        var random = new Random(11);
        List<ProbePoint> points = [];
        for (int i = 0; i < 2000; i++)
        {
            double height = (2 * random.NextDouble()) - 1, angle = 2 * Math.PI * random.NextDouble(), ring = Math.Sqrt(1 - (height * height));
            points.Add(ProbePoint.FromMeters(.1 * ring * Math.Cos(angle), .1 * ring * Math.Sin(angle), .1 * height));
        }

        MinimumZone zone = MinimumZone.Orthogonal(points);
        Assert.InRange(zone.Width.Meters, .197, .2);
        Assert.Equal(4, zone.UpperPoints.Count + zone.LowerPoints.Count);
        Assert.True(zone.Width < MinimumZone.InZ(points).Width);
    }

    [Fact]
    public void PointsInOneLineAreExplained()
    {
        MinimumZone zone = MinimumZone.InZ([Point(0, 0, 0), Point(50, 50.02, .1), Point(100, 100, .2)]);

        Assert.False(zone.TryGetWidth(out _));
        Assert.Equal("plane.collinear", Assert.Throws<IndeterminateException>(() => zone.Width).Finding!.Code);
        Assert.Throws<IndeterminateException>(() => MinimumZone.Orthogonal([Point(0, 0, 0), Point(50, 50, .1), Point(100, 100, 5)]).UpperPoints);
    }

    [Fact]
    public void AWrongUnitIsSuspected()
    {
        Assert.Contains(MinimumZone.InZ(Grid(50, 3, 3, (x, y) => x * y)).Findings, f => f.Code == "plane.unit.suspect");
        Assert.Contains(MinimumZone.Orthogonal(Grid(50_000, 3, 3, (x, y) => 1e-9 * x * y)).Findings, f => f.Code == "plane.unit.suspect");
        Assert.DoesNotContain(MinimumZone.InZ(ReferenceBeds.P25()).Findings, f => f.Code == "plane.unit.suspect");
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => MinimumZone.InZ([Point(0, 0, 0), Point(1, 0, 0)]));
        Assert.Throws<ArgumentNullException>(() => MinimumZone.Orthogonal(null!));
        Assert.Throws<ArgumentOutOfRangeException>(() => MinimumZone.InZ(ReferenceBeds.P9(), new PlaneFitOptions { PlacementUncertainty = Mm(-1) }));
        Assert.ThrowsAny<ArgumentException>(() => MinimumZone.InZ(ReferenceBeds.P9()).HeightAt(Mm(double.PositiveInfinity), Mm(0)));
    }
}
