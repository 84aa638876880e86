using System.Globalization;
using UnitsNet;

namespace PrinterMath.Measurement.Tests;

public sealed class MeasuredTests
{
    [Theory]
    [InlineData(12.34, 0.05, "S", "12.34(5) N")]
    [InlineData(12.34, 0.05, null, "12.34(5) N")]
    [InlineData(12.34, 0.05, "U", "(12.34 ± 0.10) N, k = 2")]
    [InlineData(12.34, 0.05, "U95", "(12.34 ± 0.10) N, k = 1.96, 95 %")]
    [InlineData(12.34, 0.05, "S2", "12.340(50) N")]
    [InlineData(12.34, 0.05, "V", "12.34 N")]
    [InlineData(12.345, 0.0296, "S", "12.35(3) N")]
    [InlineData(12.345, 0.0294, "S", "12.345(29) N")]
    [InlineData(12.345, 0.12, "S", "12.35(12) N")]
    [InlineData(123.4, 1.2, "S", "123.4(1.2) N")]
    [InlineData(123.4, 40, "S", "120(40) N")]
    [InlineData(123.4, 12, "S", "123(12) N")]
    [InlineData(12.34, 0.0096, "S", "12.340(10) N")]
    [InlineData(-0.004, 0.05, "S", "0.00(5) N")]
    [InlineData(-1.26, 0.5, "S", "-1.3(5) N")]
    [InlineData(0, 0.05, "S", "0.00(5) N")]
    [InlineData(3.2e9, 4e7, "S", "3.20(4)E9 N")]
    public void Text_rounds_by_the_uncertainty(double value, double u, string? format, string expected) =>
        Assert.Equal(expected, Measured.Of(Force.FromNewtons(value), Force.FromNewtons(u)).ToString(format));

    [Fact]
    public void Text_in_a_chosen_unit()
    {
        Measured<Length> length = Measured.Of(Length.FromMillimeters(0.042), Length.FromMillimeters(0.003));
        Assert.Equal("0.042(3) mm", length.ToString());
        Assert.Equal("42(3) µm", length.ToString("S µm"));
        Assert.Throws<FormatException>(() => length.ToString("S furlong"));
        Assert.Throws<FormatException>(() => length.ToString("Q"));
        Assert.Throws<FormatException>(() => length.ToString("S0"));
    }

