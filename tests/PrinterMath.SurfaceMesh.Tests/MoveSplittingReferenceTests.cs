using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

[Trait("Evidence", "Published")]
public sealed class MoveSplittingReferenceTests
{
    // The chord of a parabola is off by l²|z″|/8 (Hildebrand 1974, Introduction to numerical analysis, 2.3, from memory): a twist of 0.12 mm on a cell of
    // 30 mm by 30 mm gives at 30° z″ = 2·(0.12/900)·sin 30°·cos 30° = 1.154701e-4 /mm, and for 5 µm l = √(8·0.005/1.154701e-4) = 18.61210 mm; seven digits computed by hand.
    [Theory]
    [InlineData(18.6120, 1)]
    [InlineData(18.6122, 2)]
    [InlineData(34.6410, 2)]
    public void A_piece_reaches_as_far_as_the_chord_of_its_parabola(double millimeters, int pieces)
    {
        FollowedMove move = Twisted().Follow(default, At(millimeters, 30), Length.FromMillimeters(0.005));
        Assert.Equal(pieces, move.Segments.Count);
        double each = millimeters / pieces;
        Assert.Equal(each * each * 1.154701e-4 / 8, move.LargestDeviation.Millimeters, 1e-8);
        Assert.All(move.Segments, piece => Assert.Equal(each, piece.Length.Millimeters, 1e-9));
    }

    // At 0° and 90° a bilinear cell is straight.
    [Theory]
    [InlineData(0)]
    [InlineData(90)]
    public void Along_the_axes_a_cell_is_straight(double degrees) =>
        Assert.Equal(0, Assert.Single(Twisted().Follow(default, At(30, degrees), Length.FromMicrometers(1)).Segments).LargestDeviation.Meters, 1e-18);

    private static BilinearModel Twisted() => BilinearModel.Through(ProbedGrid.FromHeights([0, 0.03], [0, 0.03], [0, 0, 0, 1.2e-4]));

    private static SurfacePosition At(double millimeters, double degrees)
    {
        (double sine, double cosine) = Math.SinCos(degrees * Math.PI / 180);
        return SurfacePosition.FromMeters(Math.Clamp(millimeters * 1e-3 * cosine, 0, 0.03), millimeters * 1e-3 * sine);
    }
}
