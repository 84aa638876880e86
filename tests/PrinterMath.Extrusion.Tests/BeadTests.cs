using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class BeadTests
{
    private static readonly Length Height = Length.FromMillimeters(0.2);
    private static readonly Bead Usual = Bead.FromWidthAndHeight(Length.FromMillimeters(0.45), Height);

    [Fact]
    public void A_round_bead_is_a_circle()
    {
        Bead round = Bead.FromWidthAndHeight(Height, Height);
        Assert.Equal(Math.PI * 0.01, round.Area.SquareMillimeters, 1e-15);
        Assert.Equal(4 / Math.PI, round.AreaSensitivity, 1e-14);
        Assert.Equal(round.Width.Meters, Bead.FromAreaAndHeight(round.Area, Height).Width.Meters, 1e-18);
    }

    [Theory]
    [InlineData(0.19, 0.2)]
    [InlineData(0, 0.2)]
    [InlineData(-0.4, 0.2)]
    [InlineData(0.4, 0)]
    [InlineData(0.4, -0.2)]
    public void Refuses_what_is_no_bead(double width, double height) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Bead.FromWidthAndHeight(Length.FromMillimeters(width), Length.FromMillimeters(height)));

    [Fact]
    public void Width_under_height_is_said_in_words() =>
        Assert.Contains("at least the height", Assert.Throws<ArgumentOutOfRangeException>(() => Bead.FromMeters(1e-4, 2e-4)).Message, StringComparison.Ordinal);

    [Fact]
    public void Refuses_numbers_that_are_not_finite()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Bead.FromMeters(double.NaN, 2e-4));
        Assert.Throws<ArgumentOutOfRangeException>(() => Bead.FromMeters(4e-4, double.PositiveInfinity));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-60)]
    public void Refuses_speeds_that_are_not_positive(double speed)
    {
        Speed v = Speed.FromMillimetersPerSecond(speed);
        Assert.Throws<ArgumentOutOfRangeException>(() => Usual.FlowAt(v));
        Assert.Throws<ArgumentOutOfRangeException>(() => Usual.FeedSpeedAt(v, Length.FromMillimeters(1.75)));
    }

    [Fact]
    public void Refuses_an_area_under_that_of_a_circle() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Bead.FromAreaAndHeight(Area.FromSquareMillimeters(0.03), Height));

    [Fact]
    public void Refuses_a_gap_so_large_that_the_bead_would_be_higher_than_wide() =>
        Assert.Equal("height", Assert.Throws<ArgumentOutOfRangeException>(() => Usual.AtHeight(Length.FromMillimeters(0.5))).ParamName);

    [Fact]
    public void The_default_is_no_bead()
    {
        Assert.Throws<InvalidOperationException>(() => default(Bead).Area);
        Assert.Throws<InvalidOperationException>(() => default(Bead).WidthMeters);
        Assert.Throws<InvalidOperationException>(() => default(Bead).AreaSensitivity);
        Assert.Throws<InvalidOperationException>(() => default(Bead).FlowAt(Speed.FromMillimetersPerSecond(1)));
        Assert.Throws<InvalidOperationException>(() => default(Bead).WallThickness(2, Height));
    }

    [Fact]
    public void A_wall_is_one_bead_and_its_spacings()
    {
        Assert.Equal(0.45, Usual.WallThickness(1, Length.FromMillimeters(0.4)).Millimeters, 1e-12);
        Assert.Equal(1.25, Usual.WallThickness(3, Length.FromMillimeters(0.4)).Millimeters, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Usual.WallThickness(2, Length.FromMillimeters(0.5)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Usual.WallThickness(0, Length.FromMillimeters(0.4)));
    }

    // At a spacing of one width the corners stay empty: (1 − π/4)·h/w of the layer.
    [Fact]
    public void Neighbours_leave_their_corners_empty()
    {
        Assert.Equal((1 - (Math.PI / 4)) * 0.2 / 0.45, Usual.VoidAt(Usual.Width), 1e-14);
        Assert.Equal(0, Usual.VoidAt(Usual.FillingSpacing), 1e-14);
        Assert.True(Usual.VoidAt(Length.FromMillimeters(0.38)) < 0);
    }

    [Fact]
    public void A_gap_too_large_makes_lines_thin()
    {
        const double Small = 1e-6;
        double step = Usual.AtHeight(Length.FromMillimeters(0.2 + Small)).Width.Millimeters - 0.45;

        // Second order of the difference quotient, A/h³·δ = 1e-5, times δ.
        Assert.Equal(Usual.WidthChangePerHeight * Small, step, 2e-11);
        Assert.True(Usual.WidthChangePerHeight < 0);
    }

    [Fact]
    public void Neither_making_nor_asking_allocates()
    {
        double sum = Work(1);
        long before = GC.GetAllocatedBytesForCurrentThread();
        sum += Work(10_000);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sum > 0);

        static double Work(int count)
        {
            double sum = 0;
            for (int i = 0; i < count; i++)
            {
                Bead bead = Bead.FromWidthAndHeight(Length.FromMeters(4e-4 + (i * 1e-9)), Length.FromMeters(2e-4));
                sum += bead.Area.SquareMeters + bead.FlowAt(Speed.FromMetersPerSecond(0.06)).CubicMetersPerSecond + bead.AreaSensitivity;
            }

            return sum;
        }
    }

    [Fact]
    public void Flow_changes_clearance_by_the_bead_model()
    {
        // Two pieces, two faces each, half the change of width at each face: 2·0.01·A/h, A/h = 0.0814159265/0.2 mm.
        Assert.Equal(-2 * 0.01 * 0.0814159265 / 0.2, FitClearance.Change(Usual, 0.01).Millimeters, 1e-10);
        Assert.Equal(-2 * (Usual.AtFlow(1.01).Width - Usual.Width).Millimeters, FitClearance.Change(Usual, 0.01).Millimeters, 1e-12);
        Assert.Equal(FitClearance.Change(Usual, 0.02).Meters, FitClearance.Change(Usual, 0.04, printedPieces: 1).Meters, 1e-15);
        Assert.Throws<ArgumentOutOfRangeException>(() => FitClearance.Change(Usual, 0.01, 3));
    }
}
