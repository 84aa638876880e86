using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class PlaneFitReferenceTests
{
    // Source of P25: a set made for this purpose; least squares by NumPy 1.24.2 and R 4.2.2 (lm), which agree; a, b, c are exact decimals.
    // Tolerance of a, b, c: 1e-12 of scale, the rounding of double arithmetic over 25 points.
    [Fact]
    public void PlaneOf25PointsAgreesWithR()
    {
        PlaneFit plane = PlaneFit.Fit(ReferenceBeds.P25());

        Assert.Equal(0.10112, plane.HeightAt(Length.Zero, Length.Zero).Millimeters(), 1e-12);
        Assert.Equal(8.144e-4, plane.SlopeX.SiValue, 1e-15);
        Assert.Equal(-5.24e-4, plane.SlopeY.SiValue, 1e-15);
        Assert.Equal(0.0133985074, plane.ResidualStandardDeviation.Millimeters(), 5e-11); // source prints 10 decimals
        Assert.Equal(0.04048, plane.RawFlatness.Millimeters, 1e-12); // exact decimal
        Assert.Equal(22, plane.SlopeX.DegreesOfFreedom);
    }

    // Source of P9: a set made for this purpose; least squares by R 4.2.2 (lm, hatvalues) and SciPy 1.10.1.
    [Fact]
    public void PlaneOf9PointsAgreesWithR()
    {
        PlaneFit plane = PlaneFit.Fit(ReferenceBeds.P9());
        JointEstimate coefficients = plane.Coefficients;
        Measured<Length> a = coefficients.Estimate<Length>(0);

        // source prints 9 decimals of a and 12 of b and c
        Assert.Equal(.004814815, a.Millimeters(), 5e-10);
        Assert.Equal(.000592592593, plane.SlopeX.SiValue, 5e-13);
        Assert.Equal(-.000444444444, plane.SlopeY.SiValue, 5e-13);
        Assert.Equal(.0153960072, plane.ResidualStandardDeviation.Millimeters(), 5e-11); // 10 decimals

        // standard errors to 6 digits
        Assert.Equal(.0120153, a.UncertaintyMillimeters(), 5e-8);
        Assert.Equal(6.98377e-5, plane.SlopeX.SiStandardUncertainty, 5e-11);
        Assert.Equal(6.98377e-5, plane.SlopeY.SiStandardUncertainty, 5e-11);
        Assert.Equal(6, a.DegreesOfFreedom);
    }

    // Source: R 4.2.2, hatvalues: 4/9 at corners, 5/18 at edges, 1/9 in the middle. Exact fractions: rounding only.
    [Fact]
    public void LeveragesOf9PointsAgreeWithR()
    {
        double[] expected = [4 / 9.0, 5 / 18.0, 4 / 9.0, 5 / 18.0, 1 / 9.0, 5 / 18.0, 4 / 9.0, 5 / 18.0, 4 / 9.0];
        IReadOnlyList<PlaneResidual> residuals = PlaneFit.Fit(ReferenceBeds.P9()).Residuals;

        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], residuals[i].Leverage, 1e-14);
        }
    }

    // Source: R 4.2.2 (predict with se.fit); F = 56.25 on (2, 6), here through the residual and total sums of squares of R² = .9493670886.
    [Theory]
    [InlineData(30, 30, .00925926, .00942162)]
    [InlineData(190, 30, .10407407, .00942162)]
    [InlineData(110, 190, -.01444444, .00758632)]
    public void HeightsAtScrewsAgreeWithR(double x, double y, double height, double uncertainty)
    {
        Measured<Length> actual = PlaneFit.Fit(ReferenceBeds.P9()).HeightAt(Mm(x), Mm(y));

        Assert.Equal(height, actual.Millimeters(), 5e-9); // source prints 8 decimals
        Assert.Equal(uncertainty, actual.UncertaintyMillimeters(), 5e-9);
    }

    // Source: the vendor's machine states a flatness of 4.406 um; NumPy 1.24.2 least squares gives peak-to-valley 4.402 um, rms 0.8194 um and
    // slopes 1.4835e-5, 2.44890e-4. Tolerances: half a unit of the last printed digit; 0.01 um to the vendor, whose reference plane is not stated.
    [Fact]
    [Trait("Evidence", "Published")]
    public void PlateOf800PointsAgreesWithVendorAndNumPy()
    {
        PlaneFit plane = PlaneFit.Fit(ReferenceBeds.Plate());

        Assert.Equal(800, plane.Points.Count);
        Assert.Equal(1.4835e-5, plane.SlopeX.SiValue, 5e-10);
        Assert.Equal(2.44890e-4, plane.SlopeY.SiValue, 5e-10);
        Assert.Equal(0.8194, plane.RootMeanSquare.Micrometers, 5e-5);
        Assert.Equal(4.402, plane.RawFlatness.Micrometers, 5e-4);
        Assert.Equal(4.406, plane.RawFlatness.Micrometers, 1e-2);
    }

    // Source: NIST Statistical Reference Datasets, Norris, certified B0 and B1. The line is laid out twice as a plane along y: slope across zero, and the same
    // coefficients. Certified to 15 digits; tolerance 1e-12 relative, a thousand roundings over 72 points with x up to 1000.
    [Fact]
    [Trait("Evidence", "Published")]
    public void NorrisLaidOutAsAPlaneGivesTheCertifiedLine()
    {
        (double Y, double X)[] readings =
        [
            .. from line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "Norris.dat")).Skip(60)
               let fields = line.Split(' ', StringSplitOptions.RemoveEmptyEntries)
               where fields.Length == 2
               select (double.Parse(fields[0], CultureInfo.InvariantCulture), double.Parse(fields[1], CultureInfo.InvariantCulture)),
        ];
        PlaneFit plane = PlaneFit.Fit([.. readings.SelectMany(r => new[] { ProbePoint.FromMeters(r.X, 0, r.Y), ProbePoint.FromMeters(r.X, 400, r.Y) })]);

        Assert.Equal(36, readings.Length);
        Assert.Equal(1.00211681802045, plane.SlopeX.SiValue, 1e-12);
        Assert.Equal(0, plane.SlopeY.SiValue, 1e-14);
        Assert.Equal(-.262323073774029, plane.HeightAt(Length.Zero, Length.Zero).SiValue, 5e-12); // mean height 400: 1e-15 of it, ten times
        Assert.Equal(.884796396144373, plane.ResidualStandardDeviation.SiValue * Math.Sqrt(69 / 68.0), 1e-12); // twice the squares on 69 instead of 34 degrees of freedom
    }
}
