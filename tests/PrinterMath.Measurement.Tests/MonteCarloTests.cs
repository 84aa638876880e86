namespace PrinterMath.Measurement.Tests;

public sealed class MonteCarloTests
{
    private static readonly BudgetInput[] Two = [BudgetInput.Of("a", Measured.Of(3.0, 0.3)), BudgetInput.Of("b", Measured.Of(4.0, 0.4))];

    private static readonly MonteCarloOptions Seeded = new() { Seed = 7, Trials = 200_000 };

    [Fact]
    public void A_straight_model_agrees_with_first_order()
    {
        MonteCarloResult<double> y = MonteCarlo.Propagate<double>(x => x[0] + x[1], Two, Seeded with { Trials = 1_000_000 });
        Assert.Equal(0.5, y.Result.SiStandardUncertainty, 1.5e-3);
        Assert.True(y.Validates(Propagation.FirstOrder<double>(x => x[0] + x[1], Two).Result));
    }

    [Theory]
    [InlineData(0.6)]
    [InlineData(1)]
    [InlineData(-1)]
    public void Correlated_inputs_agree_with_first_order(double r)
    {
        InputCorrelation[] correlations = [new("a", "b", r)];
        double expected = Propagation.FirstOrder<double>(x => x[0] + x[1], Two, correlations).Result.SiStandardUncertainty;
        MonteCarloResult<double> y = MonteCarlo.Propagate<double>(x => x[0] + x[1], Two, Seeded with { Correlations = correlations });
        Assert.Equal(expected, y.Result.SiStandardUncertainty, 3e-3);
    }

    [Theory]
    [InlineData(InputShape.Rectangular)]
    [InlineData(InputShape.Triangular)]
    [InlineData(InputShape.ArcSine)]
    public void Every_shape_has_the_stated_standard_deviation(InputShape shape)
    {
        MonteCarloResult<double> y = MonteCarlo.Propagate<double>(x => x[0], [Two[0].WithShape(shape)], Seeded);
        Assert.Equal(0.3, y.Result.SiStandardUncertainty, 2e-3);
        Assert.Equal(3, y.Result.SiValue, 3e-3);
    }

    [Fact]
    public void The_same_seed_gives_the_same_bits()
    {
        static double Model(ReadOnlySpan<double> x) => x[0] * x[1];
        Assert.Equal(
            MonteCarlo.Propagate<double>(Model, Two, Seeded).Result,
            MonteCarlo.Propagate<double>(Model, Two, Seeded).Result);
        Assert.NotEqual(
            MonteCarlo.Propagate<double>(Model, Two, Seeded).Result,
            MonteCarlo.Propagate<double>(Model, Two, Seeded with { Seed = 8 }).Result);
    }

    // E[x²] = m² + u², Var[x²] = 4m²u² + 2u⁴ for a normal x: exact, by hand.
    [Fact]
    public void Second_order_is_exact_for_a_square()
    {
        Measured<double> y = Propagation.SecondOrder<double>(x => x[0] * x[0], [Two[0]]);
        Assert.Equal(9.09, y.SiValue, 1e-9);
        Assert.Equal(Math.Sqrt((4 * 9 * 0.09) + (2 * 0.0081)), y.SiStandardUncertainty, 1e-9);
    }

    [Fact]
    public void Work_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => MonteCarlo.Propagate<double>(x => x[0], Two, Seeded, null, stop.Token));
    }

    [Fact]
    public void Mistakes_are_named()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Propagate<double>(x => x[0], Two, new MonteCarloOptions { Seed = 1, Trials = 10 }));
        Assert.Throws<ArgumentException>(() => MonteCarlo.Propagate<double>(x => Math.Sqrt(-x[0]), Two, Seeded));
        Assert.Throws<ArgumentException>(() => MonteCarlo.Propagate<double>(
            x => x[0], [Two[0].WithShape(InputShape.Rectangular), Two[1]], Seeded with { Correlations = [new("a", "b", 0.5)] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Two[0].WithShape((InputShape)99));
    }
}
