using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

[Trait("Evidence", "Published")]
public sealed class InstrumentComparisonReferenceTests
{
    // Pearson's data with York's weights (1/u²), as carried by GTC's test_fitting.py (MIT; text beside the data): a = 5.47991022, b = −0.480533407, χ²/8 = 1.4833 (G. Neri et al. 1989). The standard errors 0.294970735 and
    // 0.0579850090 are those of York et al. 2004 (from memory), before they are enlarged by √1.4833.
    [Fact]
    public void Pearson_with_the_weights_of_York()
    {
        PairedReading[] pairs =
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "pearson_york_xy_errors.csv")).Skip(1).Where(line => line.Length > 0)
                .Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray())
                .Select(row => PairedReading.Of(Meters(row[0], 1 / Math.Sqrt(row[1])), Meters(row[2], 1 / Math.Sqrt(row[3])))),
        ];
        InstrumentComparison line = InstrumentComparison.Of(pairs);
        Assert.Equal(10, line.PairCount);
        Assert.Equal(5.47991022, line.Intercept.SiValue, 5e-9);
        Assert.Equal(-0.480533407, line.Slope.SiValue, 5e-10);
        Assert.Equal(1.4833, line.ChiSquare / 8, 5e-5);
        double birge = Math.Sqrt(line.ChiSquare / 8);
        Assert.Equal(0.294970735, line.Intercept.SiStandardUncertainty / birge, 5e-9);
        Assert.Equal(0.0579850090, line.Slope.SiStandardUncertainty / birge, 5e-10);
    }

    private static Measured<Length> Meters(double value, double u) => Measured.Of(Length.FromMeters(value), Length.FromMeters(u));
}
