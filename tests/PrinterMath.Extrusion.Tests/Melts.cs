using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

/// <summary>Melts and channels that several tests use.</summary>
internal static class Melts
{
    internal static readonly ViscosityRange Everywhere = new()
    {
        LowestTemperature = Temperature.FromDegreesCelsius(100),
        HighestTemperature = Temperature.FromDegreesCelsius(300),
        LowestShearRate = Frequency.FromPerSecond(1e-6),
        HighestShearRate = Frequency.FromPerSecond(1e9),
        RelativeStandardUncertainty = 0,
    };

    /// <summary>A set of constants in general use, of uncertain origin.</summary>
    internal static readonly MeltViscosity Pla = MeltViscosity.CrossWlf(
        0.25, Pressure.FromPascals(1.00861e5), DynamicViscosity.FromPascalSeconds(3.31719e9), Temperature.FromKelvins(373.15), 20.194, TemperatureDelta.FromKelvins(51.6), Everywhere);

    internal static readonly MeltPath Capillary = MeltPath.Of(MeltPassage.Cylinder("capillary", Exactly(0.4), Exactly(0.8)));

    internal static MeltViscosity PowerLaw(double exponent, double consistency, double activation = 0) => MeltViscosity.PowerLaw(
        exponent, DynamicViscosity.FromPascalSeconds(consistency), Temperature.FromDegreesCelsius(210), MolarEnergy.FromJoulesPerMole(activation), Everywhere);

    internal static double ZeroShear(MeltViscosity melt, Temperature temperature) =>
        melt.TryGetZeroShear(temperature, out DynamicViscosity viscosity) ? viscosity.PascalSeconds : throw new InvalidOperationException("no plateau");

    internal static Measured<VolumeFlow> Flow(double cubicMillimetersPerSecond) => Measured.Exact(VolumeFlow.FromCubicMetersPerSecond(cubicMillimetersPerSecond * 1e-9));

    internal static MeasuredTemperature Exactly(int celsius) => MeasuredTemperature.FromKelvins(celsius + 273.15, 0);

    internal static Measured<Length> Exactly(double millimeters) => Measured.Exact(Length.FromMillimeters(millimeters));
}
