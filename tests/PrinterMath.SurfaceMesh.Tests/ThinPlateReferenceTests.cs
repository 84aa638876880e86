using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

[Trait("Evidence", "Published")]
public sealed class ThinPlateReferenceTests
{
    private static readonly string[][] Rows =
        [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "data", "thin_plate_scipy.csv")).Skip(1).Select(line => line.Split(','))];

    private static readonly ProbePoint[] Points = [.. Of("point").Select(row => ProbePoint.FromMeters(row[0], row[1], row[2]))];

    // Corners of the unit square at 0, its centre at 1, with U = r² ln r and a plane (F. L. Bookstein 1989, IEEE Trans. Pattern Anal. Mach. Intell. 11, 567-585, for the form): computed in eight digits by
    // general linear algebra.
    [Theory]
    [InlineData(0.25, 0.25, 0.58857071)]
    [InlineData(0.5, 0.25, 0.75593007)]
    [InlineData(0.75, 0.6, 0.72597055)]
    public void Unit_square(double x, double y, double expected)
    {
        ProbePoint[] points =
        [
            ProbePoint.FromMeters(0, 0, 0), ProbePoint.FromMeters(1, 0, 0), ProbePoint.FromMeters(0, 1, 0), ProbePoint.FromMeters(1, 1, 0), ProbePoint.FromMeters(0.5, 0.5, 1),
        ];
        ThinPlateModel plate = ThinPlateModel.Fit(points, new ThinPlateOptions { Smoothing = Area.Zero });
        Assert.Equal(expected, plate.EstimateAt(Length.FromMeters(x), Length.FromMeters(y)).Meters, 5e-9);
    }

    // SciPy 1.10.1, RBFInterpolator; both solve to about 1e-12 of the heights, which are up to 0.2 mm.
    [Fact]
    public void Heights_are_those_of_another_library()
    {
        foreach (IGrouping<double, double[]> plate in Of("height").GroupBy(row => row[0]))
        {
            ThinPlateModel model = ThinPlateModel.Fit(Points, With(plate.Key));
            foreach (double[] row in plate)
            {
                Assert.Equal(row[3], model.EstimateAt(Length.FromMeters(row[1]), Length.FromMeters(row[2])).Meters, 1e-14);
            }
        }
    }

    // NumPy 1.24.2: the influence matrix written out and inverted.
    [Fact]
    public void Cross_validation_is_that_of_the_whole_influence_matrix()
    {
        foreach (double[] row in Of("score"))
        {
            ThinPlateModel model = ThinPlateModel.Fit(Points, With(row[0]));
            Assert.Equal(row[1], model.CrossValidation.SquareMeters, 1e-9 * row[1]);
            Assert.Equal(row[2], model.EffectiveParameters, 1e-8);
        }
    }

    // The least of it: V is level there, so that s is had to 1e-4 of itself and V to rounding.
    [Fact]
    public void Smoothing_is_that_of_least_cross_validation()
    {
        double[] best = Of("best").Single();
        ThinPlateModel model = ThinPlateModel.Fit(Points);
        Assert.Equal(best[0], model.Smoothing.SquareMeters * 8 * Math.PI * 40, 2e-4 * best[0]);
        Assert.Equal(best[1], model.CrossValidation.SquareMeters, 1e-8 * best[1]);
        Assert.Equal(best[2], model.EffectiveParameters, 1e-3);
    }

    private static ThinPlateOptions With(double s) => new() { Smoothing = Area.FromSquareMeters(s / (8 * Math.PI * 40)) };

    private static IEnumerable<double[]> Of(string kind) =>
        Rows.Where(row => row[0] == kind).Select(row => row.Skip(1).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray());
}
