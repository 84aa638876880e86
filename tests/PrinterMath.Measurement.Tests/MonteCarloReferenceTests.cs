using UnitsNet;

namespace PrinterMath.Measurement.Tests;

[Trait("Evidence", "Published")]
public sealed class MonteCarloReferenceTests
{
    private const double Nano = 1e-9;
    private static readonly MonteCarloOptions Seeded = new() { Seed = 1 };

    private static double EndGaugeModel(ReadOnlySpan<double> x) => x[0] + x[1] - (x[0] * ((x[2] * x[3]) + (x[4] * x[5])));

    private static BudgetInput[] EndGauge() =>
    [
        BudgetInput.Of("standard", Measured<Length>.FromSi(50_000_623 * Nano, 25 * Nano, 18)),
        BudgetInput.Of("difference", Measured<Length>.FromSi(215 * Nano, 9.7 * Nano, 25.6)),
        BudgetInput.Of("difference of expansion", Measured<CoefficientOfThermalExpansion>.FromSi(0, 0.58e-6, 50)),
        BudgetInput.Of("temperature of the bed", Measured<TemperatureDelta>.FromSi(-0.1, 0.41)),
        BudgetInput.Of("expansion of the standard", Measured<CoefficientOfThermalExpansion>.FromSi(11.5e-6, 1.2e-6)),
        BudgetInput.Of("difference of temperature", Measured<TemperatureDelta>.FromSi(0, 0.029, 2)),
    ];

    // JCGM 100:2008, H.1.7: second-order terms of 11.7 nm and 1.7 nm raise u_c from 32 nm to 34 nm (33.911 nm with NumPy).
    [Fact]
    public void End_gauge_with_second_order_terms()
    {
        double u = Propagation.SecondOrder<Length>(EndGaugeModel, EndGauge()).SiStandardUncertainty / Nano;
        Assert.Equal(33.911, u, 2e-3);
        Assert.Equal(34, u, 0.5);
    }

    // JCGM 101:2008, 9.2.2: sum of four standard normal inputs: u = 2.0, 95 % interval ±3.92. Tolerance: three standard errors of a million trials.
    [Fact]
    public void Sum_of_four_normal_inputs()
    {
        MonteCarloResult<double> y = MonteCarlo.Propagate<double>(Sum, Four(InputShape.Normal), Seeded);
        (double lower, double upper) = y.SymmetricInterval();
        Assert.Equal(2.0, y.Result.SiStandardUncertainty, 5e-3);
        Assert.Equal(-3.92, lower, 2e-2);
        Assert.Equal(3.92, upper, 2e-2);
    }

    // JCGM 101:2008, 9.2.3: sum of four rectangular inputs of standard deviation 1: u = 2.0, 95 % interval ±3.88.
    [Fact]
    public void Sum_of_four_rectangular_inputs()
    {
        MonteCarloResult<double> y = MonteCarlo.Propagate<double>(Sum, Four(InputShape.Rectangular), Seeded);
        (double lower, double upper) = y.ShortestInterval();
        Assert.Equal(2.0, y.Result.SiStandardUncertainty, 5e-3);
        Assert.Equal(2 * 3.88, upper - lower, 2e-2);
        Assert.Equal(3.88, y.SymmetricInterval().Upper, 2e-2);

        // Clause 8 by hand: two digits of 2.0 make a tolerance of 0.05, and the ends differ by 3.92 − 3.88 = 0.04.
        Assert.True(y.Validates(Propagation.FirstOrder<double>(Sum, Four(InputShape.Rectangular)).Result));
    }

    // NPL Best Practice Guide on uncertainty evaluation, y = ln x with x rectangular on 0.1 to 1.1: first order −0.511 and 0.481, Monte Carlo −0.665 and 0.606,
    // shortest 95 % interval −1.895 to 0.095. By integration the mean is 1.1·ln 1.1 − 0.1·ln 0.1 − 1 = −0.66490.
    [Fact]
    public void Logarithm_of_a_rectangular_input()
    {
        BudgetInput[] inputs = [BudgetInput.Of("x", Measured.FromRange(0.1, 1.1)).WithShape(InputShape.Rectangular)];
        static double Model(ReadOnlySpan<double> x) => Math.Log(x[0]);
        Measured<double> first = Propagation.FirstOrder<double>(Model, inputs).Result;
        Assert.Equal(-0.511, first.SiValue, 5e-4);
        Assert.Equal(0.481, first.SiStandardUncertainty, 5e-4);

        MonteCarloResult<double> y = MonteCarlo.Propagate<double>(Model, inputs, Seeded);
        Assert.Equal(-0.66490, y.Result.SiValue, 2e-3);
        Assert.Equal(0.606, y.Result.SiStandardUncertainty, 2e-3);
        (double lower, double upper) = y.ShortestInterval();
        Assert.Equal(-1.895, lower, 1e-2);
        Assert.Equal(0.095, upper, 1e-2);
        Assert.False(y.Validates(first));
    }

    // JCGM 101:2008, 6.4.9.4: a t distribution with ν degrees of freedom has the variance u²·ν/(ν − 2).
    [Fact]
    public void Few_degrees_of_freedom_widen_the_draws()
    {
        MonteCarloResult<double> y = MonteCarlo.Propagate<double>(x => x[0], [BudgetInput.Of("x", Measured.Of(5.0, 1.0, 10))], Seeded);
        Assert.Equal(Math.Sqrt(10.0 / 8), y.Result.SiStandardUncertainty, 5e-3);

        // t_97.5(10) = 2.228, JCGM 100:2008, table G.2.
        Assert.Equal(7.228, y.Quantile(0.975), 2e-2);
    }

    private static double Sum(ReadOnlySpan<double> x) => x[0] + x[1] + x[2] + x[3];

    private static BudgetInput[] Four(InputShape shape) =>
        [.. Enumerable.Range(1, 4).Select(i => BudgetInput.Of($"x{i}", Measured.Of(0.0, 1.0)).WithShape(shape))];
}
