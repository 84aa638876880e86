using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class FilamentDiameterTests
{
    private static readonly FilamentDiameterOptions Caliper = new()
    {
        Resolution = Length.FromMillimeters(0.01),
        InstrumentUncertainty = Length.FromMillimeters(0.01),
    };

    [Fact]
    public void Mean_ovality_and_area()
    {
        FilamentDiameter spool = FilamentDiameter.From([Place(1.73, 1.77), Place(1.74, 1.76), Place(1.75, 1.75)], Caliper);
        Assert.Equal(1.75, spool.Mean.Result.Value.Millimeters, 1e-12);
        Assert.Equal(0.02, spool.Ovality.Value.Millimeters, 1e-12);

        // π/4 · (1.73·1.77 + 1.74·1.76 + 1.75·1.75)/3; u: step 0.01/√12 and instrument 0.01 on d, times π/2·1.75, and a scatter that is small.
        Assert.Equal(Math.PI / 4 * (3.0621 + 3.0624 + 3.0625) / 3, spool.Area.Result.Value.SquareMillimeters, 1e-12);
        double expected = Math.PI / 2 * 1.75 * 0.01 * Math.Sqrt(1 + (1.0 / 12));
        Assert.InRange(spool.Area.Result.StandardUncertainty.SquareMillimeters, expected, expected * 1.001);
        Assert.Equal(Conclusion.Within, FilamentDiameter.From(
            [Place(1.74, 1.75), Place(1.75, 1.75)], Caliper with { Limit = Tolerance.Around(Length.FromMillimeters(1.75), Length.FromMillimeters(0.03)) }).Verdict!.Conclusion);
        Assert.Empty(spool.Findings);
    }

    [Fact]
    public void Readings_all_alike_ask_for_the_resolution()
    {
        FilamentPlace[] alike = [Place(1.75, 1.75), Place(1.75, 1.75), Place(1.75, 1.75)];
        FilamentDiameter mute = FilamentDiameter.From(alike);
        Assert.Equal(ExtrusionFindings.FilamentResolutionMissing, Assert.Throws<IndeterminateException>(() => mute.Area).Finding!.Code);
        Assert.Equal(0.01 / Math.Sqrt(12), FilamentDiameter.From(alike, Caliper with { InstrumentUncertainty = null }).Mean.Result.StandardUncertainty.Millimeters, 1e-12);
    }

    [Fact]
    public void A_wrong_unit_is_noticed()
    {
        FilamentPlace inch = FilamentPlace.Of(Length.FromInches(1.75), Length.FromInches(1.74));
        Assert.Contains(FilamentDiameter.From([inch, inch], Caliper).Findings, f => f.Code == ExtrusionFindings.FilamentImplausible);
        Assert.Contains(FilamentDiameter.From([Place(1.75, 1.74), Place(1.75, 17.5), Place(1.75, 1.76)], Caliper).Findings, f => f.Code == ExtrusionFindings.FilamentMixedUnits);
    }

    [Fact]
    public void Order_of_places_does_not_matter()
    {
        FilamentPlace[] places = [Place(1.73, 1.77), Place(1.76, 1.74), Place(1.75, 1.72)];
        Assert.Equal(
            FilamentDiameter.From(places, Caliper).Area.Result.SiValue, FilamentDiameter.From([.. Enumerable.Reverse(places)], Caliper).Area.Result.SiValue, 1e-18);
    }

    [Fact]
    public void Refuses_what_is_no_diameter()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Place(0, 1.75));
        Assert.Throws<ArgumentOutOfRangeException>(() => FilamentDiameter.From([Place(1.75, 1.75)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => FilamentDiameter.From([Place(1.75, 1.75), default]));
        Assert.Throws<ArgumentOutOfRangeException>(() => FilamentFlow.At(
            Measured.Exact(Length.FromMillimeters(1.75)), Measured.Exact(Speed.FromMillimetersPerSecond(-1))));
    }

    private static FilamentPlace Place(double first, double second) =>
        FilamentPlace.Of(Length.FromMillimeters(first), Length.FromMillimeters(second));
}
