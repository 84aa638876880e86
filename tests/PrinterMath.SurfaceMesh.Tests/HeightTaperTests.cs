using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class HeightTaperTests
{
    private static readonly HeightTaper Taper = HeightTaper.Between(Length.FromMillimeters(1), Length.FromMillimeters(11));

    // Ten millimetres of taper over a rise of 0.2 mm: at h = 6 mm half of it is left, Z = 6.1 mm; layers are 2 % thinner, 0.2 mm by 4 µm.
    [Fact]
    public void By_hand()
    {
        Length rise = Length.FromMillimeters(0.2);
        Assert.Equal(0.5, Taper.ShareAt(Length.FromMillimeters(6)), 1e-15);
        Assert.Equal(6.1, Taper.PrintedHeight(Length.FromMillimeters(6), rise).Millimeters, 1e-12);
        Assert.Equal(0.4, Taper.PrintedHeight(Length.FromMillimeters(0.2), rise).Millimeters, 1e-12);
        Assert.Equal(30, Taper.PrintedHeight(Length.FromMillimeters(30), rise).Millimeters, 1e-12);
        Assert.Equal(0.98, Taper.ThicknessRatio(rise), 1e-15);
        Assert.Equal(1.02, Taper.ThicknessRatio(-rise), 1e-15);
        Assert.Equal(-4, Taper.ThicknessError(Length.FromMillimeters(5), rise, rise).Micrometers, 1e-9);

        // Half of the layer lies below the taper.
        Assert.Equal(-2, Taper.ThicknessError(Length.FromMillimeters(0.9), rise, rise).Micrometers, 1e-9);
        Assert.Equal(0, Taper.ThicknessError(Length.FromMillimeters(12), rise, rise).Micrometers);
        Assert.Equal("full correction up to 1 mm, none from 11 mm on", Taper.ToString());
    }

    [Theory]
    [InlineData(0.15)]
    [InlineData(-0.3)]
    [InlineData(9.9)]
    public void Layers_add_up_to_the_flat_top(double rise)
    {
        Length z = Length.FromMillimeters(rise), layer = Length.FromMillimeters(0.2);
        double sum = 0, thinnest = double.PositiveInfinity;
        for (int k = 0; k < 60; k++)
        {
            double thickness = layer.Millimeters + Taper.ThicknessError(k * layer, layer, z).Millimeters;
            thinnest = Math.Min(thinnest, thickness);
            sum += thickness;
        }

        // 60 layers of 0.2 mm end at 12 mm, above the taper, and begin on the surface.
        Assert.Equal(12 - rise, sum, 1e-10);
        Assert.True(thinnest > 0);
    }

    [Fact]
    public void The_shortest_taper_just_meets_the_error()
    {
        HeightTaper taper = HeightTaper.ForThicknessError(Length.FromMillimeters(0.15), 0.02, Length.FromMillimeters(1));
        Assert.Equal(8.5, taper.End.Millimeters, 1e-12);
        Assert.Equal(0.98, taper.ThicknessRatio(Length.FromMillimeters(0.15)), 1e-12);
        Assert.Equal(1.02, taper.ThicknessRatio(Length.FromMillimeters(-0.15)), 1e-12);
    }

    [Fact]
    public void A_measured_height_gives_a_ratio_that_can_be_judged()
    {
        Measured<double> ratio = Taper.ThicknessRatio(Measured.Of(Length.FromMillimeters(0.2), Length.FromMillimeters(0.01), 12));
        Assert.Equal((0.98, 0.001, 12.0), (Math.Round(ratio.SiValue, 12), Math.Round(ratio.SiStandardUncertainty, 12), ratio.DegreesOfFreedom));
        Assert.Equal(Conclusion.Within, Tolerance.Around(1.0, 0.03).Judge(ratio).Conclusion);
        Assert.Equal(Conclusion.Outside, Tolerance.Around(1.0, 0.01).Judge(ratio).Conclusion);
        Assert.Equal(Conclusion.Undecided, Tolerance.Around(1.0, 0.0205).Judge(ratio).Conclusion);
    }

    [Fact]
    public void Tapered_moves_need_fewer_pieces_and_keep_the_tolerance()
    {
        BicubicModel model = BicubicModel.Through(ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe("ridge", 11, 11, 0)));
        SurfacePosition from = SurfacePosition.FromMeters(0, 0.05), to = SurfacePosition.FromMeters(0.3, 0.27);
        Length tolerance = Length.FromMicrometers(2);
        FollowedMove full = Taper.Follow(model, from, to, Length.Zero, tolerance), part = Taper.Follow(model, from, to, Length.FromMillimeters(9), tolerance);
        Assert.Equal(model.Follow(from, to, tolerance).ToString(), full.ToString());
        Assert.True(part.Segments.Count < full.Segments.Count);
        Assert.True(part.LargestDeviation <= tolerance);
        Assert.All(part.Segments, piece => Assert.Equal(0.2 * model.EstimateAt(piece.End.X, piece.End.Y).Meters, piece.EndHeight.Meters, 1e-15));
        Assert.Equal(Length.Zero, Assert.Single(Taper.Follow(model, from, to, Length.FromMillimeters(11), tolerance).Segments).EndHeight);
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        Length mm = Length.FromMillimeters(1);
        Assert.Throws<ArgumentOutOfRangeException>("end", () => HeightTaper.Between(mm, mm));
        Assert.Throws<ArgumentOutOfRangeException>("start", () => HeightTaper.Between(-mm, mm));
        Assert.Throws<ArgumentOutOfRangeException>("largestThicknessError", () => HeightTaper.ForThicknessError(mm, 1, mm));
        Assert.Throws<ArgumentOutOfRangeException>("largestSurfaceHeight", () => HeightTaper.ForThicknessError(Length.Zero, 0.1, mm));
        Assert.Throws<ArgumentOutOfRangeException>("height", () => Taper.ShareAt(-mm));
        Assert.Throws<ArgumentOutOfRangeException>("thickness", () => Taper.ThicknessError(mm, Length.Zero, mm));
        Assert.Contains("no thickness", Assert.Throws<ArgumentOutOfRangeException>("surfaceHeight", () => Taper.ThicknessRatio(10 * mm)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("surfaceHeight", () => Taper.PrintedHeight(mm, 10 * mm));
        Assert.Throws<InvalidOperationException>(() => Taper.ThicknessRatio(default(Measured<Length>)));
    }
}
