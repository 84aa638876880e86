using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class MapComparisonTests(ITestOutputHelper output)
{
    private const double Noise = 5e-6;
    private static readonly double[] Axis = [0, 0.06, 0.12, 0.18, 0.24, 0.3];

    private static int Cases => int.TryParse(Environment.GetEnvironmentVariable("PRINTERMATH_COVERAGE_CASES"), out int n) ? n : 300;

    // By hand: differences 3, 1, 1, 1 µm have the mean 1.5 and leave 1.5, −0.5, −0.5, −0.5; 0.1 µm in each map give u² = 0.02 µm², so χ² = 3/0.02 = 150 and the change is √(3/3 − 0.02) µm.
    [Fact]
    public void Four_nodes_by_hand()
    {
        MapComparison change = MapComparison.Of(Two([0, 0, 0, 0], 0.1e-6), Two([3e-6, 1e-6, 1e-6, 1e-6], 0.1e-6));
        Assert.Equal(1.5, change.Shift.SiValue * 1e6, 1e-12);
        Assert.Equal(Math.Sqrt(0.02 / 4), change.Shift.SiStandardUncertainty * 1e6, 1e-12);
        Assert.Equal(Math.Sqrt(1 - 0.02), change.Change.Micrometers, 1e-9);
        Assert.Equal(new GridNode(0, 0), change.FarthestNode);
        Assert.Equal(1.5, change.Farthest.SiValue * 1e6, 1e-12);
        Assert.True(change.HasChanged && change.ChanceProbability < 1e-12);
        Assert.Equal(-0.5e-6, change.ChangeMeters[3], 1e-15);
        Assert.StartsWith("changed: 1.0 µm rms", change.ToString(), StringComparison.Ordinal);
    }

    // An unchanged bed with another zero is called changed in no more than 5 %; one whose corner sank by eight times the noise of a reading, or that warped by 0.03 mm, in at least 95 %.
    [Fact]
    public void Changes_are_seen_and_none_is_made_up()
    {
        int made = 0, corner = 0, warp = 0, where = 0;
        for (int seed = 1; seed <= Cases; seed++)
        {
            var simulator = new SurfaceSimulator(seed);
            ProbedGrid before = Map(simulator, (_, _) => 0);
            made += MapComparison.Of(before, Map(simulator, (_, _) => 40e-6)).HasChanged ? 1 : 0;
            MapComparison sunk = MapComparison.Of(before, Map(simulator, (x, y) => x == 0.3 && y == 0.3 ? -8 * Noise : 0));
            corner += sunk.HasChanged ? 1 : 0;
            where += sunk.FarthestNode == new GridNode(5, 5) ? 1 : 0;
            warp += MapComparison.Of(before, Map(simulator, (x, y) => 30e-6 * Math.Pow((x / 0.15) - 1, 2))).HasChanged ? 1 : 0;
        }

        string figures = $"made up {made}, corner {corner} (named {where}), warp {warp} of {Cases}";
        output.WriteLine(figures);
        double margin = 3.29 * Math.Sqrt(0.05 * 0.95 / Cases);
        Assert.True(made <= (0.05 + margin) * Cases, figures);
        Assert.True(Math.Min(corner, warp) >= (0.95 - margin) * Cases && where >= (0.95 - margin) * Cases, figures);
    }

    [Fact]
    public void Bad_arguments_name_themselves()
    {
        ProbedGrid map = Two([0, 0, 0, 0], 1e-6);
        Assert.Equal("first", Assert.Throws<ArgumentException>(() => MapComparison.Of(ProbedGrid.FromHeights([0, 1], [0, 1], [0, 0, 0, 0]), map)).ParamName);
        Assert.Equal("second", Assert.Throws<ArgumentException>(() => MapComparison.Of(map, ProbedGrid.FromHeights([0, 1.02], [0, 1], [0, 0, 0, 0], Known(1e-6)))).ParamName);
        Assert.Equal("risk", Assert.Throws<ArgumentOutOfRangeException>(() => MapComparison.Of(map, map, 0)).ParamName);
    }

    private static ProbedGrid Map(SurfaceSimulator simulator, Func<double, double, double> change) => ProbedGrid.FromHeights(
        Axis, Axis, [.. Axis.SelectMany(y => Axis.Select(x => SurfaceSimulator.Height("ridge", x, y) + change(x, y) + (Noise * simulator.Normal())))], Known(Noise));

    private static ProbedGrid Two(double[] heights, double noise) => ProbedGrid.FromHeights([0, 1], [0, 1], heights, Known(noise));

    private static ProbedGridOptions Known(double noise) => new() { Repeatability = Length.FromMeters(noise) };
}
