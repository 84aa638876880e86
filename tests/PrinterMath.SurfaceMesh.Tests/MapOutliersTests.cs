using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class MapOutliersTests
{
    private const double Sigma = 4e-6;

    private static readonly int Cases =
        int.TryParse(Environment.GetEnvironmentVariable("PRINTERMATH_COVERAGE_CASES"), NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 100;

    [Theory]
    [InlineData("bowl", 60e-6)]
    [InlineData("saddle", -60e-6)]
    public void A_wrong_reading_is_named(string kind, double error)
    {
        ProbePoint[] points = new SurfaceSimulator(1).Probe(kind, 7, 7, Sigma);
        ProbePoint wrong = points[17];
        points[17] = ProbePoint.FromMeters(wrong.XMeters, wrong.YMeters, wrong.ZMeters + error);
        MapOutliers found = MapOutliers.Find(ProbedGrid.FromPoints(points));
        MapOutlier outlier = Assert.Single(found.Outliers);
        Assert.Equal(new GridNode(3, 2), outlier.Node);
        Assert.Equal((wrong.XMeters, wrong.YMeters), (outlier.Place.XMeters, outlier.Place.YMeters));

        // Off by the noise of the reading and of the prediction from eight others.
        Assert.InRange(outlier.Deviation.Meters - error, -4 * Sigma, 4 * Sigma);
        Finding finding = Assert.Single(found.Findings);
        Assert.Equal(SurfaceFindings.MapOutlier, finding.Code);
        Assert.Equal(48, found.RemainingPoints.Count);
        Assert.DoesNotContain(points[17], found.RemainingPoints);
        Assert.InRange(found.Scale.Meters, 0.5 * Sigma, 2 * Sigma);
    }

    [Fact]
    public void A_corner_can_be_wrong_and_so_can_several()
    {
        ProbePoint[] points = new SurfaceSimulator(1).Probe("bowl", 9, 9, Sigma);
        int[] wrong = [0, 30, 31, 72];
        foreach (int k in wrong)
        {
            points[k] = ProbePoint.FromMeters(points[k].XMeters, points[k].YMeters, points[k].ZMeters + 2e-4);
        }

        Assert.Equal(wrong, MapOutliers.Find(ProbedGrid.FromPoints(points)).Outliers.Select(o => (o.Node.Row * 9) + o.Node.Column).Order());
    }

    // Silent on sound maps: at a stated 1 % a map, within the 99.9 % binomial limit. Found when there, anywhere on the map: at least 95 %, within its limit, for errors of so many times
    // the noise: on 5 by 5 nodes a corner is extrapolated and the scale hardly known. PRINTERMATH_COVERAGE_CASES sets another number of cases than 100 each.
    [Theory]
    [InlineData("bowl", 5, 40, false)]
    [InlineData("saddle", 7, 15, false)]
    [InlineData("faint", 9, 12, true)]
    [InlineData("waves", 11, 12, true)]
    public void False_alarms_are_rare_and_gross_errors_are_found(string kind, int side, double planted, bool coarse)
    {
        var simulator = new SurfaceSimulator(2);
        int alarms = 0, found = 0;
        for (int i = 0; i < Cases; i++)
        {
            ProbePoint[] points = simulator.Probe(kind, side, side, Sigma, coarse: coarse);
            alarms += MapOutliers.Find(ProbedGrid.FromPoints(points)).Outliers.Count > 0 ? 1 : 0;
            int k = (int)(simulator.Uniform() * points.Length);
            points[k] = ProbePoint.FromMeters(points[k].XMeters, points[k].YMeters, points[k].ZMeters + (planted * Sigma * (i % 2 == 0 ? 1 : -1)));
            found += MapOutliers.Find(ProbedGrid.FromPoints(points)).Outliers.Any(o => (o.Node.Row * side) + o.Node.Column == k) ? 1 : 0;
        }

        Assert.InRange(alarms, 0, (0.01 * Cases) + (3.1 * Math.Sqrt(0.0099 * Cases)) + 1);
        Assert.InRange(found / (double)Cases, 0.95 - (3.1 * Math.Sqrt(0.0475 / Cases)), 1);
    }

    [Fact]
    public void Missing_nodes_and_maps_that_are_too_small()
    {
        ProbePoint[] points = new SurfaceSimulator(1).Probe("bowl", 6, 6, Sigma);
        Assert.Empty(MapOutliers.Find(ProbedGrid.FromPoints([.. points.Where((_, k) => k % 5 != 0)])).Outliers);
        MapOutliers small = MapOutliers.Find(ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe("bowl", 2, 6, Sigma)));
        Assert.Empty(small.Outliers);
        Assert.Equal(SurfaceFindings.MapTooSmall, Assert.Single(small.Findings).Code);
    }

    [Fact]
    public void Without_noise_a_single_step_is_still_named_and_nothing_else()
    {
        double[] axis = [0, 0.1, 0.2, 0.3, 0.4], heights = new double[25];
        Assert.Empty(MapOutliers.Find(ProbedGrid.FromHeights(axis, axis, heights)).Outliers);
        heights[12] = 1e-4;
        Assert.Equal(new GridNode(2, 2), MapOutliers.Find(ProbedGrid.FromHeights(axis, axis, heights)).Outliers[0].Node);
        Assert.Throws<ArgumentOutOfRangeException>("falseAlarmProbability", () => MapOutliers.Find(ProbedGrid.FromHeights(axis, axis, heights), 0));
    }

    [Fact]
    public void Known_noise_keeps_small_scatter_from_standing_out()
    {
        double[] axis = [0, 0.1, 0.2, 0.3, 0.4], heights = new double[25];
        heights[12] = 5e-6;
        var known = new ProbedGridOptions { Repeatability = UnitsNet.Length.FromMeters(Sigma) };
        Assert.Empty(MapOutliers.Find(ProbedGrid.FromHeights(axis, axis, heights, known)).Outliers);
    }
}
