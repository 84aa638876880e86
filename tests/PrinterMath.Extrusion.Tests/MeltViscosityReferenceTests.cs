using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

[Trait("Evidence", "Published")]
public sealed class MeltViscosityReferenceTests
{
    // Constants as published by Oliaei 2016, from an open collection under the MIT licence (beside the file); η₀ and η evaluated with NumPy, 12 digits given.
    // A numeric check only: the PLA set is that of one grade. Its exponent of 0.01 stresses the power of 1 − n.
    [Fact]
    public void Cross_wlf_viscosity_of_three_plastics()
    {
        Dictionary<string, MeltViscosity> melts = Rows("cross_wlf_constants.csv").ToDictionary(row => row[0], row => MeltViscosity.CrossWlf(
            Number(row[1]), Pressure.FromPascals(Number(row[2])), DynamicViscosity.FromPascalSeconds(Number(row[3])), Temperature.FromKelvins(Number(row[4])), Number(row[6]), TemperatureDelta.FromKelvins(Number(row[7])), Melts.Everywhere));
        int checks = 0;
        foreach (string[] row in Rows("cross_wlf_expected.csv"))
        {
            var temperature = Temperature.FromKelvins(Number(row[1]));
            double rate = Number(row[2]), expected = Number(row[5]);
            Assert.Equal(Number(row[4]), Melts.ZeroShear(melts[row[0]], temperature), 1e-11 * Number(row[4]));
            if (rate > 0)
            {
                Assert.Equal(expected, melts[row[0]].At(Frequency.FromPerSecond(rate), temperature).PascalSeconds, 1e-11 * expected);
                checks++;
            }
        }

        Assert.True(checks >= 75, $"{checks} checks");
    }

    // Evaluated outside the project; seven digits given.
    [Theory]
    [InlineData(190, 8841.523, 1450.734, 298.211)]
    [InlineData(210, 3556.272, 995.295, 229.889)]
    [InlineData(220, 2442.325, 830.397, 204.963)]
    public void The_pla_in_general_use(double celsius, double plateau, double atHundred, double atThousand)
    {
        var temperature = Temperature.FromDegreesCelsius(celsius);
        Assert.Equal(plateau, Melts.ZeroShear(Melts.Pla, temperature), 5e-4);
        Assert.Equal(atHundred, Melts.Pla.At(Frequency.FromPerSecond(100), temperature).PascalSeconds, 5e-4);
        Assert.Equal(atThousand, Melts.Pla.At(Frequency.FromPerSecond(1000), temperature).PascalSeconds, 5e-4);
    }

    // n = 0.4, K = 10⁴ Pa·sⁿ, R = 0.2 mm, L = 0.8 mm, 5 mm³/s: rates 795.7747 and 1094.1902 1/s, stress 164 299.84 Pa, 1.3143987 MPa, 3.16150 N on 1.75 mm filament.
    // Evaluated outside the project; digits as given.
    [Fact]
    public void Power_law_in_a_capillary()
    {
        MeltViscosity melt = Melts.PowerLaw(0.4, 1e4);
        var anywhere = Temperature.FromDegreesCelsius(210);
        Frequency wall = melt.WallShearRate(Frequency.FromPerSecond(4 * 5 / (Math.PI * 0.008)), anywhere);
        Assert.Equal(795.7747, 4 * 5 / (Math.PI * 0.008), 5e-5);
        Assert.Equal(1094.1902, wall.PerSecond, 5e-5);
        Assert.Equal(164_299.84, melt.StressAt(wall, anywhere).Pascals, 5e-3);
        PressureDrop drop = Melts.Capillary.DropAt(Melts.Flow(5), Melts.Exactly(210), melt);
        Assert.Equal(1.3143987, drop.Total.Value.Megapascals, 5e-8);
        Assert.Equal(3.16150, drop.ForceOn(Measured.Exact(Length.FromMillimeters(1.75))).Result.Value.Newtons, 5e-6);
    }

    // The factor (3n + 1)/(4n) for n = 0.6 is 1.16667, and 148.5 1/s follow from 127.3 1/s; a table in circulation misprints 1.125 and 143.2 1/s.
    [Fact]
    public void Correction_for_a_melt_that_thins() =>
        Assert.Equal(148.5, Melts.PowerLaw(0.6, 1).WallShearRate(Frequency.FromPerSecond(127.3), Temperature.FromDegreesCelsius(210)).PerSecond, 0.05);

    // Q = (π·R³/τ_w³)·∫ τ²·γ̇ dτ with SciPy's quad and brentq, Data/melt_reference.py; integrated to 1e-12; a taper of 1.0 to 0.2 mm radius, 2 mm long, to 1e-9.
    [Theory]
    [InlineData(1, 0.8147580135548)]
    [InlineData(2, 5.365762660689)]
    [InlineData(5, 154.4796447074)]
    public void Cross_melt_in_a_capillary(double megapascals, double flow) =>
        Assert.Equal(megapascals, Melts.Capillary.DropAt(Melts.Flow(flow), Melts.Exactly(210), Melts.Pla).Total.Value.Megapascals, 1e-10 * megapascals);

    // The same file.
    [Fact]
    public void Cross_melt_in_a_taper()
    {
        var path = MeltPath.Of(MeltPassage.Taper("taper", Melts.Exactly(2.0), Melts.Exactly(0.4), Melts.Exactly(2.0)));
        Assert.Equal(853_772.2065571, path.DropAt(Melts.Flow(5), Melts.Exactly(210), Melts.Pla).Total.Value.Pascals, 1e-2);
    }

    private static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", file)).Skip(1).Where(line => line.Length > 0).Select(line => line.Split(','));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
