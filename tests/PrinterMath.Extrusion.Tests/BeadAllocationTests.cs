using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class BeadAllocationTests
{
    private static readonly Length Filament = Length.FromMillimeters(1.75), Spacing = Length.FromMillimeters(0.4);
    private static readonly Speed Fast = Speed.FromMillimetersPerSecond(120);

    [Fact]
    public void A_bead_from_its_width_allocates_nothing() => Allocation.None(i =>
    {
        Bead bead = Bead.FromMeters(4.5e-4 + (1e-7 * i), 2e-4);
        return bead.AreaSquareMeters + bead.AreaSensitivity + bead.WidthChangePerHeight + bead.FillingSpacing.Meters + bead.VoidAt(Spacing) + bead.WallThickness(3, Spacing).Meters;
    });

    [Fact]
    public void A_bead_from_its_area_its_flow_and_its_feed_allocate_nothing() => Allocation.None(i =>
    {
        Bead bead = Bead.FromAreaAndHeight(Area.FromSquareMillimeters(0.08 + (1e-4 * i)), Length.FromMillimeters(0.2)).AtFlow(0.97).AtHeight(Length.FromMillimeters(0.19));
        return bead.FlowAt(Fast).CubicMetersPerSecond + bead.FeedRatio(Filament) + bead.FeedSpeedAt(Fast, Filament).MetersPerSecond;
    });
}
