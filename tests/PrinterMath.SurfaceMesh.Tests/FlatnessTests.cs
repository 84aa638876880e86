using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class FlatnessTests
{
    /// <summary>At least 93 %; 300 cases: 93 % − 3.29·√(0.93·0.07/300). The limits are cautious, so only this side binds.</summary>
    private const double Lowest = 0.882;

    [Fact]
    public void Raw_values_by_hand()
    {
        // Corners of a square, 1 µm up and down alternately: the plane is level at 5 µm.
        ProbePoint[] points = [Point(0, 0, 6), Point(1, 0, 4), Point(0, 1, 4), Point(1, 1, 6)];
        Flatness flatness = Flatness.Of(points, new FlatnessOptions { Seed = 1 });
        Assert.Equal(2, flatness.RawPeakToValley.Micrometers, 1e-9);
        Assert.Equal(1, flatness.RawRootMeanSquare.Micrometers, 1e-9);
        Assert.False(flatness.TryGetPeakToValley(out _));
        Assert.Equal(SurfaceFindings.RepeatabilityUnknown, Assert.Throws<IndeterminateException>(() => flatness.PeakToValley).Finding!.Code);
    }

    [Fact]
    public void Same_seed_same_numbers_and_the_plane_does_not_matter()
    {
        ProbePoint[] points = new SurfaceSimulator(1).Probe("ridge", 7, 7, 1e-5, stated: true);
        Flatness one = Flatness.Of(points, new FlatnessOptions { Seed = 4 });
        Flatness same = Flatness.Of(points, new FlatnessOptions { Seed = 4 });
        Assert.Equal(one.PeakToValley, same.PeakToValley);
        Assert.NotEqual(one.PeakToValley, Flatness.Of(points, new FlatnessOptions { Seed = 5 }).PeakToValley);
        Flatness tilted = Flatness.Of(
            [.. points.Select(p => ProbePoint.FromMeters(p.XMeters, p.YMeters, p.ZMeters + (0.01 * p.XMeters) - 0.02, p.StandardUncertaintyMeters))],
            new FlatnessOptions { Seed = 4 });
        Assert.Equal(one.PeakToValley.SiValue, tilted.PeakToValley.SiValue, 1e-15);
        Assert.Equal((one.HighestPoint, one.LowestPoint), (tilted.HighestPoint, tilted.LowestPoint));
    }

    [Fact]
    public void Little_noise_leaves_the_raw_value()
    {
        ProbePoint[] points = new SurfaceSimulator(1).Probe("bowl", 7, 7, 1e-9, stated: true);
        Flatness flatness = Flatness.Of(points, new FlatnessOptions { Seed = 1 });
        Assert.Equal(flatness.RawPeakToValley.Micrometers, flatness.PeakToValley.Value.Micrometers, 0.005);
        Assert.Empty(flatness.Findings);
    }

    [Fact]
    public void A_plane_is_flat_within_noise()
    {
        ProbePoint[] points = new SurfaceSimulator(1).Probe("plane", 7, 7, 1e-5, stated: true);
        Flatness flatness = Flatness.Of(points, new FlatnessOptions { Seed = 1 });
        Assert.Equal(SurfaceFindings.FlatWithinNoise, Assert.Single(flatness.Findings).Code);
        Assert.Equal(0, flatness.LowerLimit.Meters);
        Assert.True(flatness.PeakToValley.Value < flatness.RawPeakToValley);
    }

    [Fact]
    public void Map_is_needed_for_warp_and_not_for_noise()
    {
        Tolerance<Length> limit = Tolerance.AtMost(Length.FromMicrometers(100));
        Assert.Equal(MapDecision.Needed, Need("saddle", 5e-6));
        Assert.Equal(MapDecision.NotNeeded, Need("plane", 1e-5));
        Assert.Equal(MapDecision.Undecided, Need("ridge", 1e-5));
        Assert.Throws<ArgumentException>(() => MapNeed.Judge(Of("plane", 1e-5), Tolerance.AtLeast(Length.FromMicrometers(100))));

        MapDecision Need(string kind, double noise) => MapNeed.Judge(Of(kind, noise), limit).Decision;
        static Flatness Of(string kind, double noise) =>
            Flatness.Of(new SurfaceSimulator(1).Probe(kind, 7, 7, noise, stated: true), new FlatnessOptions { Seed = 1 });
    }

    [Fact]
    public void Points_without_a_plane_are_a_finding()
    {
        ProbePoint[] line = [.. Enumerable.Range(0, 6).Select(i => ProbePoint.FromMeters(i, 2 * i, 0))];
        Flatness flatness = Flatness.Of(line, new FlatnessOptions { Seed = 1 });
        Assert.Equal(SurfaceFindings.FlatnessUndetermined, Assert.Throws<IndeterminateException>(() => flatness.RawPeakToValley).Finding!.Code);
        Assert.Throws<ArgumentOutOfRangeException>(() => Flatness.Of(line, new FlatnessOptions { Seed = 1, Trials = 10 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Flatness.Of(line, new FlatnessOptions { Seed = 1, Coverage = 1 }));
    }

    // Limits and value ± 1.96 u against the simulator's own peak-to-valley; the root-mean-square error stands beside, in units of the noise. It is bounded by 3.6: the
    // worst case is a flat surface, where the raw value is off by d = 3.8 (5 × 5) to 5.2 (11 × 11) and the corrected one by half of the upper limit.
    [Theory]
    [InlineData("plane", 5, 1e-5, false)]
    [InlineData("plane", 11, 1e-5, true)]
    [InlineData("faint", 7, 3e-5, false)]
    [InlineData("faint", 11, 2e-6, false)]
    [InlineData("bowl", 5, 1e-5, true)]
    [InlineData("saddle", 11, 2e-6, false)]
    [InlineData("ridge", 7, 1e-5, false)]
    [InlineData("dent", 5, 3e-5, false)]
    [InlineData("dent", 7, 2e-6, false)]
    [InlineData("waves", 5, 2e-6, false)]
    [InlineData("waves", 11, 3e-5, true)]
    public void Limits_hold_the_true_flatness(string kind, int side, double noise, bool coarse)
    {
        var simulator = new SurfaceSimulator(1);
        double truth = SurfaceSimulator.TruePeakToValley(kind, side, side);
        int within = 0, covered = 0;
        double squares = 0;
        for (int i = 0; i < 300; i++)
        {
            Flatness flatness = Flatness.Of(
                simulator.Probe(kind, side, side, noise, coarse: coarse), new FlatnessOptions { Seed = i, Repeatability = Length.FromMeters(noise), Trials = 200 });
            Measured<Length> value = flatness.PeakToValley;
            within += truth >= flatness.LowerLimit.Meters - 1e-15 && truth <= flatness.UpperLimit.Meters ? 1 : 0;
            covered += Math.Abs(value.SiValue - truth) <= (1.96 * value.SiStandardUncertainty) + 1e-12 ? 1 : 0;
            squares += Math.Pow((value.SiValue - truth) / noise, 2) / 300;
        }

        Assert.InRange(within / 300.0, Lowest, 1);
        Assert.InRange(covered / 300.0, Lowest, 1);
        Assert.InRange(Math.Sqrt(squares), 0, 3.6);
    }

    private static ProbePoint Point(double x, double y, double micrometers) => ProbePoint.FromMeters(x, y, micrometers * 1e-6);
}
