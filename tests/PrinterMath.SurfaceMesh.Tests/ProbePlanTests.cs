using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class ProbePlanTests
{
    private static readonly SurfaceRectangle Bed = SurfaceRectangle.Between(Length.Zero, Length.Zero, Length.FromMeters(0.3), Length.FromMeters(0.2));

    // κ of 0.01 1/m over 0.3 m and of 0.02 over 0.2 m, 16 µm of 20 µm left by 2·2 µm of noise. Five columns bend by 0.075²·0.01/8 = 7.03 µm and leave 8.97 µm: rows √(8·8.97e-6/0.02) =
    // 59.9 mm apart at most, so five. Six columns bend by 4.5 µm and leave 11.5 µm: 67.8 mm, four rows, 24 places. Four columns (12.5 µm) need seven rows, seven need four.
    [Fact]
    public void By_hand()
    {
        ProbePlan plan = ProbePlan.For(Bed, Curvature(0.01, 0.02), Options(20, 2) with { MostReadings = 1 });
        Assert.Equal((6, 4, 1), (plan.Columns, plan.Rows, plan.ReadingsPerPlace));
        Assert.Equal(((0.06 * 0.06 * 0.01) + (0.2 * 0.2 * 0.02 / 9)) / 8, plan.InterpolationError.Meters, 1e-15);
        Assert.Equal(4, plan.ExpandedNoise.Micrometers, 1e-12);
        Assert.Equal(96, plan.Duration.Seconds, 1e-9);
        Assert.Equal("6 x 4 places, 1 reading(s) each: interpolation within 15.61 µm, noise within 4 µm, 96 s", plan.ToString());
        Assert.Equal(24, plan.Places.Distinct().Count());
        Assert.Equal((0.3, 0.0), (plan.Places[5].XMeters, plan.Places[5].YMeters));
        Assert.Equal((0.3, 0.2 / 3), (plan.Places[6].XMeters, plan.Places[6].YMeters));
        Assert.Equal((0.0, 0.2), (plan.Places[^1].XMeters, plan.Places[^1].YMeters));
    }

    [Fact]
    public void Where_noise_takes_the_tolerance_places_are_read_more_often()
    {
        Assert.Equal(1, ProbePlan.For(Bed, Curvature(0.01, 0.02), Options(100, 2)).ReadingsPerPlace);
        Assert.InRange(ProbePlan.For(Bed, Curvature(0.01, 0.02), Options(20, 12)).ReadingsPerPlace, 2, 10);
        ProbePlan out1 = ProbePlan.For(Bed, Curvature(0.01, 0.02), Options(20, 40));
        Assert.False(out1.IsFeasible);
        Assert.Equal(SurfaceFindings.PlanOutOfReach, Assert.Single(out1.Findings).Code);
        Assert.Equal(SurfaceFindings.PlanOutOfReach, Assert.Throws<IndeterminateException>(() => out1.Columns).Finding!.Code);
        Assert.False(ProbePlan.For(Bed, Curvature(1e6, 0.02), Options(20, 2)).IsFeasible);
    }

    [Fact]
    public void A_plane_needs_its_corners()
    {
        ProbePlan plan = ProbePlan.For(Bed, Curvature(0, 0), Options(5, 1));
        Assert.Equal((2, 2), (plan.Columns, plan.Rows));
        Assert.Equal(0, plan.InterpolationError.Meters);
    }

    // All grids and repeats tried by brute force: nothing cheaper is good enough.
    [Theory]
    [InlineData(0.01, 0.02, 20, 5)]
    [InlineData(0.05, 0.001, 10, 4)]
    [InlineData(0, 0.03, 30, 10)]
    [InlineData(0.2, 0.2, 50, 20)]
    public void No_cheaper_plan_is_good_enough(double kx, double ky, double tolerance, double noise)
    {
        ProbePlan plan = ProbePlan.For(Bed, Curvature(kx, ky), Options(tolerance, noise));
        double best = double.PositiveInfinity;
        for (int r = 1; r <= 10; r++)
        {
            for (int nx = 2; nx <= 60; nx++)
            {
                for (int ny = 2; ny <= 60 && nx * ny <= 2500; ny++)
                {
                    double bend = (Math.Pow(0.3 / (nx - 1), 2) * kx / 8) + (Math.Pow(0.2 / (ny - 1), 2) * ky / 8);
                    bool good = bend + (2 * noise * 1e-6 / Math.Sqrt(r)) <= tolerance * 1e-6;
                    best = good ? Math.Min(best, nx * ny * (2 + (2.0 * r))) : best;
                }
            }
        }

        Assert.Equal(best, plan.Duration.Seconds, 1e-9);
        Assert.True(plan.InterpolationError + plan.ExpandedNoise <= Length.FromMicrometers(tolerance * (1 + 1e-12)));
    }

    [Theory]
    [InlineData("bowl")]
    [InlineData("saddle")]
    [InlineData("ridge")]
    [InlineData("dent")]
    [InlineData("waves")]
    [InlineData("faint")]
    public void The_bound_holds_on_every_sampled_surface(string kind)
    {
        (double kx, double ky) = TrueCurvature(kind);
        SurfaceRectangle square = SurfaceRectangle.Between(Length.Zero, Length.Zero, Length.FromMeters(0.3), Length.FromMeters(0.3));
        ProbePlan plan = ProbePlan.For(square, Curvature(kx, ky), Options(8, 1));
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromPoints(
            [.. plan.Places.Select(p => ProbePoint.FromMeters(p.XMeters, p.YMeters, SurfaceSimulator.Height(kind, p.XMeters, p.YMeters)))]));
        double worst = 0;
        for (int k = 0; k < 40_000; k++)
        {
            double x = 0.3 * ((k * 0.6180339887) % 1), y = 0.3 * ((k * 0.7548776662) % 1);
            worst = Math.Max(worst, Math.Abs(model.EstimateAt(Length.FromMeters(x), Length.FromMeters(y)).Meters - SurfaceSimulator.Height(kind, x, y)));
        }

        Assert.InRange(worst, 0, plan.InterpolationError.Meters + 1e-15);
        Assert.True(kind == "saddle" || worst > 0.05 * plan.InterpolationError.Meters, "the bound is not idle, but on a twist, which bilinear cells reproduce");
    }

    // A map probed with noise as planned is off by less than the tolerance at 95 % of the places at least: the tolerance adds the bound to two standard uncertainties.
    [Fact]
    public void A_planned_map_meets_its_tolerance()
    {
        (double kx, double ky) = TrueCurvature("waves");
        SurfaceRectangle square = SurfaceRectangle.Between(Length.Zero, Length.Zero, Length.FromMeters(0.3), Length.FromMeters(0.3));
        ProbePlan plan = ProbePlan.For(square, Curvature(kx, ky), Options(12, 5));
        var simulator = new SurfaceSimulator(3);
        int good = 0;
        for (int i = 0; i < 300; i++)
        {
            BilinearModel model = BilinearModel.Through(ProbedGrid.FromPoints([.. plan.Places.SelectMany(p => Enumerable.Range(0, plan.ReadingsPerPlace).Select(_ =>
                ProbePoint.FromMeters(p.XMeters, p.YMeters, SurfaceSimulator.Height("waves", p.XMeters, p.YMeters) + (5e-6 * simulator.Normal()))))]));
            double x = 0.3 * simulator.Uniform(), y = 0.3 * simulator.Uniform();
            good += Math.Abs(model.EstimateAt(Length.FromMeters(x), Length.FromMeters(y)).Meters - SurfaceSimulator.Height("waves", x, y)) <= 12e-6 ? 1 : 0;
        }

        Assert.InRange(good / 300.0, 0.95, 1);
    }

    [Fact]
    public void Curvature_of_a_grid()
    {
        double[] xs = [0, 0.05, 0.15, 0.2], ys = [0, 0.1, 0.2];
        ProbedGrid parabola = ProbedGrid.FromHeights(xs, ys, [.. from y in ys from x in xs select (0.02 * x * x) - (0.005 * y * y) + (0.1 * x * y)]);
        SurfaceCurvature curvature = SurfaceCurvature.Estimate(parabola);
        Assert.Equal(0.04, curvature.AlongX.InverseMeters, 1e-12);
        Assert.Equal(0.01, curvature.AlongY.InverseMeters, 1e-12);
        Assert.Empty(curvature.Findings);
        Assert.Equal("curvature up to 0.04 1/m along x, 0.01 1/m along y", curvature.ToString());
        ProbedGrid noisy = ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe("plane", 5, 5, 5e-6), new ProbedGridOptions { Repeatability = Length.FromMicrometers(5) });
        Assert.Equal(2, SurfaceCurvature.Estimate(noisy).Findings.Count(f => f.Code == SurfaceFindings.CurvatureWithinNoise));
        Assert.Contains("along x", Assert.Throws<ArgumentException>("grid", () => SurfaceCurvature.Estimate(ProbedGrid.FromHeights([0, 1], [0, 1, 2], new double[6]))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("alongX", () => Curvature(-1, 0));
    }

    [Fact]
    public void Reach_of_a_probe_beside_the_nozzle()
    {
        SurfaceRectangle reach = ProbeReach.Of(Bed, Length.FromMillimeters(-40), Length.FromMillimeters(10), Bed, Length.FromMillimeters(5));
        Assert.Equal("x 5 to 260 mm, y 10 to 195 mm", reach.ToString());
        Assert.Throws<ArgumentException>("nozzleTravel", () => ProbeReach.Of(Bed, Length.FromMeters(1), Length.Zero, Bed, Length.Zero));
        Assert.Throws<ArgumentOutOfRangeException>("margin", () => ProbeReach.Of(Bed, Length.Zero, Length.Zero, Bed, Length.FromMillimeters(-1)));
    }

    [Fact]
    public void Bad_options_are_refused()
    {
        ProbePlanOptions good = Options(20, 2);
        foreach (ProbePlanOptions bad in new[]
        {
            good with { Tolerance = Length.Zero }, good with { Repeatability = Length.Zero }, good with { CoverageFactor = 0 }, good with { MostPlaces = 3 },
            good with { MostReadings = 0 }, good with { TimePerReading = Duration.Zero }, good with { TimePerPlace = Duration.FromSeconds(-1) },
        })
        {
            Assert.StartsWith("options.", Assert.Throws<ArgumentOutOfRangeException>(() => ProbePlan.For(Bed, Curvature(1, 1), bad)).ParamName, StringComparison.Ordinal);
        }
    }

    /// <summary>Largest second differences of the simulator's surface on a fine lattice; raised by a thousandth for what lies between.</summary>
    private static (double AlongX, double AlongY) TrueCurvature(string kind)
    {
        const double H = 1e-4;
        double kx = 0, ky = 0;
        for (int k = 0; k < 90_000; k++)
        {
            double x = 0.001 * (k % 300), y = 0.001 * (k / 300), z = SurfaceSimulator.Height(kind, x, y);
            kx = Math.Max(kx, Math.Abs(SurfaceSimulator.Height(kind, x + H, y) - (2 * z) + SurfaceSimulator.Height(kind, x - H, y)) / (H * H));
            ky = Math.Max(ky, Math.Abs(SurfaceSimulator.Height(kind, x, y + H) - (2 * z) + SurfaceSimulator.Height(kind, x, y - H)) / (H * H));
        }

        return (1.001 * kx, 1.001 * ky);
    }

    private static SurfaceCurvature Curvature(double x, double y) => SurfaceCurvature.Of(ReciprocalLength.FromInverseMeters(x), ReciprocalLength.FromInverseMeters(y));

    private static ProbePlanOptions Options(double tolerance, double noise) => new() { Tolerance = Length.FromMicrometers(tolerance), Repeatability = Length.FromMicrometers(noise) };
}
