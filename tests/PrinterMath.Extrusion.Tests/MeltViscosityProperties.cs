using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

/// <summary>Exponent, shear rate in 1/s, temperature in °C, flow in mm³/s.</summary>
public sealed record AnyMelt(double Exponent, double Rate, double Celsius, double Flow);

public static class MeltArbitrary
{
    public static Arbitrary<AnyMelt> Melts() => Arb.From(
        from exponent in Gen.Choose(5, 95)
        from rate in Gen.Choose(-300, 500)
        from celsius in Gen.Choose(150, 280)
        from flow in Gen.Choose(-100, 200)
        select new AnyMelt(exponent / 100.0, Math.Pow(10, rate / 100.0), celsius, Math.Pow(10, flow / 100.0)));
}

[Properties(Arbitrary = [typeof(MeltArbitrary)], MaxTest = 300)]
public sealed class MeltViscosityProperties
{
    [Property]
    public bool Thins_with_rate_while_the_stress_rises(AnyMelt m) => Both(m).All(melt =>
    {
        Frequency slow = Frequency.FromPerSecond(m.Rate), fast = Frequency.FromPerSecond(m.Rate * 1.1);
        var t = Temperature.FromDegreesCelsius(m.Celsius);
        return melt.At(fast, t) < melt.At(slow, t) && melt.StressAt(fast, t) > melt.StressAt(slow, t);
    });

    [Property]
    public bool Thins_with_temperature(AnyMelt m) => Both(m).All(melt =>
    {
        var rate = Frequency.FromPerSecond(m.Rate);
        return melt.At(rate, Temperature.FromDegreesCelsius(m.Celsius + 1)) < melt.At(rate, Temperature.FromDegreesCelsius(m.Celsius));
    });

    // At a reduced rate x the Cross model lies x^(1 − n) below its plateau; that is far below 1e-6 at x = 1e-200.
    [Property]
    public bool Cross_goes_to_its_plateau_at_low_rate(AnyMelt m)
    {
        MeltViscosity melt = Cross(m.Exponent);
        var t = Temperature.FromDegreesCelsius(m.Celsius);
        double plateau = Melts.ZeroShear(melt, t);
        return Close(plateau, melt.At(Frequency.FromPerSecond(1e-200), t).PascalSeconds, 1e-6)
            && Close(1e-200, melt.WallShearRate(Frequency.FromPerSecond(1e-200), t).PerSecond, 1e-6);
    }

    // Hagen and Poiseuille: ΔP = 8·η·L·Q/(π·R⁴).
    [Property]
    public bool Newtonian_melt_obeys_the_law_of_pipes(AnyMelt m)
    {
        double expected = 8 * 800 * 0.8e-3 * m.Flow * 1e-9 / (Math.PI * Math.Pow(0.2e-3, 4));
        return Close(expected, Melts.Capillary.DropAt(Melts.Flow(m.Flow), Melts.Exactly(210), Melts.PowerLaw(1, 800)).Total.SiValue, 1e-13);
    }

    // 2·K/(3n·tan α)·[(3n + 1)/(4n)·4Q/π]ⁿ·(R₂⁻³ⁿ − R₁⁻³ⁿ), the integral over the taper done by hand.
    [Property]
    public bool Power_law_in_a_taper(AnyMelt m)
    {
        const double R1 = 1e-3, R2 = 0.2e-3, L = 2e-3;
        double n = m.Exponent, q = m.Flow * 1e-9;
        double expected = 2 * 1e4 / (3 * n * ((R1 - R2) / L)) * Math.Pow(((3 * n) + 1) / (4 * n) * 4 * q / Math.PI, n) * (Math.Pow(R2, -3 * n) - Math.Pow(R1, -3 * n));
        return Close(expected, Taper(2, 0.4).DropAt(Melts.Flow(m.Flow), Melts.Exactly(210), Melts.PowerLaw(n, 1e4)).Total.SiValue, 1e-11);
    }

    [Property]
    public bool A_taper_takes_the_same_either_way(AnyMelt m) => Both(m).All(melt => Close(
        Taper(2, 0.4).DropAt(Melts.Flow(m.Flow), Melts.Exactly((int)m.Celsius), melt).Total.SiValue,
        Taper(0.4, 2).DropAt(Melts.Flow(m.Flow), Melts.Exactly((int)m.Celsius), melt).Total.SiValue,
        1e-12));

    // Rabinowitsch's correction lies between those of the largest and the smallest local exponent, and the flow at that wall rate is the flow given: by the trapezoidal rule,
    // whose error is h²/12 times some 50, six times larger after 1 − I.
    [Property]
    public bool Wall_rate_of_a_cross_melt_gives_back_its_flow(AnyMelt m)
    {
        MeltViscosity melt = Cross(m.Exponent);
        var t = Temperature.FromDegreesCelsius(m.Celsius);
        double wall = melt.WallShearRate(Frequency.FromPerSecond(m.Rate), t).PerSecond, stress = melt.StressAt(Frequency.FromPerSecond(wall), t).Pascals, sum = 0;
        const int Steps = 1000;
        for (int i = 1; i < Steps; i++)
        {
            // u = v⁸: the mean of (τ/τ_w)³ over the rate, weighted by 8v⁷.
            double v = i / (double)Steps, fourth = v * v * v * v, u = fourth * fourth;
            sum += 8 * fourth * v * v * v * Math.Pow(melt.StressAt(Frequency.FromPerSecond(u * wall), t).Pascals / stress, 3);
        }

        double apparent = 4.0 / 3 * wall * (1 - ((sum + 4) / Steps));
        return wall >= m.Rate * (1 - 1e-12) && wall <= m.Rate * ((3 * m.Exponent) + 1) / (4 * m.Exponent) * (1 + 1e-12) && Close(m.Rate, apparent, 1e-4);
    }

    private static MeltPath Taper(double inlet, double outlet) => MeltPath.Of(MeltPassage.Taper("taper", Melts.Exactly(inlet), Melts.Exactly(outlet), Melts.Exactly(2.0)));

    private static MeltViscosity Cross(double exponent) => MeltViscosity.CrossWlf(
        exponent, Pressure.FromPascals(1e5), DynamicViscosity.FromPascalSeconds(3e9), Temperature.FromKelvins(373.15), 20, TemperatureDelta.FromKelvins(51.6), Melts.Everywhere);

    private static MeltViscosity[] Both(AnyMelt m) => [Melts.PowerLaw(m.Exponent, 1e4, 40_000), Cross(m.Exponent)];

    private static bool Close(double expected, double actual, double relative) => Math.Abs(actual - expected) <= relative * Math.Abs(expected);
}
