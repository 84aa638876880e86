using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

/// <summary>Values by SciPy 1.10.1: CubicSpline, PchipInterpolator, Akima1DInterpolator; the script is data/slope_rules.py, nine decimals printed.</summary>
[Trait("Evidence", "Published")]
public sealed class SlopeRuleReferenceTests
{
    // Data of Akima 1970, Journal of the ACM 17, 589, as quoted from memory. The same along every row, so only one axis bends.
    [Theory]
    [InlineData(SlopeRule.NaturalSpline, 9.828234456, 9.420131546, 32.428440317, 56.553607186)]
    [InlineData(SlopeRule.ShapePreserving, 10, 11.865664557, 31.552390999, 55.158730159)]
    [InlineData(SlopeRule.Akima, 10, 11.732202447, 31.308142289, 54.858344780)]
    public void Akimas_data(SlopeRule rule, double first, double second, double third, double fourth) =>
        Check(rule, [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], [10, 10, 10, 10, 10, 10, 10.5, 15, 50, 60, 85], [4.5, 6.5, 7.5, 8.5], [first, second, third, fourth]);

    [Theory]
    [InlineData(SlopeRule.NaturalSpline, 2.045244582, 2.621928448, 2.217950023, 4.598442738, 6.277201077)]
    [InlineData(SlopeRule.ShapePreserving, 2.1456, 2.549925926, 2.233581395, 4.853108685, 5.892)]
    [InlineData(SlopeRule.Akima, 2.149538462, 2.526371406, 2.247324675, 4.563938876, 6.391034483)]
    public void Uneven_spacing(SlopeRule rule, double first, double second, double third, double fourth, double fifth) =>
        Check(rule, [0, 1, 2.5, 3, 4.75, 7], [1, 3, 2, 2.5, 6, 5.5], [0.4, 1.7, 2.8, 4, 6.1], [first, second, third, fourth, fifth]);

    // de Boor 1978, chapter IV: knots 0 to 3, heights 0, 1, 0, 1, natural ends: 0.75 at 0.5, by hand.
    [Fact]
    public void Natural_spline_by_hand() => Check(SlopeRule.NaturalSpline, [0, 1, 2, 3], [0, 1, 0, 1], [0.5], [0.75]);

    // Franke's F1, tensor product of natural splines on n × n nodes, errors at 401 × 401 places, seven digits printed: half of the last one is up to 3.4e-7 of 1.511135.
    [Theory]
    [InlineData(11, 1.897199e-02, 2.307500e-03)]
    [InlineData(21, 1.511135e-03, 2.141544e-04)]
    public void Natural_spline_on_frankes_function(int nodes, double largest, double rms)
    {
        (double max, double root) = Franke.Errors(BicubicModel.Through(Franke.Sampled(nodes), SlopeRule.NaturalSpline));
        Assert.Equal(1, max / largest, 3.4e-7);
        Assert.Equal(1, root / rms, 3.4e-7);
    }

    // Along x and along y alike, one place at a time and in bulk, on the second row of three.
    private static void Check(SlopeRule rule, double[] nodes, double[] heights, double[] at, double[] expected)
    {
        BicubicModel alongX = BicubicModel.Through(ProbedGrid.FromHeights(nodes, [0, 1, 3], [.. heights, .. heights, .. heights]), rule);
        BicubicModel alongY = BicubicModel.Through(ProbedGrid.FromHeights([0, 1, 3], nodes, [.. heights.SelectMany(z => new[] { z, z, z })]), rule);
        double[] bulk = new double[at.Length];
        alongX.Heights(at, [.. at.Select(_ => 1.4)], bulk);
        for (int k = 0; k < at.Length; k++)
        {
            Assert.Equal(expected[k], bulk[k], 6e-10);
            Assert.Equal(expected[k], alongX.EstimateAt(Length.FromMeters(at[k]), Length.FromMeters(0.3)).Meters, 6e-10);
            Assert.Equal(expected[k], alongY.EstimateAt(Length.FromMeters(2), Length.FromMeters(at[k])).Meters, 6e-10);
        }
    }
}
