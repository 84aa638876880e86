using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

[Trait("Evidence", "Published")]
public sealed class HeightModelReferenceTests
{
    // Bilinear formula by hand: corners .10, .16 (larger x), .05 (larger y), .15 at u = .3, v = .6 give
    // .10·.28 + .16·.12 + .05·.42 + .15·.18 = .0952, exact but for rounding.
    [Fact]
    public void Bilinear_cell_by_hand()
    {
        ProbedGrid grid = ProbedGrid.FromHeights([0, 1], [0, 1], [0.10, 0.16, 0.05, 0.15]);
        Assert.Equal(0.0952, BilinearModel.Through(grid).EstimateAt(Length.FromMeters(0.3), Length.FromMeters(0.6)).Meters, 1e-15);
    }

    // Catmull, Rom 1974; Keys 1981 with a = −½: ½[2P1 + (P2 − P0)t + (2P0 − 5P1 + 4P2 − P3)t² + (3P1 − P0 − 3P2 + P3)t³] for P = 0, 1, .5, 2 at
    // t = .25 is .93359375, exact in binary.
    [Fact]
    public void Cubic_along_one_axis()
    {
        ProbedGrid grid = ProbedGrid.FromHeights([0, 1, 2, 3], [0, 1], [0, 1, 0.5, 2, 0, 1, 0.5, 2]);
        Assert.Equal(0.93359375, BicubicModel.Through(grid).EstimateAt(Length.FromMeters(1.25), Length.FromMeters(0.4)).Meters, 1e-15);
    }

    // The same formula along rows and then along the column, evaluated with NumPy: .1171435546875, exact in decimal.
    [Fact]
    public void Bicubic_cell_of_sixteen_nodes()
    {
        ProbedGrid grid = ProbedGrid.FromHeights(
            [0, 1, 2, 3], [0, 1, 2, 3], [0, .02, .05, .01, .03, .08, .12, .06, .05, .11, .15, .09, .02, .04, .07, .03]);
        double[] z = new double[1];
        BicubicModel.Through(grid).Heights([1.25], [1.5], z);
        Assert.Equal(0.1171435546875, z[0], 1e-15);
    }

    // Franke 1979, A critical comparison of some methods for interpolation of scattered data, NPS-53-79-003, F1 in the form with (9y + 1)/10 not squared; values
    // evaluated with NumPy, eleven decimals. Checks the test function used below.
    [Theory]
    [InlineData(0, 0, .76642059128)]
    [InlineData(.5, .5, .32576208928)]
    [InlineData(.2, .2, 1.21858070417)]
    [InlineData(1, 1, .03586959239)]
    [InlineData(.3, .7, .25756742636)]
    [InlineData(.75, .35, .63677411686)]
    public void Frankes_function(double x, double y, double z) => Assert.Equal(z, Franke.At(x, y), 6e-12);

    // Franke's F1, errors of bilinear interpolation on n × n nodes at 401 × 401 places, by SciPy 1.10.1 (RegularGridInterpolator); six digits
    // printed. Bound (hₓ² max|f_xx| + h_y² max|f_yy|)/8 with 32.568 and 33.082: .08206 and .020516, four and five digits printed.
    [Theory]
    [InlineData(11, .0679706, .0129045, .08206, 1e-5)]
    [InlineData(21, .0188035, .00334400, .020516, 1e-6)]
    public void Bilinear_error_on_frankes_function(int nodes, double largest, double rms, double bound, double boundDigits)
    {
        (double max, double root) = Franke.Errors(BilinearModel.Through(Franke.Sampled(nodes)));
        Assert.Equal(largest, max, 6e-8);
        Assert.Equal(rms, root, 6e-8);
        Length h = Length.FromMeters(1.0 / (nodes - 1));
        double stated = BilinearModel.ErrorBound(h, h, ReciprocalLength.FromInverseMeters(32.568), ReciprocalLength.FromInverseMeters(33.082)).Meters;
        Assert.Equal(bound, stated, boundDigits);
        Assert.True(max <= stated);
    }

    // Keys 1981: cubic convolution converges with h³, boundary included; from 21 to 41 nodes the error falls by about 8, and by no less than 5
    // before the limit is reached. Bilinear falls by 4.
    [Fact]
    public void Bicubic_error_falls_with_the_third_power()
    {
        double coarse = Franke.Errors(BicubicModel.Through(Franke.Sampled(21))).Root, fine = Franke.Errors(BicubicModel.Through(Franke.Sampled(41))).Root;
        Assert.InRange(coarse / fine, 5, 20);
        Assert.True(coarse < 0.2 * Franke.Errors(BilinearModel.Through(Franke.Sampled(21))).Root);
    }

    // The estimated bound stands for the true one: with the curvatures of F1 resolved by 21 nodes it holds at 99 % of the places for
    // bilinear cells and bicubic cells alike. It is an estimate: differences of nodes can miss the largest curvature within a cell.
    [Fact]
    public void Estimated_bounds_hold_on_frankes_function()
    {
        foreach (IHeightModel model in new IHeightModel[] { BilinearModel.Through(Franke.Sampled(21)), BicubicModel.Through(Franke.Sampled(21)) })
        {
            int held = 0, all = 0;
            for (int k = 0; k < 4000; k++)
            {
                double x = (k * 0.6180339887) % 1, y = (k * 0.7548776662) % 1;
                Length at = Length.FromMeters(x), along = Length.FromMeters(y);
                held += Math.Abs(model.EstimateAt(at, along).Meters - Franke.At(x, y)) <= model.InterpolationErrorAt(at, along).Meters ? 1 : 0;
                all++;
            }

            Assert.True(held >= 0.99 * all, $"{model.GetType().Name}: {held} of {all}");
        }
    }
}
