using FsCheck.Xunit;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class BeltPathTests
{
    // d = p·z/π, any handbook of synchronous drives; six digits by hand.
    [Theory]
    [InlineData(2, 20, 12.7324)]
    [InlineData(2, 16, 10.1859)]
    [InlineData(3, 20, 19.0986)]
    [InlineData(5.08, 18, 29.1063)]
    public void Pitch_radius(double pitch, int teeth, double diameter) =>
        Assert.Equal(diameter, 2 * BeltPulley.PitchRadius(Length.FromMillimeters(pitch), teeth).Millimeters, 5e-5);

    // Outer tangent of 10 and 4 mm, 100 mm apart: √(100² − 6²) = 99.81984 mm; inner: √(100² − 14²) = 99.01515 mm.
    [Theory]
    [InlineData(WrapSide.Left, 99.8198377)]
    [InlineData(WrapSide.Right, 99.0151504)]
    public void Tangents_by_hand(WrapSide second, double millimeters)
    {
        var path = new BeltPath(
            "t",
            new BeltEnd("first", HeadPosition.FromMillimeters(60, 200), RidesOn.Frame),
            [
                new BeltPulley("motor", PulleyKind.Motor, default, Length.FromMillimeters(10), WrapSide.Left),
                new BeltPulley("idler", PulleyKind.BearingIdler, HeadPosition.FromMillimeters(100, 0), Length.FromMillimeters(4), second),
            ],
            new BeltEnd("second", HeadPosition.FromMillimeters(100, second == WrapSide.Left ? 200 : -200), RidesOn.Frame));
        Assert.Equal(millimeters, path.SpanLength(1, default).Millimeters, 1e-6);
        Assert.Equal("motor to idler", path.SpanName(1));
    }

    // Oracle: a tight loop is the convex hull of its circles, whose perimeter is the integral of its support function over the angle (Cauchy); no tangent formula in
    // it. Midpoint rule with 400 000 steps and two kinks: error below 400 mm·(2π/4e5)² ≈ 1e-7 mm.
    [Theory]
    [InlineData(400, 6.3662, 6.3662)]
    [InlineData(300, 10, 4)]
    [InlineData(80, 5, 20)]
    public void Loop_is_as_long_as_the_hull_of_its_circles(double distance, double pulley, double idler)
    {
        SingleAxisLayout axis = SingleAxisLayout.From(new SingleAxisDimensions
        {
            CentreDistance = Length.FromMillimeters(distance),
            CarriageLength = Length.FromMillimeters(20),
            PulleyRadius = Length.FromMillimeters(pulley),
            IdlerRadius = Length.FromMillimeters(idler),
            Travel = HeadTravel.Along(Length.FromMillimeters(30), Length.FromMillimeters(distance - 45)),
        });
        double hull = HullPerimeter((0, 0, pulley), (distance, pulley - idler, idler));
        Assert.Equal(hull, axis.Belt.TotalLength(axis.Travel.Middle).Millimeters + 20, 1e-6);
        Assert.Empty(PathConsistency.Of(axis.Belt, axis.Travel).Findings);
    }

    // Beam 300, depth 350, carriage 40, radii 6 mm; head at (150, 200). Belt A in order: 130 to the beam idler, quarter turn 6π/2, 200 to the motor, half turn 6π,
    // 350 back, quarter, 312 on the rear line from x = −12 to 300, quarter, 150 to the beam, quarter, 130 to the head.
    [Fact]
    public void Crossed_belt_by_hand()
    {
        CrossedLayout layout = Crossed(300, 350, 40, 6, 6);
        HeadPosition head = HeadPosition.FromMillimeters(150, 200);
        double[] spans = [130, 200, 350, 312, 150, 130];
        for (int i = 0; i < spans.Length; i++)
        {
            Assert.Equal(spans[i], layout.BeltA.SpanLength(i, head).Millimeters, 1e-9);
            Assert.Equal(spans[i], layout.BeltB.SpanLength(i, head).Millimeters, 1e-9);
        }

        Assert.Equal(130, layout.BeltA.SpanLength(CrossedLayout.HeadToBeamSpan, head).Millimeters, 1e-9);

        double[] turns = [90, 180, 90, 90, 90];
        for (int i = 0; i < turns.Length; i++)
        {
            Assert.Equal(turns[i], layout.BeltA.Wrap(i, head).Degrees, 1e-9);
            Assert.Equal(turns[i], layout.BeltB.Wrap(i, head).Degrees, 1e-9);
        }

        Assert.Equal(spans.Sum() + (6 * Math.PI * 3), layout.BeltA.TotalLength(head).Millimeters, 1e-9);
        Assert.Equal(130 + 200 + (6 * Math.PI / 2), layout.BeltA.FirstStrand(head).Millimeters, 1e-9);
    }

    [Property(MaxTest = 200)]
    public bool Crossed_belts_keep_their_length_and_follow_x_plus_and_minus_y(byte beam, byte depth, byte pulley, byte idler, byte shareX, byte shareY)
    {
        CrossedLayout layout = Crossed(200 + beam, 200 + depth, 40, 4 + (pulley / 32.0), 3 + (idler / 32.0));
        HeadPosition here = HeadPosition.FromMillimeters(50 + ((100.0 + beam) * shareX / 255), 30 + ((130.0 + depth) * shareY / 255));
        HeadPosition start = layout.Travel.Lowest;
        double x = (here.X - start.X).Meters;
        double y = (here.Y - start.Y).Meters;
        return PathConsistency.Of(layout.BeltA, layout.Travel).Variation.Millimeters < 1e-9
            && PathConsistency.Of(layout.BeltB, layout.Travel).Variation.Millimeters < 1e-9
            && Math.Abs((layout.BeltA.FirstStrand(here) - layout.BeltA.FirstStrand(start)).Meters - (x + y)) < 1e-12
            && Math.Abs((layout.BeltB.FirstStrand(here) - layout.BeltB.FirstStrand(start)).Meters - (y - x)) < 1e-12;
    }

    [Fact]
    public void A_mistyped_centre_is_found_with_its_numbers()
    {
        CrossedLayout layout = Crossed(300, 350, 40, 6, 6);
        BeltPulley[] pulleys = [.. layout.BeltA.Pulleys];
        pulleys[1] = new BeltPulley("motor left", PulleyKind.Motor, HeadPosition.FromMillimeters(-22, 0), Length.FromMillimeters(6), WrapSide.Right);
        var wrong = new BeltPath("A", layout.BeltA.First, pulleys, layout.BeltA.Second);
        PathConsistency check = PathConsistency.Of(wrong, layout.Travel);
        Assert.Equal(DriveFindings.LengthVaries, Assert.Single(check.Findings).Code);

        // The span now leans by 10 mm: √(y² + 10²) grows less than y. Bounds from y = 20 to 330: the difference is between 1 and 3 mm.
        Assert.InRange(check.Variation.Millimeters, 1, 3);
    }

    [Fact]
    public void Parking_place_by_hand()
    {
        CrossedLayout layout = Crossed(300, 350, 40, 6, 6);
        HeadPosition equal = ParkingPlace.ForEqualSpans(layout.BeltA, 0, layout.BeltB, 0, layout.Travel).Position;
        Assert.Equal(150, equal.X.Millimeters, 1e-6);
        HeadPosition asked = ParkingPlace.ForSpanLength(layout.BeltA, CrossedLayout.BeamToMotorSpan, Length.FromMillimeters(250), layout.Travel).Position;
        Assert.Equal(250, asked.Y.Millimeters, 1e-6);
        ParkingPlace none = ParkingPlace.ForSpanLength(layout.BeltA, 1, Length.FromMillimeters(900), layout.Travel);
        Assert.False(none.TryGetPosition(out _));
        Assert.Equal(DriveFindings.NoParkingPlace, Assert.Single(none.Findings).Code);
    }

    [Fact]
    public void Bad_drawings_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new BeltPulley("p", PulleyKind.Motor, default, Length.Zero, WrapSide.Left));
        Assert.Throws<ArgumentOutOfRangeException>(() => Crossed(300, 350, 40, 6, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Crossed(300, 350, 290, 6, 6));
        Assert.Throws<ArgumentException>(() => new HeadTravel(default, default));
        var overlapping = new BeltPath(
            "o",
            new BeltEnd("first", HeadPosition.FromMillimeters(-100, 10), RidesOn.Frame),
            [
                new BeltPulley("motor", PulleyKind.Motor, default, Length.FromMillimeters(10), WrapSide.Right),
                new BeltPulley("idler", PulleyKind.BearingIdler, HeadPosition.FromMillimeters(15, 0), Length.FromMillimeters(10), WrapSide.Right),
            ],
            new BeltEnd("second", HeadPosition.FromMillimeters(200, 0), RidesOn.Frame));
        Assert.Throws<ArgumentOutOfRangeException>(() => overlapping.TotalLength(default));
        Assert.Throws<ArgumentException>(() => new BeltPath("n", overlapping.First, [], overlapping.Second));
    }

    internal static CrossedLayout Crossed(double beam, double depth, double carriage, double pulley, double idler) => CrossedLayout.From(new CrossedDimensions
    {
        BeamLength = Length.FromMillimeters(beam),
        Depth = Length.FromMillimeters(depth),
        CarriageLength = Length.FromMillimeters(carriage),
        PulleyRadius = Length.FromMillimeters(pulley),
        IdlerRadius = Length.FromMillimeters(idler),
        Travel = new HeadTravel(HeadPosition.FromMillimeters(50, 30), HeadPosition.FromMillimeters(beam - 50, depth - 40)),
    });

    private static double HullPerimeter(params (double X, double Y, double R)[] circles)
    {
        // Support function h(φ) of the hull; Cauchy: perimeter = ∫ h dφ.
        const int n = 400_000;
        double sum = 0;
        for (int i = 0; i < n; i++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * (i + 0.5) / n);
            sum += circles.Max(c => (c.X * cos) + (c.Y * sin) + c.R);
        }

        return sum * 2 * Math.PI / n;
    }
}
