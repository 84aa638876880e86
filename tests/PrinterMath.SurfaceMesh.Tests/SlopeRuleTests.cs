using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class SlopeRuleTests
{
    /// <summary>300 cases: 93 % − 3.29·√(0.93·0.07/300) and 97 % + 3.29·√(0.97·0.03/300), above 1.</summary>
    private const double Lowest = 0.882;

    private static readonly double[] Axis = [0, 0.1, 0.2, 0.3, 0.4];

    // A step of 1 mm along x: slopes from neighbours overshoot by 2/27 = 7.4 % of it (the maximum of t²(1 − t)/2), limited slopes not at all.
    [Fact]
    public void A_step_is_overshot_by_all_but_the_shape_preserving_rule()
    {
        ProbedGrid step = ProbedGrid.FromHeights(Axis, [0, 1], [0, 0, 0, 1e-3, 1e-3, 0, 0, 0, 1e-3, 1e-3]);
        double[] xs = [.. Enumerable.Range(0, 4001).Select(i => i * 1e-4)], zs = new double[4001];
        BicubicModel.Through(step).Heights(xs, [.. xs.Select(_ => 0.5)], zs);
        Assert.Equal(-2e-3 / 27, zs.Min(), 1e-9);
        BicubicModel.Through(step, SlopeRule.ShapePreserving).Heights(xs, [.. xs.Select(_ => 0.5)], zs);
        Assert.InRange(zs.Min(), 0, 1e-18);
        Assert.InRange(zs.Max(), 1e-3, 1e-3 + 1e-18);
    }

    [Fact]
    public void Four_at_a_time_and_one_at_a_time_agree_inside_outside_and_on_uneven_axes()
    {
        var options = new HeightModelOptions { Outside = OutsideRule.ExtendLinearly };
        var random = new Random(1);
        double[] xs = [.. Enumerable.Range(0, 1003).Select(i => i % 50 == 0 ? random.NextDouble() : i % 7 == 0 ? Axis[i % 5] : 0.4 * random.NextDouble())];
        double[] ys = [.. xs.AsEnumerable().Reverse()], zs = new double[xs.Length], heights = [.. Axis.SelectMany(_ => Axis).Select(_ => 1e-3 * random.NextDouble())];
        foreach (double[] columns in new double[][] { Axis, [0, 0.05, 0.2, 0.35, 0.4] })
        {
            ProbedGrid grid = ProbedGrid.FromHeights(columns, Axis, heights);
            foreach (IHeightModel model in new IHeightModel[] { BilinearModel.Through(grid, options), BicubicModel.Through(grid, options) })
            {
                model.Heights(xs, ys, zs);
                Assert.All(Enumerable.Range(0, zs.Length), k => Assert.Equal(model.EstimateAt(Length.FromMeters(xs[k]), Length.FromMeters(ys[k])).Meters, zs[k], 1e-15));
            }
        }
    }

    [Fact]
    public void Slopes_are_those_of_differences_under_every_rule()
    {
        ProbedGrid grid = ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe("waves", 7, 6, 0));
        foreach (BicubicModel model in Enum.GetValues<SlopeRule>().Select(rule => BicubicModel.Through(grid, rule)))
        {
            double x = 0.113, y = 0.201, h = 1e-5;
            SurfaceGradient slope = model.GradientAt(Length.FromMeters(x), Length.FromMeters(y));

            // Central differences: truncation h²z‴/6 ≈ 1e-11·0.1, rounding 1e-20/1e-5.
            Assert.Equal((Z(x + h, y) - Z(x - h, y)) / (2 * h), slope.AlongX, 1e-10);
            Assert.Equal((Z(x, y + h) - Z(x, y - h)) / (2 * h), slope.AlongY, 1e-10);

            double Z(double atX, double atY) => model.EstimateAt(Length.FromMeters(atX), Length.FromMeters(atY)).Meters;
        }
    }

    // Weights by unit heights, one node at a time: u² = σ² Σ w², for the rules that are linear in the heights.
    [Theory]
    [InlineData(SlopeRule.Neighbours)]
    [InlineData(SlopeRule.NaturalSpline)]
    public void Uncertainty_is_that_of_the_weights(SlopeRule rule)
    {
        double squares = 0;
        Length x = Length.FromMeters(0.13), y = Length.FromMeters(0.37);
        for (int node = 0; node < 25; node++)
        {
            double[] unit = new double[25];
            unit[node] = 1;
            squares += Math.Pow(BicubicModel.Through(ProbedGrid.FromHeights(Axis, Axis, unit), rule).EstimateAt(x, y).Meters, 2);
        }

        ProbedGrid grid = ProbedGrid.FromHeights(Axis, Axis, new double[25], new ProbedGridOptions { Repeatability = Length.FromMeters(1e-5) });
        Assert.Equal(1e-5 * Math.Sqrt(squares), BicubicModel.Through(grid, rule).HeightAt(x, y).SiStandardUncertainty, 1e-18);
    }

    // On a tilted, bent surface, where slopes keep their signs: what Monte Carlo over the nodes gives, 5 % of it with 2000 draws (three standard errors).
    [Theory]
    [InlineData(SlopeRule.ShapePreserving)]
    [InlineData(SlopeRule.Akima)]
    public void Uncertainty_by_differences_is_that_of_repeated_probing(SlopeRule rule)
    {
        var simulator = new SurfaceSimulator(1);
        var known = new ProbedGridOptions { Repeatability = Length.FromMeters(2e-6) };
        Length x = Length.FromMeters(0.11), y = Length.FromMeters(0.21);
        double stated = BicubicModel.Through(ProbedGrid.FromPoints(simulator.Probe("saddle", 6, 6, 0), known), rule).HeightAt(x, y).SiStandardUncertainty;
        SampleSummary drawn = SampleSummary.Of(
            [.. Enumerable.Range(0, 2000).Select(_ => BicubicModel.Through(ProbedGrid.FromPoints(simulator.Probe("saddle", 6, 6, 2e-6)), rule).EstimateAt(x, y).Meters)]);
        Assert.Equal(1, stated / drawn.StandardDeviation, 0.05);
    }

    // Curved surfaces, both kinds of noise; truth by the simulator: u and the interpolation error together.
    [Theory]
    [InlineData(SlopeRule.ShapePreserving, "waves")]
    [InlineData(SlopeRule.Akima, "ridge")]
    [InlineData(SlopeRule.NaturalSpline, "dent")]
    public void Height_and_interpolation_error_hold_a_curved_surface(SlopeRule rule, string kind)
    {
        const double Noise = 5e-6;
        var simulator = new SurfaceSimulator(1);
        int held = 0;
        for (int i = 0; i < 300; i++)
        {
            ProbedGrid grid = ProbedGrid.FromPoints(simulator.Probe(kind, 11, 11, Noise, coarse: i % 2 == 0), new ProbedGridOptions { Repeatability = Length.FromMeters(Noise) });
            BicubicModel model = BicubicModel.Through(grid, rule);
            Length x = Length.FromMeters(0.3 * simulator.Uniform()), y = Length.FromMeters(0.3 * simulator.Uniform());
            Measured<Length> z = model.HeightAt(x, y);
            double allowed = (1.96 * z.SiStandardUncertainty) + model.InterpolationErrorAt(x, y).Meters;
            held += Math.Abs(z.SiValue - SurfaceSimulator.Height(kind, x.Meters, y.Meters)) <= allowed ? 1 : 0;
        }

        Assert.InRange(held / 300.0, Lowest, 1);
    }

    [Fact]
    public void An_unnamed_rule_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BicubicModel.Through(ProbedGrid.FromHeights([0, 1], [0, 1], new double[4]), (SlopeRule)9));
}
