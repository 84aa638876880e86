using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh.Tests;

[Trait("Evidence", "Published")]
public sealed class ShapeReferenceTests
{
    // Legendre polynomials (Abramowitz, Stegun 1964, 22.2.10) on 5 × 5 nodes of the square from −1 to 1: .1 + .05ξ − .02η + .03P₂(ξ) + .04ξη − .01P₂(η)
    // is recovered exactly, within rounding.
    [Fact]
    public void Planted_terms_are_recovered()
    {
        double[] axis = [-1, -0.5, 0, 0.5, 1];
        ProbePoint[] points = [.. from y in axis from x in axis select ProbePoint.FromMeters(
            x, y, 0.1 + (0.05 * x) - (0.02 * y) + (0.03 * ((1.5 * x * x) - 0.5)) + (0.04 * x * y) - (0.01 * ((1.5 * y * y) - 0.5)))];
        ShapeDecomposition shape = ShapeDecomposition.Fit(points);
        double[] planted = [0.1, 0.05, -0.02, 0.03, 0.04, -0.01];
        Assert.All(shape.Components, c => Assert.Equal(planted[(int)c.Term], c.Estimate.Meters, 1e-15));
    }

    // 800 heights of a flat package, tests/WFS_vendor_metrology_data.txt in lsst-camera-dh/metrology-data-analysis, commit 6c5e044e: the measuring machine states a
    // flatness of 4.406 µm. Least-squares peak-to-valley by NumPy 4.402 µm, root mean square 0.8194 µm, slopes 1.4835e-5 and 2.44890e-4; digits as printed. The
    // machine's 4.406 is not explained by the data's five decimals of a millimetre (±0.007 µm would cover it): tolerance 0.01 µm.
    [Fact]
    public void Flatness_of_a_measured_package()
    {
        ProbePoint[] points = Package();
        Assert.Equal(800, points.Length);
        Flatness flatness = Flatness.Of(points, new FlatnessOptions { Seed = 1 });
        Assert.Equal(4.406, flatness.RawPeakToValley.Micrometers, 0.01);
        Assert.Equal(4.402, flatness.RawPeakToValley.Micrometers, 0.0006);
        Assert.Equal(0.8194, flatness.RawRootMeanSquare.Micrometers, 0.00006);
    }

    private static ProbePoint[] Package()
    {
        string path = Path.Combine(AppContext.BaseDirectory, "data", "lsst_wfs_sn21844_points.csv");
        return [.. File.ReadLines(path).Skip(1).Where(line => line.Length > 0).Select(line =>
        {
            double[] mm = [.. line.Split(',').Select(field => double.Parse(field, CultureInfo.InvariantCulture))];
            return ProbePoint.FromMeters(mm[0] / 1e3, mm[1] / 1e3, mm[2] / 1e3);
        })];
    }
}
