using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

[Trait("Evidence", "Published")]
public sealed class KrigingReferenceTests
{
    // E. H. Isaaks, R. M. Srivastava 1989, An Introduction to Applied Geostatistics, chapter 12: seven samples, C(h) = 10·e^(−0.3h). The book prints 592.7 and a variance of 8.96 (from memory); 592.728943 and 8.956053,
    // and with a linear trend 567.6621 and 9.03828, were computed with general linear algebra.
    [Theory]
    [InlineData(KrigingTrend.Level, 592.728943, 8.956053, 1e-6)]
    [InlineData(KrigingTrend.Plane, 567.6621, 9.03828, 1e-4)]
    public void Isaaks_and_Srivastava(KrigingTrend trend, double height, double variance, double digits)
    {
        ProbePoint[] points =
        [
            ProbePoint.FromMeters(61, 139, 477), ProbePoint.FromMeters(63, 140, 696), ProbePoint.FromMeters(64, 129, 227), ProbePoint.FromMeters(68, 128, 646),
            ProbePoint.FromMeters(71, 140, 606), ProbePoint.FromMeters(73, 141, 791), ProbePoint.FromMeters(75, 128, 783),
        ];
        KrigingModel model = KrigingModel.Fit(points, new KrigingOptions { Trend = trend, Covariance = SurfaceCovariance.Exponential(Length.FromMeters(Math.Sqrt(10)), Length.FromMeters(1 / 0.3)) });
        Measured<Length> z = model.HeightAt(Length.FromMeters(65), Length.FromMeters(137));
        Assert.Equal(height, z.SiValue, digits);
        Assert.Equal(variance, z.SiStandardUncertainty * z.SiStandardUncertainty, digits);
    }

    // KT3D_H2O, ordinary kriging, exponential, sill 500, practical range 3000 (so ℓ = 1000), no nugget: all 10 000 nodes, printed to 1e-5. First row of the file is the largest y.
    [Fact]
    public void Ten_thousand_nodes_of_another_program()
    {
        ProbePoint[] points =
        [
            .. Lines("kriging_points.txt").Select(line => Numbers(line)).Where(row => row.Length == 3).Select(row => ProbePoint.FromMeters(row[0], row[1], row[2])),
        ];
        string[] answer = [.. Lines("kriging_kt3d_answer.asc")];
        double Header(string name) => double.Parse(answer.First(line => line.StartsWith(name, StringComparison.Ordinal)).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture);
        double left = Header("XLLCENTER"), front = Header("YLLCENTER"), dx = Header("DX"), dy = Header("DY");
        double[][] rows = [.. answer.Where(line => !char.IsLetter(line.TrimStart()[0])).Select(Numbers)];
        KrigingModel model = KrigingModel.Fit(points, new KrigingOptions
        {
            Trend = KrigingTrend.Level,
            Covariance = SurfaceCovariance.Exponential(Length.FromMeters(Math.Sqrt(500)), Length.FromMeters(1000)),
            Domain = SurfaceRectangle.Between(Length.FromMeters(left), Length.FromMeters(front), Length.FromMeters(left + (dx * 99)), Length.FromMeters(front + (dy * 99))),
        });
        Assert.Equal(100, rows.Length);
        double largest = 0;
        for (int i = 0; i < 100; i++)
        {
            Assert.Equal(100, rows[i].Length);
            for (int j = 0; j < 100; j++)
            {
                double z = model.EstimateAt(Length.FromMeters(left + (dx * j)), Length.FromMeters(front + (dy * (99 - i)))).Meters;
                largest = Math.Max(largest, Math.Abs(z - rows[i][j]));
            }
        }

        Assert.True(largest < 1e-5, $"{largest}");
    }

    private static IEnumerable<string> Lines(string name) =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "data", name)).Where(line => line.Trim().Length > 0);

    private static double[] Numbers(string line) =>
        [.. line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
}
