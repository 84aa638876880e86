using PrinterMath.Measurement;
using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class LegendreModelTests(ITestOutputHelper output)
{
    private static double Cubic(double x, double y) => 1e-4 + (1e-3 * x) - (2e-3 * y) + (5e-3 * x * y) - (3e-3 * x * x) + (2e-2 * x * x * y) - (1e-2 * y * y * y);

    // A polynomial of degree 3 on 60 places: any degree from 3 on gives it back, with its slopes and, past a border, its tangents.
    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    public void Polynomials_are_reproduced(int degree)
    {
        ProbePoint[] points = [.. ThinPlateTests.Scattered(60, 1, "plane", 0).Select(p => ProbePoint.FromMeters(p.XMeters, p.YMeters, Cubic(p.XMeters, p.YMeters)))];
        LegendreModel model = LegendreModel.Fit(points, new LegendreOptions { Degree = degree, Outside = OutsideRule.ExtendLinearly });
        Assert.Equal(Cubic(0.11, 0.17), model.EstimateAt(Length.FromMeters(0.11), Length.FromMeters(0.17)).Meters, 1e-15);
        SurfaceGradient slope = model.GradientAt(Length.FromMeters(0.11), Length.FromMeters(0.17));
        Assert.Equal(1e-3 + (5e-3 * 0.17) - (6e-3 * 0.11) + (4e-2 * 0.11 * 0.17), slope.AlongX, 1e-12);
        Assert.Equal(-2e-3 + (5e-3 * 0.11) + (2e-2 * 0.11 * 0.11) - (3e-2 * 0.17 * 0.17), slope.AlongY, 1e-12);
        double At(double x, double y) => model.EstimateAt(Length.FromMeters(x), Length.FromMeters(y)).Meters;
        Assert.Equal((At(0.4 + 1e-5, -0.1) - At(0.4 - 1e-5, -0.1)) / 2e-5, model.GradientAt(Length.FromMeters(0.4), Length.FromMeters(-0.1)).AlongX, 1e-10);
        Assert.Equal((degree + 1) * (degree + 2) / 2, model.CoefficientCount);
    }

    // Degree two is the decomposition of a shape into six terms, which does it another way.
    [Fact]
    public void Degree_two_is_the_decomposition_of_a_shape()
    {
        ProbePoint[] points = ThinPlateTests.Scattered(50, 2, "saddle", 5e-6);
        ShapeDecomposition shape = ShapeDecomposition.Fit(points, new ShapeOptions { Repeatability = Length.FromMicrometers(5) });
        LegendreModel model = LegendreModel.Fit(points, new LegendreOptions { Degree = 2, Repeatability = Length.FromMicrometers(5) });
        SurfaceRectangle r = shape.Rectangle;
        Measured<Length> centre = model.HeightAt((r.Left + r.Right) / 2, (r.Front + r.Rear) / 2);
        double[] c = [.. shape.Components.Select(component => component.Amplitude.SiValue)];
        Assert.Equal(c[0] - (c[3] / 2) - (c[5] / 2), centre.SiValue, 1e-15);
        double variance = shape.Amplitudes.Covariance(0, 0) + ((shape.Amplitudes.Covariance(3, 3) + shape.Amplitudes.Covariance(5, 5)) / 4) - shape.Amplitudes.Covariance(0, 3) - shape.Amplitudes.Covariance(0, 5) + (shape.Amplitudes.Covariance(3, 5) / 2);
        Assert.Equal(Math.Sqrt(variance), centre.SiStandardUncertainty, 1e-15);
    }

    // Venables, Ripley, Modern Applied Statistics with S, 4th ed., chapter 15, fit such surfaces; here a cubic is planted: its degree, or one more by chance, and intervals at 95 %.
    [Fact]
    public void The_degree_is_found_and_intervals_hold()
    {
        int cases = int.TryParse(Environment.GetEnvironmentVariable("PRINTERMATH_COVERAGE_CASES"), out int n) ? n : 300, held = 0, right = 0, low = 0;
        for (int seed = 1; seed <= cases; seed++)
        {
            var simulator = new SurfaceSimulator(seed);
            ProbePoint[] points = [.. ThinPlateTests.Scattered(64, seed, "plane", 0).Select(p => ProbePoint.FromMeters(p.XMeters, p.YMeters, Cubic(p.XMeters, p.YMeters) + (2e-6 * simulator.Normal())))];
            LegendreModel stated = LegendreModel.Fit(points, new LegendreOptions { Degree = 3 });
            held += stated.HeightAt(Length.FromMeters(0.1), Length.FromMeters(0.2)).Interval().Contains(Length.FromMeters(Cubic(0.1, 0.2))) ? 1 : 0;
            int degree = LegendreModel.Fit(points).Degree;
            right += degree == 3 ? 1 : 0;
            low += degree < 3 ? 1 : 0;
        }

        string figures = $"held {held}, degree found {right}, too low {low}, of {cases}";
        output.WriteLine(figures);
        double margin = 3.29 * Math.Sqrt(0.05 * 0.95 / cases);
        Assert.True(held >= (0.93 - margin) * cases && held <= (0.97 + margin) * cases, figures);
        Assert.True(low == 0 && right >= 0.7 * cases, figures);
    }

    [Fact]
    public void What_noise_does_not_explain_is_told()
    {
        ProbePoint[] points = ThinPlateTests.Scattered(64, 3, "ridge", 5e-6);
        LegendreModel plane = LegendreModel.Fit(points, new LegendreOptions { Degree = 1, Repeatability = Length.FromMicrometers(5) });
        double left = plane.LeftOver.Meters;
        Assert.Equal(2 * Math.Sqrt((left * left) - (5e-6 * 5e-6)), plane.InterpolationErrorAt(Length.FromMeters(0.1), Length.FromMeters(0.1)).Meters, 1e-12);
        Assert.Equal(0, LegendreModel.Fit(ThinPlateTests.Scattered(64, 4, "plane", 5e-6), new LegendreOptions { Degree = 1, Repeatability = Length.FromMicrometers(50) }).InterpolationErrorAt(Length.FromMeters(0.1), Length.FromMeters(0.1)).Meters);
    }

    [Fact]
    public void What_holds_no_polynomial_is_said()
    {
        ProbePoint[] line = [.. Enumerable.Range(0, 8).Select(i => ProbePoint.FromMeters(0.02 * i, 0.03 * i, 1e-5 * i))];
        Assert.False(LegendreModel.TryFit(line, out LegendreModel? none, out Finding? finding));
        Assert.Null(none);
        Assert.Equal(SurfaceFindings.ShapeUndetermined, finding!.Code);
        Assert.Throws<IndeterminateException>(() => LegendreModel.Fit(ThinPlateTests.Scattered(5, 1, "bowl", 0), new LegendreOptions { Degree = 2 }));
        Assert.Equal("options", Assert.Throws<ArgumentOutOfRangeException>(() => LegendreModel.Fit(line, new LegendreOptions { Degree = 9 })).ParamName);
        LegendreModel exact = LegendreModel.Fit(ThinPlateTests.Scattered(6, 1, "bowl", 0), new LegendreOptions { Degree = 2 });
        Assert.False(exact.TryGetHeight(Length.FromMeters(0.1), Length.FromMeters(0.1), out _));
        Assert.Throws<IndeterminateException>(() => exact.LeftOver);
    }

    [Fact]
    public void Heights_of_many_places_allocate_nothing()
    {
        LegendreModel model = LegendreModel.Fit(ThinPlateTests.Scattered(40, 1, "bowl", 0), new LegendreOptions { Degree = 4, Outside = OutsideRule.Clamp });
        double[] xs = [.. Enumerable.Range(0, 300).Select(i => 0.001 * i)], zs = new double[300];
        Allocation.None(i =>
        {
            model.Heights(xs, xs, zs);
            return zs[i % zs.Length];
        });
    }
}
