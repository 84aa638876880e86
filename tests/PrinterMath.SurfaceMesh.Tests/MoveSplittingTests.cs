using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class MoveSplittingTests
{
    private static readonly Length Tolerance = Length.FromMicrometers(5);

    [Fact]
    public void A_plane_is_one_piece_whatever_cells_it_crosses()
    {
        ProbedGrid grid = ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe("plane", 9, 9, 0));
        foreach (IHeightModel model in new IHeightModel[] { BilinearModel.Through(grid), BicubicModel.Through(grid) })
        {
            FollowedMove move = model.Follow(At(0.01, 0.02), At(0.29, 0.17), Length.FromNanometers(1));
            MoveSegment piece = Assert.Single(move.Segments);
            Assert.True(move.IsProven);
            Assert.Equal(model.EstimateAt(piece.Start.X, piece.Start.Y), piece.StartHeight);
            Assert.Equal(Math.Sqrt((0.28 * 0.28) + (0.15 * 0.15)), move.Length.Meters, 1e-15);
            Assert.Equal(((2e-4 * 0.28) - (1e-4 * 0.15)) / 0.3 / move.Length.Meters, piece.Slope, 1e-14);
        }
    }

    // A roof, 10 µm high at x = 0.1, level on either side of it after another 0.1 m.
    [Fact]
    public void A_crease_is_a_knot_only_when_the_tolerance_needs_it()
    {
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights([0, 0.1, 0.2], [0, 0.1], [0, 1e-5, 0, 0, 1e-5, 0]));
        FollowedMove coarse = model.Follow(At(0, 0.05), At(0.2, 0.05), Length.FromMicrometers(10.001));
        Assert.Equal(10, Assert.Single(coarse.Segments).LargestDeviation.Micrometers, 1e-9);
        FollowedMove fine = model.Follow(At(0, 0.05), At(0.2, 0.05), Length.FromMicrometers(1));
        Assert.Equal(2, fine.Segments.Count);
        Assert.Equal(At(0.1, 0.05), fine.Segments[0].End);
        Assert.Equal(1e-4, fine.Segments[0].Slope, 1e-15);
        Assert.Equal(0, fine.LargestDeviation.Meters, 1e-17);
    }

    [Fact]
    public void Along_grid_lines_of_a_twisted_cell_nothing_is_split()
    {
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights([0, 0.03], [0, 0.03], [0, 0, 0, 1.2e-4]));
        Assert.Single(model.Follow(At(0, 0.02), At(0.03, 0.02), Length.FromNanometers(10)).Segments);
        Assert.Single(model.Follow(At(0.02, 0.03), At(0.02, 0), Length.FromNanometers(10)).Segments);
    }

    [Fact]
    public void There_and_back_are_the_same_pieces()
    {
        BicubicModel model = BicubicModel.Through(ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe("ridge", 9, 9, 0)));
        FollowedMove there = model.Follow(At(0.02, 0.03), At(0.27, 0.21), Tolerance), back = model.Follow(At(0.27, 0.21), At(0.02, 0.03), Tolerance);
        Assert.InRange(there.Segments.Count, 3, 30);
        Assert.Equal(there.Segments.Count, back.Segments.Count);
    }

    [Theory]
    [InlineData(OutsideRule.Clamp)]
    [InlineData(OutsideRule.ExtendLinearly)]
    public void Moves_may_leave_the_domain_where_the_rule_allows_it(OutsideRule rule)
    {
        ProbedGrid grid = ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe("waves", 7, 7, 0));
        var options = new HeightModelOptions { Outside = rule };
        foreach (IHeightModel model in new IHeightModel[] { BilinearModel.Through(grid, options), BicubicModel.Through(grid, options) })
        {
            SurfacePosition from = At(-0.05, 0.1), to = At(0.36, 0.33);
            FollowedMove move = model.Follow(from, to, Tolerance);
            Assert.InRange(new MoveProfile(model, from, to).Deviation(move, 400), 0, 5e-6 * (1 + 1e-9));
        }
    }

    [Fact]
    public void A_domain_that_refuses_the_outside_takes_moves_along_its_border()
    {
        ProbedGrid grid = ProbedGrid.FromHeights([0.1, 0.2, 0.3], [0.1, 0.2, 0.3], [0, 1e-4, 0, 1e-4, 0, 2e-4, 0, 3e-4, 1e-4]);
        BicubicModel model = BicubicModel.Through(grid);
        Assert.NotEmpty(model.Follow(At(0.1, 0.3), At(0.3, 0.3), Tolerance).Segments);
        Assert.NotEmpty(model.Follow(At(0.3, 0.3), At(0.1, 0.1), Tolerance).Segments);
        Assert.Throws<ArgumentOutOfRangeException>(() => model.Follow(At(0.1, 0.3), At(0.31, 0.3), Tolerance));
    }

    [Fact]
    public void A_model_without_cells_is_sampled_and_says_so()
    {
        BicubicModel cubic = BicubicModel.Through(ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe("dent", 9, 9, 0)));
        var hidden = new HiddenModel(cubic);
        SurfacePosition from = At(0, 0.11), to = At(0.3, 0.17);
        FollowedMove sampled = hidden.Follow(from, to, Tolerance);
        Assert.False(sampled.IsProven);
        Assert.InRange(sampled.Segments.Count, 1, cubic.Follow(from, to, Tolerance).Segments.Count + 1);
        Assert.InRange(new MoveProfile(hidden, from, to).Deviation(sampled, 400), 0, 5e-6);
    }

    // A ridge 0.1 mm high, followed to a nanometre: √(8e-9 m/(0.1 m⁻¹)) is 0.3 mm, so 420 mm need some 1500. A kilometre high it is refused.
    [Fact]
    public void Pieces_are_bounded()
    {
        BicubicModel model = BicubicModel.Through(ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe("ridge", 9, 9, 0)));
        Assert.InRange(model.Follow(At(0, 0), At(0.3, 0.3), Length.FromNanometers(1)).Segments.Count, 500, FollowedMove.MostSegments);
        BicubicModel high = BicubicModel.Through(ProbedGrid.FromHeights([0, 1, 2], [0, 1, 2], [0, 1e3, 0, 1e3, 0, 2e3, 0, 3e3, 1e3]));
        Assert.Contains("10000", Assert.Throws<ArgumentOutOfRangeException>(() => high.Follow(At(0, 0), At(2, 2), Length.FromNanometers(1))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights([0, 1], [0, 1], [0, 1, 2, 4]));
        Assert.Throws<ArgumentOutOfRangeException>("maximumDeviation", () => model.Follow(At(0, 0), At(1, 1), Length.Zero));
        Assert.Throws<ArgumentOutOfRangeException>("maximumDeviation", () => model.Follow(At(0, 0), At(1, 1), Length.FromMeters(-1)));
        Assert.Throws<ArgumentException>("to", () => model.Follow(At(0.5, 0.5), At(0.5, 0.5), Tolerance));
        Assert.Throws<ArgumentNullException>(() => ((IHeightModel)null!).Follow(At(0, 0), At(1, 1), Tolerance));
        Assert.Throws<ArgumentOutOfRangeException>(() => SurfacePosition.FromMeters(double.NaN, 0));
    }

    [Fact]
    public void Texts()
    {
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights([0, 0.1], [0, 0.1], [0, 1e-4, 0, 1e-4]));
        FollowedMove move = model.Follow(At(0, 0.05), At(0.1, 0.05), Tolerance);
        Assert.Equal("(0, 50) mm at 0 mm to (100, 50) mm at 0.1 mm", move.Segments[0].ToString());
        Assert.Equal("1 piece(s) over 100 mm, at most 0 µm off the model (5 µm allowed)", move.ToString());
    }

    private static SurfacePosition At(double x, double y) => SurfacePosition.FromMeters(x, y);

    private sealed class HiddenModel(IHeightModel model) : IHeightModel
    {
        public SurfaceRectangle Domain => model.Domain;

        public OutsideRule Outside => model.Outside;

        public IReadOnlyList<Finding> Findings => model.Findings;

        public Length EstimateAt(Length x, Length y) => model.EstimateAt(x, y);

        public Measured<Length> HeightAt(Length x, Length y) => model.HeightAt(x, y);

        public bool TryGetHeight(Length x, Length y, out Measured<Length> height) => model.TryGetHeight(x, y, out height);

        public SurfaceGradient GradientAt(Length x, Length y) => model.GradientAt(x, y);

        public Length InterpolationErrorAt(Length x, Length y) => model.InterpolationErrorAt(x, y);

        public void Heights(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs) => model.Heights(xs, ys, zs);
    }
}
