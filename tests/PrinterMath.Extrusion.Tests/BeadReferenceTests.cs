using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

[Trait("Evidence", "Published")]
public sealed class BeadReferenceTests
{
    private static readonly Length Filament = Length.FromMillimeters(1.75);

    // Area of a rectangle and a circle, evaluated outside the project; ten digits given. 0.904621 is the part of w·h, six digits.
    [Fact]
    public void Area_of_a_usual_bead()
    {
        Bead bead = Bead.FromWidthAndHeight(Length.FromMillimeters(0.45), Length.FromMillimeters(0.2));
        Assert.Equal(0.0814159265, bead.Area.SquareMillimeters, 5e-11);
        Assert.Equal(0.904621, bead.Area.SquareMillimeters / (0.45 * 0.2), 5e-7);
        Assert.Equal(1.105, bead.AreaSensitivity, 5e-4);
    }

    // Same origin; ten digits given.
    [Fact]
    public void Width_of_a_given_area() =>
        Assert.Equal(0.5429203673, Bead.FromAreaAndHeight(Area.FromSquareMillimeters(0.1), Length.FromMillimeters(0.2)).Width.Millimeters, 5e-11);

    // Same origin; 1.75 mm filament has 2.405281875 mm², a bead of 0.45 mm x 0.2 mm takes 0.0338488089 mm of it for each millimetre, and
    // 4.88495559 mm³/s at 60 mm/s. Digits as given.
    [Fact]
    public void Flow_and_feed_of_a_usual_bead()
    {
        Bead bead = Bead.FromWidthAndHeight(Length.FromMillimeters(0.45), Length.FromMillimeters(0.2));
        Speed speed = Speed.FromMillimetersPerSecond(60);
        double filamentArea = FilamentFlow.At(Measured.Exact(Filament), Measured.Exact(Speed.FromMillimetersPerSecond(1))).Result.Value.CubicMillimetersPerSecond();
        Assert.Equal(2.405281875, filamentArea, 5e-10);
        Assert.Equal(0.0338488089, bead.FeedRatio(Filament), 5e-11);
        Assert.Equal(4.88495559, bead.FlowAt(speed).CubicMillimetersPerSecond(), 5e-9);
        Assert.Equal(60 * 0.0338488089, bead.FeedSpeedAt(speed, Filament).MillimetersPerSecond, 60 * 5e-11);
    }

    // JCGM 100:2008, 5.1.6: (u(Q)/Q)² = (2·0.01/1.75)² = (1.143 %)²; four digits given.
    [Fact]
    public void Uncertainty_of_flow_from_the_diameter() =>
        Assert.Equal(0.01143, FilamentFlow.At(
            Measured.Of(Filament, Length.FromMillimeters(0.01)),
            Measured.Exact(Speed.FromMillimetersPerSecond(2))).Result.RelativeStandardUncertainty, 5e-6);

    // 415·100/97.3 with u 0.05 mm commanded and 0.1 mm measured, evaluated outside the project; nine and six digits given.
    [Fact]
    public void New_steps_from_one_trial()
    {
        Measured<ReciprocalLength> steps = FeedCalibration.Rescale(
            ReciprocalLength.FromInverseMillimeters(415),
            Measured.Of(Length.FromMillimeters(100), Length.FromMillimeters(0.05)),
            Measured.Of(Length.FromMillimeters(97.3), Length.FromMillimeters(0.1))).Result;
        Assert.Equal(426.515930, steps.Value.InverseMillimeters, 5e-7);
        Assert.Equal(0.487474, steps.StandardUncertainty.InverseMillimeters, 5e-7);
    }

    // Crawford, Plastics Engineering, table 1.8: ABS 90·10⁻⁶/K and 115 °C; to 23 °C that is 0.828 %.
    [Fact]
    public void Shrinkage_of_an_amorphous_plastic() =>
        Assert.Equal(-0.00828, ThermalShrinkage.Scale(
            Measured.Exact(CoefficientOfThermalExpansion.FromPerKelvin(90e-6)),
            Measured.Of(Temperature.FromDegreesCelsius(115), TemperatureDelta.FromKelvins(5)),
            Measured.Of(Temperature.FromDegreesCelsius(23), TemperatureDelta.FromKelvins(1))).Result.SiValue, 1e-12);
}
