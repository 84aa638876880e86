using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class FlowCorrectionTests
{
    private static readonly Bead Target = Bead.FromWidthAndHeight(Length.FromMillimeters(0.45), Length.FromMillimeters(0.2));

    // Section in mm²: circle of 0.2 plus strip. 0.45 wide 0.0814159265, 0.47 wide 0.0854159265; u(ratio) = ratio·h·u/A.
    [Fact]
    public void A_single_wall_goes_by_area_not_by_width()
    {
        FlowEstimate wall = FlowEstimate.FromWall(Target, Millimeters(0.47, 0.01));
        Assert.Equal(0.0814159265 / 0.0854159265, wall.Ratio.Result.SiValue, 1e-8);
        Assert.NotEqual(0.45 / 0.47, wall.Ratio.Result.SiValue, 1e-3);
        Assert.Equal(0.0814159265 / 0.0854159265 * 0.2 * 0.01 / 0.0854159265, wall.Ratio.Result.SiStandardUncertainty, 1e-9);
        Assert.Empty(wall.Findings);
    }

    [Fact]
    public void Several_beads_and_crests_are_taken_off()
    {
        var options = new WallOptions { Beads = 3, Spacing = Length.FromMillimeters(0.4), CrestHeight = Measured.FromRange(Length.Zero, Length.FromMillimeters(0.02)) };
        Measured<double> ratio = FlowEstimate.FromWall(Target, Millimeters(1.28, 0.01), options).Ratio.Result;
        Assert.Equal(0.0814159265 / 0.0854159265, ratio.SiValue, 1e-8);
        double width = Math.Sqrt(1e-4 + (0.02 * 0.02 / 12));
        Assert.Equal(0.0814159265 / 0.0854159265 * 0.2 * width / 0.0854159265, ratio.SiStandardUncertainty, 1e-9);
    }

    [Fact]
    public void The_corrected_flow_gives_the_wanted_wall()
    {
        // A printer that lays 6 % too much; its wall is found by halving, outside the package.
        double measured = Workshop.BeadWidth(1.06 * 0.0814159265358979, 0.2);
        Assert.Equal(1 / 1.06, FlowEstimate.FromWall(Target, Millimeters(measured, 0.01)).Ratio.Result.SiValue, 1e-9);
    }

    [Fact]
    public void A_weighed_part()
    {
        FlowEstimate part = FlowEstimate.FromMass(
            Volume.FromCubicMillimeters(10_000),
            Measured.Of(Density.FromKilogramsPerCubicMeter(1240), Density.FromKilogramsPerCubicMeter(12.4)),
            Measured.Of(Mass.FromGrams(12.9), Mass.FromGrams(0.02)));
        Assert.Equal(12.4 / 12.9, part.Ratio.Result.SiValue, 1e-12);
        Assert.Equal("density", part.Ratio.Largest.Input.Name);
    }

    [Fact]
    public void A_wall_too_thin_holds_no_answer()
    {
        FlowEstimate wall = FlowEstimate.FromWall(Target, Millimeters(0.47, 0.01), new WallOptions { Beads = 2, Spacing = Length.FromMillimeters(0.4) });
        Assert.False(wall.TryGetRatio(out _));
        Assert.Equal(ExtrusionFindings.FlowWallTooThin, Assert.Throws<IndeterminateException>(() => wall.Ratio).Finding!.Code);
        Assert.Throws<IndeterminateException>(() => FlowCorrection.Combine(1, [wall]));
    }

    [Fact]
    public void A_wrong_unit_is_noticed() =>
        Assert.Equal(
            ExtrusionFindings.FlowImplausible,
            Assert.Single(FlowEstimate.FromWall(Target, Measured.Of(Length.FromCentimeters(0.45), Length.FromMillimeters(0.01))).Findings).Code);

    // Weights 1/0.01² and 1/0.02²: 0.8 and 0.2; u = 0.01·0.02/√(0.01² + 0.02²).
    [Fact]
    public void Estimates_combine_by_inverse_variance()
    {
        FlowCorrection flow = FlowCorrection.Combine(
            0.98, [Estimate("a", 0.96, 0.01), Estimate("b", 0.98, 0.02)], new FlowCorrectionOptions { Limit = Tolerance.Around(1.0, 0.01) });
        Assert.Equal(0.964, flow.Ratio.SiValue, 1e-9);
        Assert.Equal(0.0002 / Math.Sqrt(0.0005), flow.Ratio.SiStandardUncertainty, 1e-9);
        Assert.Equal(0.98 * 0.964, flow.NewFlow.SiValue, 1e-9);

        // χ² = 0.02²/(0.01² + 0.02²).
        Assert.Equal(0.8, flow.ChiSquare!.Value, 1e-6);
        Assert.Equal(Math.Sqrt(0.8), flow.BirgeRatio!.Value, 1e-6);
        Assert.Empty(flow.Findings);
        Assert.Equal(Conclusion.Outside, flow.Verdict!.Conclusion);
    }

    [Fact]
    public void Estimates_that_disagree_are_said_to_and_widen_the_result()
    {
        FlowCorrection flow = FlowCorrection.Combine(1, [Estimate("a", 0.94, 0.01), Estimate("b", 1.02, 0.01)]);
        Assert.Equal(ExtrusionFindings.FlowInconsistent, Assert.Single(flow.Findings).Code);

        // χ² = 0.08²/(2·0.01²) = 32, R = √32; u = R·0.01/√2 = 0.04.
        Assert.Equal(32, flow.ChiSquare!.Value, 1e-5);
        Assert.Equal(0.04, flow.Ratio.SiStandardUncertainty, 1e-8);
        Assert.Equal(1, flow.Ratio.DegreesOfFreedom);
    }

    [Fact]
    public void Order_of_estimates_does_not_matter()
    {
        FlowEstimate[] estimates = [Estimate("a", 0.96, 0.01), Estimate("b", 0.98, 0.02), Estimate("c", 0.95, 0.013)];
        Assert.Equal(
            FlowCorrection.Combine(1, estimates).Ratio.SiValue, FlowCorrection.Combine(1, [.. Enumerable.Reverse(estimates)]).Ratio.SiValue, 1e-14);
    }

    [Fact]
    public void A_single_estimate_passes_through()
    {
        FlowCorrection flow = FlowCorrection.Combine(0.5, [Estimate("a", 0.96, 0.01)]);
        Assert.Null(flow.ChiSquare);
        Assert.Null(flow.BirgeRatio);
        Assert.Equal(0.48, flow.NewFlow.SiValue, 1e-9);
    }

    [Fact]
    public void The_feed_is_an_estimate_too()
    {
        FeedCalibration feed = FeedCalibration.Fit(
            [FeedTrial.Of(Length.FromMillimeters(100), Length.FromMillimeters(97)), FeedTrial.Of(Length.FromMillimeters(100), Length.FromMillimeters(98))]);
        Assert.Equal(100 / 97.5, FlowEstimate.FromFeed(feed).Ratio.Result.SiValue, 1e-12);
    }

    [Fact]
    public void Refuses_what_cannot_be()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => FlowCorrection.Combine(0, [Estimate("a", 0.96, 0.01)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => FlowCorrection.Combine(1, []));
        Assert.Throws<ArgumentException>(() => FlowCorrection.Combine(1, [Estimate("a", 0.96, 0.01), Estimate("a", 0.97, 0.01)]));
        Assert.Throws<InvalidOperationException>(() => FlowEstimate.FromWall(default, Millimeters(0.47, 0.01)));
        Assert.Throws<ArgumentOutOfRangeException>(() => FlowEstimate.FromWall(Target, Millimeters(0.47, 0.01), new WallOptions { Beads = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => FlowEstimate.FromMass(
            Volume.Zero, Measured.Exact(Density.FromKilogramsPerCubicMeter(1240)), Measured.Exact(Mass.FromGrams(1))));
    }

    [Fact]
    public void Caliper_readings_all_alike_have_the_step()
    {
        Length reading = Length.FromMillimeters(0.47), step = Length.FromMillimeters(0.01);
        Measured<Length> wall = CaliperReadings.Combine([reading, reading, reading], step).Result;
        Assert.Equal(0.01 / Math.Sqrt(12), wall.StandardUncertainty.Millimeters, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => CaliperReadings.Combine([reading], Length.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => CaliperReadings.Combine([], step));
    }

    /// <summary>An estimate of given ratio: a part of exact density weighed with a given relative uncertainty.</summary>
    private static FlowEstimate Estimate(string name, double ratio, double u)
    {
        double area = 0.0814159265358979 / ratio, width = Workshop.BeadWidth(area, 0.2);
        return FlowEstimate.FromWall(Target, Millimeters(width, u / ratio * area / 0.2), new WallOptions { Name = name });
    }

    private static Measured<Length> Millimeters(double value, double u) => Measured.Of(Length.FromMillimeters(value), Length.FromMillimeters(u));
}
