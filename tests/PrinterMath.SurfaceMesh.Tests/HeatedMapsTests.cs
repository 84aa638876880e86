using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class HeatedMapsTests
{
    private static readonly double[] Axis = [0, 0.1, 0.2];

    // A bow that grows from 0 at 25 °C to 0.2 mm at 85 °C; at 40 °C a quarter of it, u = √(0.75² + 0.25²) · 4 µm = 3.1623 µm.
    [Fact]
    public void Heights_go_along_straight_lines()
    {
        HeatedMaps maps = HeatedMaps.Of(Map(85, 2e-4), Map(25, 0));
        ProbedGrid between = maps.At(Temperature.FromDegreesCelsius(40));
        Assert.True(between.TryGetHeight(new GridNode(1, 1), out Length middle));
        Assert.Equal(50, middle.Micrometers, 1e-9);
        Assert.Equal(4e-6 * Math.Sqrt((0.75 * 0.75) + (0.25 * 0.25)), between.Points[4].StandardUncertaintyMeters, 1e-15);
        Assert.Equal(200, Middle(maps.At(Temperature.FromDegreesCelsius(85))), 1e-9);
        Assert.Equal(0, Middle(maps.At(Temperature.FromDegreesCelsius(25))), 1e-9);
        Assert.False(maps.TryGetLargestBend(out _, out _));
        Assert.Equal("2 maps from 25 to 85 °C", maps.ToString());
    }

    // Half way the bow is 0.13 mm instead of 0.1: 30 µm above the line, u = √(1 + 2·0.25)·4 µm.
    [Fact]
    public void A_bed_that_slips_is_told()
    {
        HeatedMaps maps = HeatedMaps.Of(Map(25, 0), Map(55, 1.3e-4), Map(85, 2e-4));
        Assert.True(maps.TryGetLargestBend(out Measured<Length> bend, out Temperature at));
        Assert.Equal(30, bend.SiValue * 1e6, 1e-9);
        Assert.Equal(4 * Math.Sqrt(1.5), bend.SiStandardUncertainty * 1e6, 1e-9);
        Assert.Equal(55, at.DegreesCelsius, 1e-9);
        Assert.Equal(65, Middle(maps.At(Temperature.FromDegreesCelsius(40))), 1e-9);
    }

    [Fact]
    public void Bad_arguments_name_themselves()
    {
        HeatedMaps maps = HeatedMaps.Of(Map(25, 0), Map(85, 2e-4));
        Assert.Equal("temperature", Assert.Throws<ArgumentOutOfRangeException>(() => maps.At(Temperature.FromDegreesCelsius(100))).ParamName);
        Assert.Equal("maps", Assert.Throws<ArgumentException>(() => HeatedMaps.Of(Map(25, 0))).ParamName);
        Assert.Equal("maps", Assert.Throws<ArgumentException>(() => HeatedMaps.Of(Map(25, 0), Map(25, 1e-4))).ParamName);
        HeatedMap other = HeatedMap.At(Temperature.FromDegreesCelsius(60), ProbedGrid.FromHeights([0, 0.1], Axis, new double[6]));
        Assert.Equal("maps", Assert.Throws<ArgumentException>(() => HeatedMaps.Of(Map(25, 0), other)).ParamName);
        Assert.Equal("temperature", Assert.Throws<ArgumentOutOfRangeException>(() => HeatedMap.At(Temperature.FromKelvins(0), other.Grid)).ParamName);
    }

    private static double Middle(ProbedGrid grid) => grid.TryGetHeight(new GridNode(1, 1), out Length height) ? height.Micrometers : double.NaN;

    private static HeatedMap Map(double celsius, double bow) => HeatedMap.At(
        Temperature.FromDegreesCelsius(celsius),
        ProbedGrid.FromHeights(Axis, Axis, [0, 0, 0, 0, bow, 0, 0, 0, 0], new ProbedGridOptions { Repeatability = Length.FromMicrometers(4) }));
}