    [Fact]
    public void Text_is_invariant_unless_a_culture_is_given()
    {
        Measured<Force> force = Measured.Of(Force.FromNewtons(12.34), Force.FromNewtons(0.05));
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
        try
        {
            Assert.Equal("12.34(5) N", force.ToString());
            Assert.Equal("12.34(5) N", $"{force}");
            Assert.Equal("12,34(5) N", force.ToString("S", CultureInfo.GetCultureInfo("de-DE")));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Temperatures_carry_a_difference_as_uncertainty()
    {
        MeasuredTemperature bed = Measured.Of(Temperature.FromDegreesCelsius(60), TemperatureDelta.FromKelvins(0.8), 9);
        Assert.Equal("60.0(8) °C", bed.ToString());
        Assert.Equal(40, bed.Above(Temperature.FromDegreesCelsius(20)).SiValue, 1e-9);
        Assert.Throws<NotSupportedException>(() => Measured.Of(Temperature.FromKelvins(300), Temperature.FromKelvins(1)));
    }

    [Fact]
    public void Ratios_are_plain_numbers()
    {
        Measured<double> ratio = Measured.Of(0.0531, 0.0024);
        Assert.Equal("0.0531(24)", ratio.ToString());
        Assert.Equal("5.31(24) %", ratio.ToString("S %"));
    }

    [Fact]
    public void Equality_is_by_value_and_not_by_unit()
    {
        Assert.Equal(
            Measured.Of(Length.FromCentimeters(25), Length.FromMillimeters(1)),
            Measured.Of(Length.FromMeters(0.25), Length.FromMeters(0.001)));
        Assert.NotEqual(Measured.Of(1.0, 0.1, 5), Measured.Of(1.0, 0.1, 6));
    }

    [Fact]
    public void The_default_was_never_measured()
    {
        Measured<Force> nothing = default;
        Assert.False(nothing.HasValue);
        Assert.Equal("not measured", nothing.ToString());
        Assert.Throws<InvalidOperationException>(() => nothing.Value);
        Assert.Throws<InvalidOperationException>(() => nothing.Interval());
        Assert.Throws<InvalidOperationException>(() => default(MeasuredTemperature).Value);
    }

    [Fact]
    public void Exact_values_say_so()
    {
        Measured<Length> nominal = Measured.Exact(Length.FromMillimeters(20));
        Assert.Equal("20 mm (exact)", nominal.ToString());
        Assert.Equal(0, nominal.SiStandardUncertainty);
    }

    // JCGM 100:2008, 4.3.7: half-width over √3; F.2.2.1: step over √12; 4.3.3: U over k.
    [Fact]
    public void Type_B_factories()
    {
        Assert.Equal(1 / Math.Sqrt(3), Measured.FromRange(Force.FromNewtons(1), Force.FromNewtons(3)).SiStandardUncertainty, 1e-15);
        Assert.Equal(2, Measured.FromRange(Force.FromNewtons(1), Force.FromNewtons(3)).SiValue, 1e-15);
        Assert.Equal(0.01 / Math.Sqrt(12), Measured.FromResolution(Force.FromNewtons(1), Force.FromNewtons(0.01)).SiStandardUncertainty, 1e-15);
        Assert.Equal(0.12, Measured.FromCertificate(Force.FromNewtons(1), Force.FromNewtons(0.24)).SiStandardUncertainty, 1e-15);
    }

    [Fact]
    public void Type_A_from_readings()
    {
        Measured<Force> mean = Measured.FromReadings([Force.FromNewtons(9), Force.FromNewtons(10), Force.FromNewtons(11)]);
        Assert.Equal(10, mean.SiValue, 1e-14);
        Assert.Equal(1 / Math.Sqrt(3), mean.SiStandardUncertainty, 1e-14);
        Assert.Equal(2, mean.DegreesOfFreedom);
        Assert.Throws<ArgumentException>(() => Measured.FromReadings([Force.FromNewtons(9)]));
        Assert.Throws<ArgumentException>(() => Measured.FromReadings([Force.FromNewtons(9), Force.FromNewtons(9)]));
    }

    [Theory]
    [InlineData(1, 0, 5)]
    [InlineData(1, -1, 5)]
    [InlineData(1, 1, 0.5)]
    [InlineData(1, 1, double.NaN)]
    public void Impossible_numbers_are_refused(double value, double u, double degreesOfFreedom) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Measured.Of(value, u, degreesOfFreedom));

    [Fact]
    public void Every_known_quantity_goes_to_SI_and_back()
    {
        Check(Length.FromMillimeters(3), q => q.Meters, 0.003);
        Check(Mass.FromGrams(3), q => q.Kilograms, 0.003);
        Check(LinearDensity.FromGramsPerMeter(3), q => q.KilogramsPerMeter, 0.003);
        Check(Angle.FromDegrees(180), q => q.Radians, Math.PI);
        Check(Power.FromMilliwatts(3), q => (double)q.Watts, 0.003);
        Check(VolumeFlow.FromCubicMillimetersPerSecond(5), q => q.CubicMetersPerSecond, 5e-9);
        Check(Speed.FromMillimetersPerSecond(5), q => q.MetersPerSecond, 5e-3);
        Check(RotationalSpeed.FromRadiansPerSecond(3), q => q.RadiansPerSecond, 3);
        Check(CoefficientOfThermalExpansion.FromPerKelvin(2e-5), q => q.PerKelvin, 2e-5);
        Check(TemperatureChangeRate.FromDegreesCelsiusPerMinute(120), q => q.DegreesCelsiusPerSecond, 2);
        Check(ThermalConductivity.FromWattsPerMeterKelvin(0.2), q => q.WattsPerMeterKelvin, 0.2);
        Check(SpecificEntropy.FromKilojoulesPerKilogramKelvin(1.3), q => q.JoulesPerKilogramKelvin, 1300);
        Check(SpecificEnergy.FromKilojoulesPerKilogram(60), q => q.JoulesPerKilogram, 60_000);
        Check(HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(90), q => q.WattsPerSquareMeterKelvin, 90);

        static void Check<T>(T quantity, Func<T, double> si, double expected)
            where T : struct
        {
            Measured<T> measured = Measured.Of(quantity, quantity);
            Assert.Equal(expected, measured.SiValue, 1e-12 * expected);
            Assert.Equal(expected, si(measured.Value), 1e-12 * expected);
            Assert.NotEmpty(Measured<T>.UcumUnit);
        }
    }
}
