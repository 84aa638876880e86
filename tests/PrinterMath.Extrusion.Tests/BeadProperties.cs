using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

/// <summary>Width and height in metres, from round to forty times as wide as high.</summary>
public sealed record AnyBead(double Width, double Height);

public static class BeadArbitrary
{
    public static Arbitrary<AnyBead> Beads() => Arb.From(
        from height in Gen.Choose(20, 2000)
        from ratio in Gen.Choose(1000, 40_000)
        select new AnyBead(height * 1e-6 * ratio / 1000.0, height * 1e-6));
}

[Properties(Arbitrary = [typeof(BeadArbitrary)], MaxTest = 1000)]
public sealed class BeadProperties
{
    // A handful of operations, each rounded to 1.1e-16.
    private const double Rounding = 1e-14;

    [Property]
    public bool Area_gives_back_its_width(AnyBead b)
    {
        Bead bead = Bead.FromMeters(b.Width, b.Height);
        return Close(b.Width, Bead.FromAreaAndHeight(bead.Area, bead.Height).WidthMeters);
    }

    [Property]
    public bool Area_scales_with_the_square(AnyBead b) =>
        Close(9 * Bead.FromMeters(b.Width, b.Height).AreaSquareMeters, Bead.FromMeters(3 * b.Width, 3 * b.Height).AreaSquareMeters);

    [Property]
    public bool Area_lies_between_the_ellipse_and_the_rectangle(AnyBead b)
    {
        double area = Bead.FromMeters(b.Width, b.Height).AreaSquareMeters;
        return area >= Math.PI / 4 * b.Width * b.Height * (1 - Rounding) && area < b.Width * b.Height;
    }

    [Property]
    public bool Wider_has_more_area_and_needs_more_feed(AnyBead b)
    {
        Bead narrow = Bead.FromMeters(b.Width, b.Height), wide = Bead.FromMeters(b.Width * 1.01, b.Height);
        Length filament = Length.FromMillimeters(1.75);
        return wide.AreaSquareMeters > narrow.AreaSquareMeters && wide.FeedRatio(filament) > narrow.FeedRatio(filament);
    }

    [Property]
    public bool Sensitivity_is_the_slope_of_the_logarithms(AnyBead b)
    {
        const double Step = 1e-6;
        double up = Bead.FromMeters(b.Width * (1 + (2 * Step)), b.Height).AreaSquareMeters, here = Bead.FromMeters(b.Width, b.Height).AreaSquareMeters;
        double slope = Math.Log(up / here) / (2 * Step);

        // One-sided difference: half the second derivative times the step, at most 1.3² · 1e-6, and rounding 1e-16/2e-6.
        return Math.Abs(slope - Bead.FromMeters(b.Width, b.Height).AreaSensitivity) < 4e-6;
    }

    [Property]
    public bool Plastic_is_conserved_at_another_height(AnyBead b)
    {
        Bead bead = Bead.FromMeters(b.Width, b.Height), squashed = bead.AtHeight(Length.FromMeters(b.Height * 0.8));
        return Close(bead.AreaSquareMeters, squashed.AreaSquareMeters) && squashed.WidthMeters > bead.WidthMeters;
    }

    private static bool Close(double expected, double actual) => Math.Abs(actual - expected) <= Rounding * 10 * Math.Abs(expected);
}
