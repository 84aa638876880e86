using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class MeltMaterialTests
{
    // Second opinions on each number, as published: Crawford, Plastics Engineering, table 1.8; Osswald 2012; Zmeskal 2020. No ready number is off by a factor of three.
    [Theory]
    [Trait("Evidence", "Published")]
    [InlineData("ABS", 1040, 1300, 0.25)]
    [InlineData("PETG", 1360, 1000, 0.2)]
    [InlineData("PA66", 1140, 1700, 0.24)]
    [InlineData("PA66", 1140, 1670, 0.24)]
    [InlineData("PC", 1150, 1200, 0.2)]
    [InlineData("PC", 1150, 1260, 0.2)]
    [InlineData("PLA", 1261, 1200, 0.12)]
    public void Thermal_constants_are_near_published_ones(string name, double density, double heat, double conductivity)
    {
        MeltMaterial material = MeltMaterial.Known.Single(known => known.Name == name);
        Near(density, material.Density.SiValue, 1.1);
        Near(heat, material.SpecificHeat.SiValue, 1.35);
        Near(conductivity, material.Conductivity.SiValue, 1.35);
    }

    // Materials 16 (2023) 7664, table 1: PLA, Cross, η₀ 1480 to 9460 Pa·s; ABS, power law, 6678 Pa·sⁿ with n = 0.49 and 12 189 Pa·sⁿ with n = 0.42.
    [Fact]
    [Trait("Evidence", "Published")]
    public void Viscosities_are_within_three_of_published_ones()
    {
        double pla = Melts.ZeroShear(MeltMaterial.Pla.Viscosity!, Temperature.FromDegreesCelsius(210));
        Near(1480, pla, 3);
        Near(9460, pla, 3);
        double abs = MeltMaterial.Abs.Viscosity!.At(Frequency.FromPerSecond(100), Temperature.FromDegreesCelsius(210)).PascalSeconds;
        Near(6678 * Math.Pow(100, -0.51), abs, 3);
        Near(12_189 * Math.Pow(100, -0.58), abs, 3);
    }

    // Tadmor and Gogos, appendix A, as remembered: the exponential between 170 and 210 °C passes 190 °C within 10 %.
    [Theory]
    [InlineData(170, 1.19e5)]
    [InlineData(190, 6.29e4)]
    [InlineData(210, 3.93e4)]
    public void The_temperature_law_of_abs(double celsius, double consistency) =>
        Near(consistency, MeltMaterial.Abs.Viscosity!.At(Frequency.FromPerSecond(1), Temperature.FromDegreesCelsius(celsius)).PascalSeconds, 1.1);

    [Fact]
    public void Every_number_has_a_source_and_every_range_an_uncertainty() => Assert.All(MeltMaterial.Known, material =>
    {
        string[] constants = ["density", "specific heat", "conductivity", "soft at", "solid at", .. material.Viscosity is null ? [] : new[] { "viscosity" }];
        Assert.Equal(constants, material.Sources.Select(source => source.Constant));
        Assert.All([material.Density.SiStandardUncertainty, material.SpecificHeat.SiStandardUncertainty, material.Conductivity.SiStandardUncertainty], u => Assert.True(u > 0));
    });

    [Fact]
    public void A_viscosity_of_the_caller_replaces_the_source()
    {
        MeltMaterial petg = MeltMaterial.Petg.WithViscosity(Melts.PowerLaw(0.5, 3000), ConstantSource.Of("viscosity", "an invented data sheet", fromMemory: false));
        Assert.NotNull(petg.Viscosity);
        Assert.Null(MeltMaterial.Petg.Viscosity);
        Assert.Equal("viscosity: an invented data sheet", petg.Sources[^1].ToString());
        Assert.Single(MeltMaterial.Pla.WithViscosity(Melts.Pla, petg.Sources[^1]).Sources, source => source.Constant == "viscosity");
    }

    [Fact]
    public void Refuses_what_cannot_be()
    {
        MeltMaterialData data = Data(160, 60);
        Assert.Equal("invented", MeltMaterial.Of("invented", data).Name);
        Assert.Throws<ArgumentException>(() => MeltMaterial.Of(" ", data));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeltMaterial.Of("invented", Data(60, 160)));
        Assert.Throws<InvalidOperationException>(() => MeltMaterial.Of("invented", data with { Density = default }));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeltMaterial.Of("invented", data with { LatentHeat = Measured.Exact(SpecificEnergy.Zero) }));
        Assert.Throws<ArgumentException>(() => ConstantSource.Of("density", string.Empty, false));
    }

    private static MeltMaterialData Data(double soft, double solid) => new()
    {
        Density = Measured.Exact(Density.FromKilogramsPerCubicMeter(1200)),
        SpecificHeat = Measured.Exact(SpecificEntropy.FromJoulesPerKilogramKelvin(1500)),
        Conductivity = Measured.Exact(ThermalConductivity.FromWattsPerMeterKelvin(0.2)),
        SoftAt = MeasuredTemperature.FromKelvins(soft + 273.15, 5),
        SolidAt = MeasuredTemperature.FromKelvins(solid + 273.15, 5),
    };

    private static void Near(double published, double ours, double factor) =>
        Assert.True(ours > published / factor && ours < published * factor, string.Create(CultureInfo.InvariantCulture, $"{ours} against {published}"));
}
