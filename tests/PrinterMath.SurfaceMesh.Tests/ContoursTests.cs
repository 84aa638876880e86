using FsCheck.Xunit;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class ContoursTests
{
    private static readonly Length Step = Length.FromMillimeters(5);

    // z = 0.1 mm·(x + 2y)/0.1 m: the line at 0.15 mm runs from (0.15, 0) to (0, 0.075), the ground above to its left when it runs that way reversed.
    [Fact]
    public void A_plane_has_straight_lines()
    {
        double[] axis = [0, 0.03, 0.1, 0.2];
        ProbedGrid grid = ProbedGrid.FromHeights(axis, axis, [.. from y in axis from x in axis select 1e-3 * (x + (2 * y))]);
        foreach (IHeightModel model in new IHeightModel[] { BilinearModel.Through(grid), BicubicModel.Through(grid) })
        {
            ContourLine line = Assert.Single(Contours.At(model, Length.FromMillimeters(0.15), Step));
            Assert.False(line.IsClosed);
            Assert.Null(line.EnclosedArea);
            Assert.All(line.Points, p => Assert.Equal(0.15, p.XMeters + (2 * p.YMeters), 1e-14));
            Assert.Equal((0.0, 0.075), (line.Points[0].XMeters, Math.Round(line.Points[0].YMeters, 12)));
            Assert.Equal(Math.Sqrt((0.15 * 0.15) + (0.075 * 0.075)), line.Length.Meters, 1e-14);
        }
    }

    [Fact]
    public void Level_multiples_are_drawn()
    {
        double[] axis = [0, 0.1];
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights(axis, axis, [-25e-6, 25e-6, -25e-6, 25e-6]));
        Assert.Equal([-20, -10, 0, 10, 20], Contours.Every(model, Length.FromMicrometers(10), Step).Select(line => Math.Round(line.Level.Micrometers, 9)));
        Assert.Empty(Contours.At(model, Length.FromMicrometers(26), Step));
    }

    // A hill's lines turn against the clock, a dip's with it.
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Rises_and_dips_close(int sign)
    {
        double[] axis = [.. Enumerable.Range(0, 21).Select(i => 0.01 * i)];
        BicubicModel model = BicubicModel.Through(ProbedGrid.FromHeights(
            axis, axis, [.. from y in axis from x in axis select sign * 0.01 * (0.01 - Math.Pow(x - 0.1, 2) - Math.Pow(y - 0.1, 2))]));
        ContourLine line = Assert.Single(Contours.At(model, Length.FromMeters(sign * 0.01 * (0.01 - (0.05 * 0.05))), Length.FromMillimeters(1)));
        Assert.True(line.IsClosed);

        // Chords of 1.4 mm in a circle of 50 mm lie inside by 1.4²/(8·50) = 5 µm; the area is smaller by a third of two times that, relative to the radius.
        Assert.All(line.Points, p => Assert.Equal(0.05, Math.Sqrt(Math.Pow(p.XMeters - 0.1, 2) + Math.Pow(p.YMeters - 0.1, 2)), 1e-9));
        Assert.InRange(sign * line.EnclosedArea!.Value.SquareMeters / (Math.PI * 0.0025), 1 - 1.4e-4, 1);
        Assert.InRange(line.Length.Meters / (2 * Math.PI * 0.05), 1 - 5e-5, 1);
    }

    // z = xy about the middle of one cell: at a level above the saddle the ground above is in two parts, at the saddle and below it is one.
    [Theory]
    [InlineData(1e-6, 2, false)]
    [InlineData(0, 2, true)]
    [InlineData(-1e-6, 2, true)]
    public void Saddles_follow_the_hyperbola(double level, int lines, bool connected)
    {
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights([-0.1, 0.1], [-0.1, 0.1], [1e-4, -1e-4, -1e-4, 1e-4]));
        IReadOnlyList<ContourLine> found = Contours.At(model, Length.FromMeters(level), Length.FromMeters(1));
        Assert.Equal(lines, found.Count);

        // Connected: each line cuts off a corner below, where x and y differ in sign.
        Assert.All(found, line => Assert.Equal(connected, line.Points.Average(p => p.XMeters) * line.Points.Average(p => p.YMeters) < 0));
    }

    [Fact]
    public void A_plateau_is_walked_round_and_a_peak_at_the_level_is_no_line()
    {
        double[] axis = [0, 0.1, 0.2, 0.3, 0.4];
        double[] flat = new double[25];
        (flat[6], flat[7], flat[11], flat[12]) = (1e-4, 1e-4, 1e-4, 1e-4);
        ContourLine line = Assert.Single(Contours.At(BilinearModel.Through(ProbedGrid.FromHeights(axis, axis, flat)), Length.FromMicrometers(100), Length.FromMeters(1)));
        Assert.Equal(4, line.Points.Count);
        Assert.Equal(0.01, line.EnclosedArea!.Value.SquareMeters, 1e-15);
        double[] peak = new double[25];
        peak[12] = 1e-4;
        Assert.Empty(Contours.At(BilinearModel.Through(ProbedGrid.FromHeights(axis, axis, peak)), Length.FromMicrometers(100), Length.FromMeters(1)));
    }

    [Property(Arbitrary = [typeof(SurfaceArbitrary)], MaxTest = 100)]
    public bool Corners_lie_on_the_level_and_open_ends_on_the_border(AnySurface s)
    {
        var clamp = new HeightModelOptions { Outside = OutsideRule.Clamp };
        ProbedGrid grid = ProbedGrid.FromHeights(s.Columns, s.Rows, s.Heights);
        return new IHeightModel[] { BilinearModel.Through(grid, clamp), BicubicModel.Through(grid, clamp) }.All(model =>
        {
            Length level = model.EstimateAt(Length.FromMeters(s.X), Length.FromMeters(s.Y));
            return Contours.At(model, level, Length.FromMillimeters(20)).All(line =>
                line.Points.All(p => Math.Abs(model.EstimateAt(p.X, p.Y).Meters - level.Meters) < 1e-11)
                && line.Points.Zip(line.Points.Skip(1)).All(pair => pair.First != pair.Second)
                && (line.IsClosed || (OnBorder(s, line.Points[0]) && OnBorder(s, line.Points[^1]))));
        });
    }

    // Two readings of one area: corners of the lattice above the level against the signed areas of lines, for hills that stay clear of the border.
    [Property(Arbitrary = [typeof(SurfaceArbitrary)], MaxTest = 20)]
    public bool Signed_areas_add_up_to_the_ground_above(AnySurface s)
    {
        double[] heights = [.. s.Heights.Select((z, k) =>
            k % s.Columns.Length == 0 || k % s.Columns.Length == s.Columns.Length - 1 || k / s.Columns.Length == 0 || k / s.Columns.Length == s.Rows.Length - 1 ? -2e-3 : z)];
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights(s.Columns, s.Rows, heights));
        double width = s.Columns[^1] - s.Columns[0], depth = s.Rows[^1] - s.Rows[0], area = 0;
        IReadOnlyList<ContourLine> lines = Contours.At(model, Length.FromMeters(1.234e-4), Length.FromMillimeters(2));
        int above = 0;
        const int Side = 150;
        for (int k = 0; k < Side * Side; k++)
        {
            double x = s.Columns[0] + (width * ((k % Side) + 0.5) / Side), y = s.Rows[0] + (depth * ((k / Side) + 0.5) / Side);
            above += model.EstimateAt(Length.FromMeters(x), Length.FromMeters(y)).Meters >= 1.234e-4 ? 1 : 0;
        }

        area = lines.Sum(line => line.EnclosedArea!.Value.SquareMeters) / (width * depth);
        return lines.All(line => line.IsClosed) && Math.Abs(area - (above / (double)(Side * Side))) < 0.01;
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights([0, 0.1], [0, 0.1], [0, 1, 0, 1]));
        Assert.Throws<ArgumentOutOfRangeException>("largestStep", () => Contours.At(model, Length.Zero, Length.Zero));
        Assert.Throws<ArgumentOutOfRangeException>("largestStep", () => Contours.At(model, Length.Zero, Length.FromMicrometers(1)));
        Assert.Throws<ArgumentOutOfRangeException>("interval", () => Contours.Every(model, Length.FromMicrometers(-1), Step));
        Assert.Contains("1000 levels", Assert.Throws<ArgumentOutOfRangeException>("interval", () => Contours.Every(model, Length.FromMicrometers(20), Step)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("model", () => Contours.At(null!, Length.Zero, Step));
    }

    private static bool OnBorder(AnySurface s, SurfacePosition p) =>
        p.XMeters == s.Columns[0] || p.XMeters == s.Columns[^1] || p.YMeters == s.Rows[0] || p.YMeters == s.Rows[^1];
}
