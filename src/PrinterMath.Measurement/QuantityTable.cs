using System.Collections.Frozen;
using UnitsNet;

namespace PrinterMath.Measurement;

/// <summary>The quantities a <see cref="Measured{T}"/> may carry. Typed members only: no unit registry, no reflection, safe for native compilation.</summary>
internal static class QuantityTable
{
    private static readonly FrozenDictionary<Type, IQuantityUnits> Units = new Dictionary<Type, IQuantityUnits>
    {
        [typeof(double)] = new QuantityUnits<double>("1", q => q, v => v, new DisplayUnit(string.Empty, 1), new("%", 100)),
        [typeof(Length)] = new QuantityUnits<Length>("m", q => q.Meters, v => Length.FromMeters(v), new("mm", 1e3), new("µm", 1e6), new("m", 1)),
        [typeof(Area)] = new QuantityUnits<Area>("m2", q => q.SquareMeters, v => Area.FromSquareMeters(v), new("mm²", 1e6), new("m²", 1)),
        [typeof(Volume)] = new QuantityUnits<Volume>("m3", q => q.CubicMeters, v => Volume.FromCubicMeters(v), new("mm³", 1e9), new("m³", 1)),
        [typeof(Angle)] = new QuantityUnits<Angle>("rad", q => q.Radians, v => Angle.FromRadians(v), new("°", 180 / Math.PI), new("mrad", 1e3), new("rad", 1)),
        [typeof(Mass)] = new QuantityUnits<Mass>("kg", q => q.Kilograms, v => Mass.FromKilograms(v), new("g", 1e3), new("kg", 1)),
        [typeof(LinearDensity)] = new QuantityUnits<LinearDensity>("kg/m", q => q.KilogramsPerMeter, v => LinearDensity.FromKilogramsPerMeter(v), new("g/m", 1e3), new("kg/m", 1)),
        [typeof(Density)] = new QuantityUnits<Density>("kg/m3", q => q.KilogramsPerCubicMeter, v => Density.FromKilogramsPerCubicMeter(v), new DisplayUnit("kg/m³", 1)),
        [typeof(Force)] = new QuantityUnits<Force>("N", q => q.Newtons, v => Force.FromNewtons(v), new DisplayUnit("N", 1)),
        [typeof(ForcePerLength)] = new QuantityUnits<ForcePerLength>("N/m", q => q.NewtonsPerMeter, v => ForcePerLength.FromNewtonsPerMeter(v), new("N/mm", 1e-3), new("N/m", 1)),
        [typeof(FlexuralRigidity)] = new QuantityUnits<FlexuralRigidity>("N.m2", q => q.NewtonSquareMeters, FlexuralRigidity.FromNewtonSquareMeters, new("N·m²", 1), new("N·mm²", 1e6)),
        [typeof(Torque)] = new QuantityUnits<Torque>("N.m", q => q.NewtonMeters, v => Torque.FromNewtonMeters(v), new DisplayUnit("N·m", 1)),
        [typeof(Pressure)] = new QuantityUnits<Pressure>("Pa", q => q.Pascals, v => Pressure.FromPascals(v), new("MPa", 1e-6), new("Pa", 1)),
        [typeof(Energy)] = new QuantityUnits<Energy>("J", q => q.Joules, v => Energy.FromJoules(v), new DisplayUnit("J", 1)),
        [typeof(Power)] = new QuantityUnits<Power>("W", q => (double)q.Watts, v => Power.FromWatts(v), new DisplayUnit("W", 1)),
        [typeof(Duration)] = new QuantityUnits<Duration>("s", q => q.Seconds, v => Duration.FromSeconds(v), new("s", 1), new("ms", 1e3)),
        [typeof(Frequency)] = new QuantityUnits<Frequency>("Hz", q => q.Hertz, v => Frequency.FromHertz(v), new("Hz", 1), new("kHz", 1e-3)),
        [typeof(Speed)] = new QuantityUnits<Speed>("m/s", q => q.MetersPerSecond, v => Speed.FromMetersPerSecond(v), new("mm/s", 1e3), new("m/s", 1)),
        [typeof(Acceleration)] = new QuantityUnits<Acceleration>("m/s2", q => q.MetersPerSecondSquared, v => Acceleration.FromMetersPerSecondSquared(v), new("m/s²", 1), new("mm/s²", 1e3)),
        [typeof(VolumeFlow)] = new QuantityUnits<VolumeFlow>("m3/s", q => q.CubicMetersPerSecond, v => VolumeFlow.FromCubicMetersPerSecond(v), new("mm³/s", 1e9), new("m³/s", 1)),
        [typeof(RotationalSpeed)] = new QuantityUnits<RotationalSpeed>("rad/s", q => q.RadiansPerSecond, v => RotationalSpeed.FromRadiansPerSecond(v), new("rad/s", 1), new("1/min", 30 / Math.PI)),
        [typeof(TemperatureDelta)] = new QuantityUnits<TemperatureDelta>("K", q => q.Kelvins, v => TemperatureDelta.FromKelvins(v), new DisplayUnit("K", 1)),
        [typeof(CoefficientOfThermalExpansion)] = new QuantityUnits<CoefficientOfThermalExpansion>("K-1", q => q.PerKelvin, v => CoefficientOfThermalExpansion.FromPerKelvin(v), new("µm/(m·K)", 1e6), new("1/K", 1)),
        [typeof(TemperatureChangeRate)] = new QuantityUnits<TemperatureChangeRate>("K/s", q => q.DegreesCelsiusPerSecond, v => TemperatureChangeRate.FromDegreesCelsiusPerSecond(v), new DisplayUnit("K/s", 1)),
        [typeof(ThermalConductivity)] = new QuantityUnits<ThermalConductivity>("W/(m.K)", q => q.WattsPerMeterKelvin, v => ThermalConductivity.FromWattsPerMeterKelvin(v), new DisplayUnit("W/(m·K)", 1)),
        [typeof(SpecificEntropy)] = new QuantityUnits<SpecificEntropy>("J/(kg.K)", q => q.JoulesPerKilogramKelvin, v => SpecificEntropy.FromJoulesPerKilogramKelvin(v), new DisplayUnit("J/(kg·K)", 1)),
        [typeof(SpecificEnergy)] = new QuantityUnits<SpecificEnergy>("J/kg", q => q.JoulesPerKilogram, v => SpecificEnergy.FromJoulesPerKilogram(v), new("J/g", 1e-3), new("J/kg", 1)),
        [typeof(HeatTransferCoefficient)] = new QuantityUnits<HeatTransferCoefficient>("W/(m2.K)", q => q.WattsPerSquareMeterKelvin, v => HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(v), new DisplayUnit("W/(m²·K)", 1)),
        [typeof(ReciprocalLength)] = new QuantityUnits<ReciprocalLength>("m-1", q => q.InverseMeters, v => ReciprocalLength.FromInverseMeters(v), new("1/mm", 1e-3), new("1/m", 1)),
        [typeof(MassMomentOfInertia)] = new QuantityUnits<MassMomentOfInertia>("kg.m2", q => q.KilogramSquareMeters, v => MassMomentOfInertia.FromKilogramSquareMeters(v), new("g·cm²", 1e7), new("kg·m²", 1)),
        [typeof(RotationalStiffness)] = new QuantityUnits<RotationalStiffness>("N.m/rad", q => q.NewtonMetersPerRadian, v => RotationalStiffness.FromNewtonMetersPerRadian(v), new DisplayUnit("N·m/rad", 1)),
        [typeof(ElectricCurrent)] = new QuantityUnits<ElectricCurrent>("A", q => q.Amperes, v => ElectricCurrent.FromAmperes(v), new DisplayUnit("A", 1)),
        [typeof(ElectricPotential)] = new QuantityUnits<ElectricPotential>("V", q => q.Volts, v => ElectricPotential.FromVolts(v), new DisplayUnit("V", 1)),
        [typeof(ElectricResistance)] = new QuantityUnits<ElectricResistance>("Ohm", q => q.Ohms, v => ElectricResistance.FromOhms(v), new DisplayUnit("Ω", 1)),
        [typeof(ElectricInductance)] = new QuantityUnits<ElectricInductance>("H", q => q.Henries, v => ElectricInductance.FromHenries(v), new("mH", 1e3), new("H", 1)),
    }.ToFrozenDictionary();

    internal static string Names => string.Join(", ", Units.Keys.Select(type => type.Name).Order(StringComparer.Ordinal));

    internal static QuantityUnits<T>? Find<T>()
        where T : struct =>
        Units.TryGetValue(typeof(T), out IQuantityUnits? units) ? (QuantityUnits<T>)units : null;

    /// <summary>The usual unit of the quantity with this SI unit; the SI unit itself when the table does not hold it.</summary>
    internal static DisplayUnit UsualUnit(string ucum)
    {
        foreach (IQuantityUnits units in Units.Values)
        {
            if (units.Ucum == ucum)
            {
                return units.Display[0];
            }
        }

        return new DisplayUnit(ucum, 1);
    }
}
