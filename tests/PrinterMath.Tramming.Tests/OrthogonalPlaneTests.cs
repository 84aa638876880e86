using PrinterMath.Measurement;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class OrthogonalPlaneTests
{
    [Fact]
    public void DistancesAreSquareToThePlane()
    {
        // two parallel planes of slope 1/2
        var points = new List<ProbePoint>();
        for (int i = -3; i <= 3; i++)
        {
            foreach (int y in new[] { -20, 20 })
            {
                points.Add(Point(10 * i, y, (5 * i) + 1));
                points.Add(Point((10 * i) + .8, y, (5 * i) - .6)); // foot moved along the normal by (0.8, -1.6): the same place of the plane
            }
        }

        OrthogonalPlane plane = OrthogonalPlane.Fit(points);

        Assert.Equal(.5, plane.SlopeX.SiValue, 1e-12);
        Assert.Equal(0, plane.SlopeY.SiValue, 1e-12);
        Assert.Equal(Math.Sqrt(3.2), plane.RawFlatness.Millimeters, 1e-12); // |(0.8, -1.6)|
        Assert.Equal(1, (plane.NormalX * plane.NormalX) + (plane.NormalY * plane.NormalY) + (plane.NormalZ * plane.NormalZ), 1e-15);
    }

    [Fact]
    public void ForABedItAgreesWithLeastSquaresInZ()
    {
        OrthogonalPlane plane = OrthogonalPlane.Fit(ReferenceBeds.P9());
        PlaneFit inZ = PlaneFit.Fit(ReferenceBeds.P9());

        Assert.Equal(inZ.SlopeX.SiValue, plane.SlopeX.SiValue, 1e-4 * inZ.SlopeX.SiStandardUncertainty);
        Assert.Equal(inZ.SlopeX.SiStandardUncertainty, plane.SlopeX.SiStandardUncertainty, 1e-6 * inZ.SlopeX.SiStandardUncertainty);
        Assert.Equal(inZ.HeightAt(Mm(5), Mm(7)).SiStandardUncertainty, plane.HeightAt(Mm(5), Mm(7)).SiStandardUncertainty, 1e-12);
        Assert.Equal(inZ.Coefficients.Covariance(0, 1), plane.Coefficients.Covariance(0, 1), 1e-15);
    }

    [Fact]
    public void AnUprightCloudIsExplained()
    {
        OrthogonalPlane plane = OrthogonalPlane.Fit([Point(0, 0, 0), Point(1, 0, 90), Point(0, 1, -80), Point(1, 1, 70), Point(.5, .5, 300)]);

        Assert.Equal("plane.upright", Assert.Throws<IndeterminateException>(() => plane.NormalZ).Finding!.Code);
        Assert.False(plane.TryGetSlopes(out _, out _));
    }

    [Fact]
    public void FindingsAreThoseOfTheFitInZ()
    {
        List<ProbePoint> points = ReferenceBeds.P25();
        points[7] = Point(100, 50, .159 + .15);

        Assert.Equal([7], OrthogonalPlane.Fit(points).Outliers);
        Assert.Equal("plane.collinear", Assert.Single(OrthogonalPlane.Fit([Point(0, 0, 0), Point(1, 1, 1), Point(2, 2, 2)]).Findings).Code);
        Assert.Throws<ArgumentException>(() => OrthogonalPlane.Fit([Point(0, 0, 0)]));
    }

    // Source: P25, a set made for this purpose; singular vector by NumPy 1.24.2 and R 4.2.2, 10 printed digits of the normal, 10 decimals of the flatness.
    [Fact]
    public void PlaneOf25PointsAgreesWithTheSingularVector()
    {
        OrthogonalPlane plane = OrthogonalPlane.Fit(ReferenceBeds.P25());

        Assert.Equal(-8.143996438e-4, plane.NormalX, 5e-14);
        Assert.Equal(5.239997708e-4, plane.NormalY, 5e-14);
        Assert.Equal(.9999995311, plane.NormalZ, 5e-11);
        Assert.Equal(.0404799806, plane.RawFlatness.Millimeters, 5e-11);
    }
}
