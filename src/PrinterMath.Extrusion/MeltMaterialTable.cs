using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>The ready plastics: ranges spanned by two sources, and where they are from.</summary>
/// <remarks>
/// Crawford: R. J. Crawford, Plastics Engineering, table 1.8. Osswald: T. A. Osswald, G. Menges 2012, as listed in an open collection of constants (MIT licence). Zmeskal: O. Zmeskal et al. 2020,
/// AIP Conference Proceedings 2305, 020022, printed PLA. Materials 16 (2023) 7664, table 1, for melts of filaments. Tadmor: Z. Tadmor, C. G. Gogos, Principles of Polymer Processing, appendix A (from memory).
/// </remarks>
internal static class MeltMaterialTable
{
    internal const string ViscosityName = "viscosity";
    private const string Crawford = "Crawford, Plastics Engineering, table 1.8", Osswald = "Osswald 2012";

    internal static readonly MeltMaterial Pla = MeltMaterial.Of("PLA", new MeltMaterialData
    {
        Density = Densities(1240, 1261),
        SpecificHeat = Heats(1200, 2000),
        Conductivity = Conductivities(0.12, 0.195),
        SoftAt = Temperatures(145, 175),
        SolidAt = Temperatures(55, 62),
        Viscosity = MeltViscosity.CrossWlf(
            0.25,
            Pressure.FromPascals(1.00861e5),
            DynamicViscosity.FromPascalSeconds(3.31719e9),
            Temperature.FromKelvins(373.15),
            20.194,
            TemperatureDelta.FromKelvins(51.6),
            Measured(190, 220, 0.5)),
        Sources =
        [
            ConstantSource.Of("density", "1261 kg/m³ at 298 K by the Tait constants of Oliaei 2016; 1240 kg/m³ in general use", true),
            ConstantSource.Of("specific heat", "1200 J/(kg·K) printed, Zmeskal 2020; 1800 to 2000 J/(kg·K) molten, handbooks", true),
            ConstantSource.Of("conductivity", "0.12 W/(m·K) printed, Zmeskal 2020; 0.13 to 0.195 W/(m·K), handbooks", true),
            ConstantSource.Of("soft at", "melting point 145 to 175 °C, handbooks", true),
            ConstantSource.Of("solid at", "glass transition 55 to 62 °C, handbooks", true),
            ConstantSource.Of(ViscosityName, "Cross-WLF set in general use, of uncertain origin: 3556 Pa·s at 210 °C and low rate; 1480 to 9460 Pa·s in Materials 16 (2023) 7664, table 1", true),
        ],
    });

    internal static readonly MeltMaterial Abs = MeltMaterial.Of("ABS", new MeltMaterialData
    {
        Density = Densities(1040, 1070),
        SpecificHeat = Heats(1300, 1500),
        Conductivity = Conductivities(0.17, 0.25),
        SoftAt = Temperatures(150, 175),
        SolidAt = Temperatures(105, 115),
        Viscosity = MeltViscosity.PowerLaw(
            0.25,
            DynamicViscosity.FromPascalSeconds(3.93e4),
            Temperature.FromDegreesCelsius(210),
            MolarEnergy.FromJoulesPerMole(49_300),
            Measured(170, 210, 0.4)),
        Sources =
        [
            ConstantSource.Of("density", $"1040 kg/m³, {Crawford}; to 1070 kg/m³, handbooks", true),
            ConstantSource.Of("specific heat", $"1300 J/(kg·K), {Crawford}; to 1500 J/(kg·K), handbooks", true),
            ConstantSource.Of("conductivity", $"0.25 W/(m·K), {Crawford}; from 0.17 W/(m·K), handbooks", true),
            ConstantSource.Of("soft at", "50 K above the glass transition, ± 10 K: common practice, no source", true),
            ConstantSource.Of("solid at", $"glass transition 115 °C, {Crawford}; 105 °C, handbooks", true),
            ConstantSource.Of(
                ViscosityName, "Tadmor, Gogos, appendix A: n = 0.25, 119 000, 62 900, 39 300 Pa·sⁿ at 170, 190, 210 °C (1243 Pa·s at 100/s, 210 °C); 640 to 840 Pa·s at 100/s in Materials 16 (2023) 7664, table 1", true),
        ],
    });

