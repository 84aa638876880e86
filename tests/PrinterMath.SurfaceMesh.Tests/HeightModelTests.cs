using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class HeightModelTests
{
    private const double Sigma = 4e-6;

    /// <summary>300 cases: 93 % − 3.29·√(0.93·0.07/300) and 97 % + 3.29·√(0.97·0.03/300), above 1.</summary>
    private const double Lowest = 0.882;

    private static readonly ProbedGridOptions Known = new() { Repeatability = Length.FromMeters(Sigma) };

    [Fact]
    public void Uncertainty_at_a_node_is_the_probes_and_half_of_it_between_four()
    {
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights([0, 0.1, 0.2], [0, 0.1], new double[6], Known));
        Assert.Equal(Sigma, model.HeightAt(Length.FromMeters(0.1), Length.Zero).SiStandardUncertainty, 1e-18);
        Assert.Equal(Sigma / 2, model.HeightAt(Length.FromMeters(0.05), Length.FromMeters(0.05)).SiStandardUncertainty, 1e-18);
    }

    // Midway the Catmull-Rom weights are −1/16, 9/16, 9/16, −1/16: √(164)/16 = 0.8004 along one axis, on a node line of the other.
    [Fact]
    public void Uncertainty_of_the_cubic_midway()
    {
        BicubicModel model = BicubicModel.Through(ProbedGrid.FromHeights([0, 0.1, 0.2, 0.3], [0, 0.1], new double[8], Known));
        Assert.Equal(Sigma * Math.Sqrt(164) / 16, model.HeightAt(Length.FromMeters(0.15), Length.Zero).SiStandardUncertainty, 1e-18);
    }

    [Fact]
    public void Unknown_repeatability_leaves_the_estimate_alone()
    {
        BicubicModel model = BicubicModel.Through(ProbedGrid.FromHeights([0, 1], [0, 1], [1, 1, 1, 1]));
        Assert.Equal(1, model.EstimateAt(Length.FromMeters(0.5), Length.FromMeters(0.5)).Meters, 1e-15);
        Assert.False(model.TryGetHeight(Length.Zero, Length.Zero, out _));
        IndeterminateException thrown = Assert.Throws<IndeterminateException>(() => model.HeightAt(Length.Zero, Length.Zero));
        Assert.Equal(SurfaceFindings.UncertaintyUnknown, thrown.Finding!.Code);
    }

    [Fact]
    public void Outside_follows_the_rule()
    {
        ProbedGrid grid = ProbedGrid.FromHeights([0, 1], [0, 1], [0, 1, 2, 4]);
        double[] z = new double[1];
        BilinearModel refuse = BilinearModel.Through(grid);
        Assert.Throws<ArgumentOutOfRangeException>(() => refuse.EstimateAt(Length.FromMeters(1.1), Length.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => refuse.Heights([1.1], [0], z));
        Assert.Throws<ArgumentOutOfRangeException>(() => refuse.Heights([double.NaN], [0], z));
        BilinearModel clamp = BilinearModel.Through(grid, new HeightModelOptions { Outside = OutsideRule.Clamp });
        Assert.Equal(2.5, clamp.EstimateAt(Length.FromMeters(3), Length.FromMeters(0.5)).Meters, 1e-14);
        Assert.Equal(0, clamp.GradientAt(Length.FromMeters(3), Length.FromMeters(0.5)).AlongX);
        Assert.Throws<ArgumentOutOfRangeException>(() => clamp.Heights([double.PositiveInfinity], [0], z));

        // z = x + 2y + xy goes on beyond the corner.
        BilinearModel extend = BilinearModel.Through(grid, new HeightModelOptions { Outside = OutsideRule.ExtendLinearly });
        extend.Heights([2], [3], z);
        Assert.Equal(14, z[0], 1e-13);
        Assert.Throws<ArgumentOutOfRangeException>(() => BilinearModel.Through(grid, new HeightModelOptions { Outside = (OutsideRule)7 }));
        Assert.Throws<ArgumentException>(() => extend.Heights([1, 2], [1], z));
    }

    [Fact]
    public void Slopes_are_those_of_differences()
    {
        BicubicModel model = BicubicModel.Through(ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe("waves", 7, 7, 0)));
        double x = 0.113, y = 0.201, h = 1e-5;
        SurfaceGradient slope = model.GradientAt(Length.FromMeters(x), Length.FromMeters(y));

        // Central differences: truncation h²z‴/6 ≈ 1e-11·0.04, rounding 1e-20/1e-5.
        Assert.Equal((Z(model, x + h, y) - Z(model, x - h, y)) / (2 * h), slope.AlongX, 1e-10);
        Assert.Equal((Z(model, x, y + h) - Z(model, x, y - h)) / (2 * h), slope.AlongY, 1e-10);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(0)]
    [InlineData(12)]
    public void Bridged_planes_are_kept_with_a_finding_and_more_uncertainty(int hole)
    {
        ProbePoint[] points = new SurfaceSimulator(1).Probe("plane", 5, 5, 0);
        ProbePoint lost = points[hole];
        ProbedGrid grid = ProbedGrid.FromPoints([.. points.Where((_, k) => k != hole && k != hole + 1)], Known);
        foreach (IHeightModel model in new IHeightModel[] { BilinearModel.Through(grid), BicubicModel.Through(grid) })
        {
            Assert.Equal(lost.ZMeters, model.EstimateAt(lost.X, lost.Y).Meters, 1e-14);
            Assert.Contains(model.Findings, f => f.Code == SurfaceFindings.Bridged);
        }
    }

    [Fact]
    public void A_bridge_is_less_certain_than_a_node()
    {
        ProbePoint[] points = new SurfaceSimulator(1).Probe("waves", 7, 7, Sigma);
        double whole = BilinearModel.Through(ProbedGrid.FromPoints(points, Known)).HeightAt(points[24].X, points[24].Y).SiStandardUncertainty;
        ProbedGrid holed = ProbedGrid.FromPoints([.. points.Where((_, k) => k != 24)], Known);
        Assert.True(BilinearModel.Through(holed).HeightAt(points[24].X, points[24].Y).SiStandardUncertainty > 1.5 * whole);
    }

    // The true nodes make the true surface here, so noise is the only error: linear in the nodes and normal, hence 95 %.
    [Theory]
    [InlineData(3, 2e-6)]
    [InlineData(7, 2e-6)]
    [InlineData(7, 3e-5)]
    [InlineData(15, 3e-5)]
    public void Height_intervals_hold_the_models_own_surface(int side, double noise)
    {
        var simulator = new SurfaceSimulator(1);
        var options = new ProbedGridOptions { Repeatability = Length.FromMeters(noise) };
        ProbedGrid exact = ProbedGrid.FromPoints(simulator.Probe("saddle", side, side, 0));
        IHeightModel[] truth = [BilinearModel.Through(exact), BicubicModel.Through(exact)];
        int[] held = new int[2];
        for (int i = 0; i < 300; i++)
        {
            ProbedGrid noisy = ProbedGrid.FromPoints(simulator.Probe("saddle", side, side, noise), options);
            IHeightModel[] models = [BilinearModel.Through(noisy), BicubicModel.Through(noisy)];
            Length x = Length.FromMeters(0.3 * simulator.Uniform()), y = Length.FromMeters(0.3 * simulator.Uniform());
            for (int m = 0; m < 2; m++)
            {
                Measured<Length> z = models[m].HeightAt(x, y);
                held[m] += Math.Abs(z.SiValue - truth[m].EstimateAt(x, y).Meters) <= 1.96 * z.SiStandardUncertainty ? 1 : 0;
            }
        }

        Assert.All(held, count => Assert.InRange(count / 300.0, Lowest, 1));
    }

    // A curved surface: the interval widened by the interpolation error holds the simulator's own height at least as often.
    [Theory]
    [InlineData("waves", 7, 5e-6)]
    [InlineData("ridge", 11, 5e-6)]
    [InlineData("dent", 15, 2e-5)]
    public void Height_and_interpolation_error_hold_a_curved_surface(string kind, int side, double noise)
    {
        var simulator = new SurfaceSimulator(1);
        var options = new ProbedGridOptions { Repeatability = Length.FromMeters(noise) };
        int[] held = new int[2];
        for (int i = 0; i < 300; i++)
        {
            ProbedGrid grid = ProbedGrid.FromPoints(simulator.Probe(kind, side, side, noise, coarse: true), options);
            Length x = Length.FromMeters(0.3 * simulator.Uniform()), y = Length.FromMeters(0.3 * simulator.Uniform());
            IHeightModel[] models = [BilinearModel.Through(grid), BicubicModel.Through(grid)];
            for (int m = 0; m < 2; m++)
            {
                Measured<Length> z = models[m].HeightAt(x, y);
                double allowed = (1.96 * z.SiStandardUncertainty) + models[m].InterpolationErrorAt(x, y).Meters;
                held[m] += Math.Abs(z.SiValue - SurfaceSimulator.Height(kind, x.Meters, y.Meters)) <= allowed ? 1 : 0;
            }
        }

        Assert.All(held, count => Assert.InRange(count / 300.0, Lowest, 1));
    }

    // A hole in the middle and one at the border, judged at the holes themselves on a curved surface.
    [Theory]
    [InlineData("waves", 5e-6)]
    [InlineData("saddle", 2e-5)]
    [InlineData("bowl", 5e-6)]
    public void Bridged_heights_hold_the_truth(string kind, double noise)
    {
        var simulator = new SurfaceSimulator(1);
        var options = new ProbedGridOptions { Repeatability = Length.FromMeters(noise) };
        int held = 0;
        for (int i = 0; i < 300; i++)
        {
            int hole = 8 * (i % 6);
            ProbePoint[] points = simulator.Probe(kind, 7, 7, noise);
            BilinearModel model = BilinearModel.Through(ProbedGrid.FromPoints([.. points.Where((_, k) => k != hole)], options));
            Measured<Length> z = model.HeightAt(points[hole].X, points[hole].Y);
            held += Math.Abs(z.SiValue - SurfaceSimulator.Height(kind, points[hole].XMeters, points[hole].YMeters)) <= 1.96 * z.SiStandardUncertainty ? 1 : 0;
        }

        Assert.InRange(held / 300.0, Lowest, 1);
    }

    private static double Z(BicubicModel model, double x, double y) => model.EstimateAt(Length.FromMeters(x), Length.FromMeters(y)).Meters;
}
