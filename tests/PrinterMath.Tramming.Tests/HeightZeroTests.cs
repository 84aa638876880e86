using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class HeightZeroTests
{
    private static readonly Measured<CoefficientOfThermalExpansion> Brass =
        Measured.Of(CoefficientOfThermalExpansion.FromPerKelvin(19e-6), CoefficientOfThermalExpansion.FromPerKelvin(1e-6));

    // 20 mm of brass from 25 to 225 degrees: 19e-6 * 0.02 * 200 = 76 um
    private static ThermalGrowth Nozzle => ThermalGrowth.Of(Brass, Measured.Of(Mm(20), Mm(1)), At(25, 1), At(225, 2));

    [Fact]
    public void GrowthIsExpansionTimesLengthTimesRise()
    {
        Assert.Equal(.076, Nozzle.Growth.Millimeters(), 1e-12);
        double[] parts = [.02 * 200 * 1e-6, 19e-6 * 200 * .001, 19e-6 * .02 * 2, 19e-6 * .02 * 1]; // alpha, L, both temperatures, in m
        Assert.Equal(Math.Sqrt(parts.Sum(p => p * p)), Nozzle.Growth.SiStandardUncertainty, 1e-15);
        Assert.Equal(4, Nozzle.Budget.Lines.Count);
    }

    [Fact]
    public void EachPartHasItsSignAndItsLine()
    {
        ThermalGrowth bed = ThermalGrowth.Of(Brass, Measured.Of(Mm(10), Mm(1)), At(25, 1), At(75, 1)); // 9.5 um
        HeightZero zero = HeightZero.From(Measured.Of(Mm(.5), Mm(.003)), new HeightZeroOptions
        {
            GaugeThickness = Measured.Of(Mm(.1), Mm(.004)),
            NozzleAboveTrigger = Measured.Of(Mm(1.2), Mm(.01)),
            NozzleGrowth = Nozzle,
            BedGrowth = bed,
        });

        Assert.Equal(.5 - .1 - 1.2 + .076 + .0095, zero.Height.Millimeters(), 1e-12);
        Assert.Equal(-.1 - 1.2 + .076 + .0095, zero.Offset.Millimeters(), 1e-12);
        Assert.Equal(5, zero.Budget.Lines.Count);
        Assert.Equal("nozzle above trigger", zero.Budget.Largest.Input.Name);
        Assert.Equal(
            [.003, .004, .01],
            zero.Budget.Lines.Where(l => !l.Input.Name.StartsWith("growth", StringComparison.Ordinal)).Select(l => Math.Round(l.SiContribution * 1e3, 9)).Order());
        Assert.Empty(zero.Findings);
    }

    [Fact]
    public void AHotterNozzleNarrowsTheGap()
    {
        HeightZero cold = HeightZero.From(Measured.Of(Mm(0), Mm(.003)));
        HeightZero hot = HeightZero.From(Measured.Of(Mm(0), Mm(.003)), new HeightZeroOptions { NozzleGrowth = Nozzle });

        Assert.Equal(.2, cold.Gap(Mm(.2)).Result.Millimeters(), 1e-12);
        Assert.Equal(.2 - .076, hot.Gap(Mm(.2)).Result.Millimeters(), 1e-12);
        Assert.Equal(0, cold.Offset.SiValue);
    }

    [Theory]
    [InlineData(.276, Conclusion.Within)]
    [InlineData(.2, Conclusion.Outside)]
    [InlineData(.25, Conclusion.Undecided)]
    public void AVerdictOnTheFirstLayersGap(double axis, Conclusion expected)
    {
        HeightZero zero = HeightZero.From(Measured.Of(Mm(0), Mm(.003)), new HeightZeroOptions { NozzleGrowth = Nozzle });
        Verdict<Length> verdict = zero.JudgeGap(Mm(axis), Tolerance.Around(Mm(.2), Mm(.03)));

        Assert.Equal(expected, verdict.Conclusion);
        Assert.Equal(expected == Conclusion.Undecided, verdict.Limitation is not null);
    }

    [Fact]
    public void AGrowthNoPrinterShowsIsAFinding()
    {
        ThermalGrowth large = ThermalGrowth.Of(Brass, Measured.Of(Mm(500), Mm(1)), At(25, 1), At(225, 2));
        Assert.Equal("heightZero.growth.suspect", Assert.Single(HeightZero.From(Measured.Exact(Mm(0)), new HeightZeroOptions { BedGrowth = large }).Findings).Code);
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => HeightZero.From(default));
        Assert.Throws<ArgumentOutOfRangeException>(() => HeightZero.From(Measured.Exact(Mm(0)), new HeightZeroOptions { GaugeThickness = Measured.Exact(Mm(-1)) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => HeightZero.From(Measured.Exact(Mm(0)), new HeightZeroOptions { NozzleAboveTrigger = Measured.Exact(Mm(500)) }));
        Assert.Throws<ArgumentNullException>(() => HeightZero.From(Measured.Exact(Mm(0))).JudgeGap(Mm(0), null!));
        Measured<CoefficientOfThermalExpansion> micro = Measured.Exact(CoefficientOfThermalExpansion.FromPerKelvin(19));
        Assert.Throws<ArgumentOutOfRangeException>(() => ThermalGrowth.Of(micro, Measured.Exact(Mm(20)), At(25, 1), At(225, 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ThermalGrowth.Of(Brass, Measured.Exact(Length.FromMeters(20)), At(25, 1), At(225, 1)));
    }

    private static MeasuredTemperature At(double celsius, double u) =>
        Measured.Of(Temperature.FromDegreesCelsius(celsius), TemperatureDelta.FromKelvins(u));
}
