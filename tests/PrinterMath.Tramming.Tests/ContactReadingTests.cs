using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class ContactReadingTests
{
    [Fact]
    public void LightReadsTheMiddleOfTheStep()
    {
        ContactReading reading = ContactReading.ByLight(Mm(.15), Mm(.10));

        Assert.Equal(.125, reading.SurfaceHeight.Millimeters(), 1e-12);
        Assert.Equal(.05 / Math.Sqrt(12), reading.SurfaceHeight.UncertaintyMillimeters(), 1e-12); // GUM 4.3.7
        Assert.Equal(0, reading.GaugeThickness.SiStandardUncertainty);
    }

    [Fact]
    public void AGaugeIsSubtractedWithItsUncertainty()
    {
        Measured<Length> gauge = Measured.Of(Mm(.1), Mm(.006));
        ContactReading reading = ContactReading.WithGauge(Mm(.15), Mm(.10), gauge);

        Assert.Equal(.025, reading.SurfaceHeight.Millimeters(), 1e-12);
        Assert.Equal(Math.Sqrt((.05 * .05 / 12) + (.006 * .006)), reading.SurfaceHeight.UncertaintyMillimeters(), 1e-9); // numerical sensitivities
        Assert.Equal("height of contact", reading.Budget.Largest.Input.Name);
    }

    [Fact]
    public void AProbePointCarriesTheStepAlone()
    {
        ProbePoint point = ContactReading.WithGauge(Mm(.15), Mm(.10), Measured.Of(Mm(.1), Mm(.006))).At(Mm(10), Mm(20));

        Assert.Equal(.025, point.Z.Millimeters, 1e-12);
        Assert.Equal(.05e-3 / Math.Sqrt(12), point.StandardUncertaintyMeters, 1e-15);
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        ArgumentException contradiction = Assert.Throws<ArgumentException>(() => ContactReading.ByLight(Mm(.1), Mm(.15)));
        Assert.Contains("contradict", contradiction.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ContactReading.ByLight(Mm(.1), Mm(.1)));
        Assert.Throws<ArgumentException>(() => ContactReading.WithGauge(Mm(.2), Mm(.1), default));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactReading.WithGauge(Mm(.2), Mm(.1), Measured.Exact(Mm(-.1))));
        Assert.ThrowsAny<ArgumentException>(() => ContactReading.ByLight(Mm(double.PositiveInfinity), Mm(.1)));
    }
}
