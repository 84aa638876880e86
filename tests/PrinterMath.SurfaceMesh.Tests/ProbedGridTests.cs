using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class ProbedGridTests
{
    private static readonly Length Micrometer = Length.FromMicrometers(1);

    [Fact]
    public void Points_near_each_other_share_a_node_and_are_averaged()
    {
        List<ProbePoint> points = [.. Square(3), ProbePoint.FromMeters(0.02005, 0.00001, 4e-6)];
        ProbedGrid grid = ProbedGrid.FromPoints(points, new ProbedGridOptions { Repeatability = 5 * Micrometer });
        Assert.Equal((3, 3), (grid.Columns, grid.Rows));
        Assert.True(grid.TryGetHeight(new GridNode(1, 0), out Length mean));
        Assert.Equal(2, mean.Micrometers, 1e-9);
        Assert.Equal(5e-6 / Math.Sqrt(2), grid.Points[1].StandardUncertaintyMeters, 1e-18);
        Assert.Equal(SurfaceFindings.Repeated, Assert.Single(grid.Findings).Code);
    }

    [Fact]
    public void Repeats_tell_the_repeatability()
    {
        // Pairs 2 µm apart: s² = 2·1²/1 = 2 µm² for each, pooled over 9 pairs.
        ProbePoint[] points = [.. Square(3).SelectMany(p => new[] { p, ProbePoint.FromMeters(p.XMeters, p.YMeters, p.ZMeters + 2e-6) })];
        ProbedGrid grid = ProbedGrid.FromPoints(points);
        Assert.True(grid.HasUncertainty);
        Measured<Length> z = BilinearModel.Through(grid).HeightAt(Length.Zero, Length.Zero);
        Assert.Equal(1e-6, z.SiStandardUncertainty, 1e-15);
        Assert.Equal(9, z.DegreesOfFreedom);
    }

    [Fact]
    public void Repeats_that_disagree_are_named()
    {
        ProbePoint[] points = [.. Square(3), ProbePoint.FromMeters(0, 0, 60e-6)];
        ProbedGrid grid = ProbedGrid.FromPoints(points, new ProbedGridOptions { Repeatability = 5 * Micrometer });
        Assert.Contains(grid.Findings, f => f.Code == SurfaceFindings.RepeatsDisagree);
    }

    [Fact]
    public void Missing_nodes_are_known()
    {
        ProbePoint[] points = [.. Square(4).Where((_, k) => k != 5)];
        ProbedGrid grid = ProbedGrid.FromPoints(points);
        Assert.False(grid.IsComplete);
        Assert.Equal(new GridNode(1, 1), Assert.Single(grid.MissingNodes));
        Assert.False(grid.IsProbed(new GridNode(1, 1)));
        Assert.False(grid.TryGetHeight(new GridNode(1, 1), out _));
        Assert.Contains(grid.Findings, f => f.Code == SurfaceFindings.Missing);
    }

    [Theory]
    [InlineData(1, 5)]
    [InlineData(5, 1)]
    public void One_row_or_one_column_is_no_surface(int columns, int rows)
    {
        ProbePoint[] points = [.. from j in Enumerable.Range(0, rows) from i in Enumerable.Range(0, columns) select ProbePoint.FromMeters(i * 0.02, j * 0.02, 0)];
        Assert.Contains("at least 2 of each", Assert.Throws<ArgumentException>(() => ProbedGrid.FromPoints(points)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Scattered_points_are_no_grid()
    {
        var simulator = new SurfaceSimulator(1);
        ProbePoint[] points = [.. Enumerable.Range(0, 20).Select(_ => ProbePoint.FromMeters(simulator.Uniform(), simulator.Uniform(), 0))];
        Assert.Throws<ArgumentException>(() => ProbedGrid.FromPoints(points));
    }

    [Fact]
    public void Positions_that_run_into_each_other_are_refused()
    {
        ProbePoint[] points = [.. Enumerable.Range(0, 100).Select(k => ProbePoint.FromMeters(k * 9e-5, k % 2 * 0.1, 0))];
        Assert.Contains("do not lie on a grid", Assert.Throws<ArgumentException>(() => ProbedGrid.FromPoints(points)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_axes_and_heights_are_refused()
    {
        Assert.Throws<ArgumentException>(() => ProbedGrid.FromHeights([0, 1], [0, 1], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => ProbedGrid.FromHeights([0, 0], [0, 1], [1, 2, 3, 4]));
        Assert.Throws<ArgumentException>(() => ProbedGrid.FromHeights([0], [0, 1], [1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProbedGrid.FromHeights([0, 1], [0, 1], [1, 2, 3, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProbedGrid.FromPoints(Square(2), new ProbedGridOptions { Repeatability = Length.Zero }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProbedGrid.FromPoints(Square(2)).IsProbed(new GridNode(2, 0)));
        Assert.Throws<ArgumentException>(() => ProbedGrid.FromPoints([]));
    }

    private static ProbePoint[] Square(int side) =>
        [.. from j in Enumerable.Range(0, side) from i in Enumerable.Range(0, side) select ProbePoint.FromMeters(i * 0.02, j * 0.02, 0)];
}
