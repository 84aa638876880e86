using UnitsNet;

namespace PrinterMath.Measurement.Tests;

/// <summary>How often an interval holds the truth that was planted. Quick form: fails only beyond the 99.9 % binomial limits around 93 to 97 %.</summary>
public sealed class CoverageTests
{
    private const int Cases = 2000;

    /// <summary>93 % − 3.29·√(0.93·0.07/2000) and 97 % + 3.29·√(0.97·0.03/2000).</summary>
    private const double Lowest = 0.911, Highest = 0.983;

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(30)]
    public void Mean_of_normal_readings(int readings)
    {
        var random = new Random(1);
        int held = 0;
        for (int i = 0; i < Cases; i++)
        {
            Force[] noisy = [.. Enumerable.Range(0, readings).Select(_ => Force.FromNewtons(40 + (0.7 * Gauss(random))))];
            held += Measured.FromReadings(noisy).Interval().Contains(Force.FromNewtons(40)) ? 1 : 0;
        }

        Assert.InRange(held / (double)Cases, Lowest, Highest);
    }

    // A product of a repeated reading, a rectangular and a normal input. Truncated degrees of freedom and the rectangular share make the
    // interval slightly wide, so only the lower limit of 93 % binds (type B and few data).
    [Fact]
    public void Product_of_unlike_inputs()
    {
        var random = new Random(1);
        int held = 0;
        double width = 0;
        for (int i = 0; i < Cases; i++)
        {
            double a = 10 + Gauss(random), b = 2 + (0.2 * ((2 * random.NextDouble()) - 1)), c = 5;
            double[] noisy = [.. Enumerable.Range(0, 4).Select(_ => a + (0.1 * Gauss(random)))];
            Measured<double> y = Propagation.FirstOrder<double>(
                x => x[0] * x[1] / x[2],
                [
                    BudgetInput.Of("a", Measured.FromReadings(noisy)),
                    BudgetInput.Of("b", Measured.FromRange(1.8, 2.2)),
                    BudgetInput.Of("c", Measured.Of(c + (0.05 * Gauss(random)), 0.05)),
                ]).Result;
            held += y.Interval().Contains(a * b / c) ? 1 : 0;
            width += y.RelativeStandardUncertainty / Cases;
        }

        Assert.InRange(held / (double)Cases, Lowest, 1);

        // √((0.05/10)² + (0.2/√3/2)² + 0.01²) = 5.9 %: honest, not merely wide.
        Assert.Equal(0.059, width, 0.003);
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