    internal static readonly MeltMaterial Petg = MeltMaterial.Of("PETG", new MeltMaterialData
    {
        Density = Densities(1270, 1360),
        SpecificHeat = Heats(1000, 1300),
        Conductivity = Conductivities(0.19, 0.21),
        SoftAt = Temperatures(115, 145),
        SolidAt = Temperatures(75, 85),
        Sources =
        [
            ConstantSource.Of("density", $"1360 kg/m³ for PET, {Crawford}; 1270 kg/m³, handbooks", true),
            ConstantSource.Of("specific heat", $"1000 J/(kg·K) for PET, {Crawford}; to 1300 J/(kg·K), handbooks", true),
            ConstantSource.Of("conductivity", $"0.2 W/(m·K) for PET, {Crawford}; 0.2 W/(m·K), handbooks", true),
            ConstantSource.Of("soft at", "50 K above the glass transition, ± 10 K: common practice, no source", true),
            ConstantSource.Of("solid at", $"glass transition 75 °C for PET, {Crawford}; 80 to 85 °C, handbooks", true),
        ],
    });

    internal static readonly MeltMaterial Pa66 = MeltMaterial.Of("PA66", new MeltMaterialData
    {
        Density = Densities(1130, 1150),
        SpecificHeat = Heats(1670, 1700),
        Conductivity = Conductivities(0.23, 0.25),
        SoftAt = Temperatures(255, 265),
        SolidAt = Temperatures(220, 240),
        Sources =
        [
            ConstantSource.Of("density", $"1140 kg/m³, {Crawford}; the same, handbooks", true),
            ConstantSource.Of("specific heat", $"1700 J/(kg·K), {Crawford}; 1670 J/(kg·K), {Osswald}", false),
            ConstantSource.Of("conductivity", $"0.24 W/(m·K), {Crawford}; the same, {Osswald}", false),
            ConstantSource.Of("soft at", "melting point 255 to 265 °C, handbooks", true),
            ConstantSource.Of("solid at", "crystallisation 220 to 240 °C, handbooks", true),
        ],
    });

    internal static readonly MeltMaterial Pc = MeltMaterial.Of("PC", new MeltMaterialData
    {
        Density = Densities(1150, 1200),
        SpecificHeat = Heats(1200, 1260),
        Conductivity = Conductivities(0.19, 0.21),
        SoftAt = Temperatures(185, 210),
        SolidAt = Temperatures(145, 150),
        Sources =
        [
            ConstantSource.Of("density", $"1150 kg/m³, {Crawford}, probably a misprint; 1200 kg/m³, handbooks", true),
            ConstantSource.Of("specific heat", $"1200 J/(kg·K), {Crawford}; 1260 J/(kg·K), {Osswald}", false),
            ConstantSource.Of("conductivity", $"0.2 W/(m·K), {Crawford}; the same, {Osswald}", false),
            ConstantSource.Of("soft at", "50 K above the glass transition, ± 10 K: common practice, no source", true),
            ConstantSource.Of("solid at", $"glass transition 149 °C, {Crawford}; 145 to 150 °C, handbooks", true),
        ],
    });

    internal static readonly IReadOnlyList<MeltMaterial> Known = Array.AsReadOnly([Pla, Abs, Petg, Pa66, Pc]);

    private static ViscosityRange Measured(double coldest, double hottest, double uncertainty) => new()
    {
        LowestTemperature = Temperature.FromDegreesCelsius(coldest),
        HighestTemperature = Temperature.FromDegreesCelsius(hottest),
        RelativeStandardUncertainty = uncertainty,
    };

    private static Measured<Density> Densities(double low, double high) =>
        Measurement.Measured.FromRange(Density.FromKilogramsPerCubicMeter(low), Density.FromKilogramsPerCubicMeter(high));

    private static Measured<SpecificEntropy> Heats(double low, double high) =>
        Measurement.Measured.FromRange(SpecificEntropy.FromJoulesPerKilogramKelvin(low), SpecificEntropy.FromJoulesPerKilogramKelvin(high));

    private static Measured<ThermalConductivity> Conductivities(double low, double high) =>
        Measurement.Measured.FromRange(ThermalConductivity.FromWattsPerMeterKelvin(low), ThermalConductivity.FromWattsPerMeterKelvin(high));

    /// <summary>In degrees Celsius.</summary>
    private static MeasuredTemperature Temperatures(double low, double high) =>
        MeasuredTemperature.FromKelvins(((low + high) / 2) + 273.15, (high - low) / Math.Sqrt(12));
}
