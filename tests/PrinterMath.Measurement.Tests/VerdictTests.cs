using UnitsNet;

namespace PrinterMath.Measurement.Tests;

public sealed class VerdictTests
{
    private static readonly Tolerance<Force> Window = Tolerance.Between(Force.FromNewtons(20), Force.FromNewtons(30));

    private static Measured<Force> Newtons(double value, double u, double degreesOfFreedom = double.PositiveInfinity) =>
        Measured<Force>.FromSi(value, u, degreesOfFreedom);

    [Theory]
    [InlineData(25, 0.5, Conclusion.Within)]
    [InlineData(20.83, 0.5, Conclusion.Within)]
    [InlineData(20.81, 0.5, Conclusion.Undecided)]
    [InlineData(20, 0.5, Conclusion.Undecided)]
    [InlineData(19.19, 0.5, Conclusion.Undecided)]
    [InlineData(19.17, 0.5, Conclusion.Outside)]
    [InlineData(31, 0.5, Conclusion.Outside)]
    public void Guard_band_on_both_sides_of_a_limit(double value, double u, Conclusion expected) =>
        Assert.Equal(expected, Window.Judge(Newtons(value, u)).Conclusion);

    [Fact]
    public void A_window_narrow_against_the_uncertainty_proves_nothing() =>
        Assert.Equal(Conclusion.Undecided, Window.Judge(Newtons(25, 300)).Conclusion);

    [Fact]
    public void Few_degrees_of_freedom_ask_for_a_wider_guard_band()
    {
        Assert.Equal(Conclusion.Within, Window.Judge(Newtons(21, 0.5)).Conclusion);
        Assert.Equal(Conclusion.Undecided, Window.Judge(Newtons(21, 0.5, 2)).Conclusion);
    }

    [Fact]
    public void Exact_values_are_decided()
    {
        Assert.Equal(Conclusion.Within, Window.Judge(Measured.Exact(Force.FromNewtons(20))).Conclusion);
        Assert.Equal(Conclusion.Outside, Window.Judge(Measured.Exact(Force.FromNewtons(19.999))).Conclusion);
    }

    [Fact]
    public void A_smaller_risk_decides_less() =>
        Assert.Equal(Conclusion.Undecided, Window.Judge(Newtons(21, 0.5), 0.001).Conclusion);

    [Fact]
    public void Required_uncertainty_would_decide_the_same_value()
    {
        Limitation limitation = Assert.IsType<Limitation>(Window.Judge(Newtons(20.5, 0.5)).Limitation);
        Assert.Equal(LimitationKind.ReduceUncertainty, limitation.Kind);
        Assert.Equal(0.5 / 1.6449, limitation.RequiredSiStandardUncertainty, 1e-4);
        Assert.Equal(Conclusion.Within, Window.Judge(Newtons(20.5, limitation.RequiredSiStandardUncertainty * 0.9999)).Conclusion);
    }

    [Fact]
    public void A_value_at_the_limit_cannot_be_decided_by_measuring() =>
        Assert.Equal(LimitationKind.ValueAtLimit, Window.Judge(Newtons(20, 0.5)).Limitation?.Kind);

    [Fact]
    public void A_budget_that_is_mostly_scatter_says_how_often_to_repeat()
    {
        UncertaintyBudget<Force> budget = Propagation.FirstOrder<Force>(
            x => x[0] + x[1],
            [BudgetInput.Repeated("plucks", Newtons(20.5, 0.5, 3), 4), BudgetInput.Of("scale", Newtons(0, 0.1))]);
        Limitation limitation = Assert.IsType<Limitation>(Window.Judge(budget).Limitation);
        Assert.Equal(LimitationKind.Repeat, limitation.Kind);
        Assert.Equal("plucks", limitation.InputName);
        double u2 = Math.Pow(limitation.RequiredSiStandardUncertainty, 2) - 0.01;
        Assert.Equal((int)Math.Ceiling(4 * 0.25 / u2), limitation.Observations);
    }

    [Fact]
    public void A_budget_that_is_mostly_one_input_names_it()
    {
        UncertaintyBudget<Force> budget = Propagation.FirstOrder<Force>(
            x => x[0] * x[1],
            [BudgetInput.Repeated("plucks", Newtons(20.5, 0.05), 4), BudgetInput.Of("density", Measured.Of(1.0, 0.03))]);
        Limitation limitation = Assert.IsType<Limitation>(Window.Judge(budget).Limitation);
        Assert.Equal(LimitationKind.ImproveInput, limitation.Kind);
        Assert.Equal("density", limitation.InputName);
        double u = Math.Sqrt(Math.Pow(20.5 * limitation.RequiredSiStandardUncertainty, 2) + (0.05 * 0.05));
        Assert.Equal(0.5 / 1.6449, u, 1e-4);
        Assert.Equal("know 'density' to a standard uncertainty of 0.015", limitation.ToString());
    }

    [Fact]
    public void What_limits_a_verdict_is_said_in_the_usual_unit() =>
        Assert.Equal(
            "bring the standard uncertainty down to 0.0061 mm",
            Tolerance.AtMost(Length.FromMillimeters(0.1)).Judge(Measured.Of(Length.FromMillimeters(0.09), Length.FromMillimeters(0.01))).Limitation?.ToString());

    [Fact]
    public void A_verdict_reads_as_a_sentence() =>
        Assert.Equal("within: 25.0(5) N against 20 to 30 N, probability of conformity 1", Window.Judge(Newtons(25, 0.5)).ToString());

    [Fact]
    public void Limits_in_the_wrong_order_are_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Tolerance.Between(Force.FromNewtons(30), Force.FromNewtons(20)));

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(double.NaN)]
    public void A_risk_must_be_a_risk(double risk) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Window.Judge(Newtons(25, 1), risk));

    [Fact]
    public void One_sided_limits()
    {
        Assert.Equal(Conclusion.Within, Tolerance.AtLeast(Force.FromNewtons(10)).Judge(Newtons(25, 1)).Conclusion);
        Assert.Equal(Conclusion.Outside, Tolerance.AtMost(Force.FromNewtons(10)).Judge(Newtons(25, 1)).Conclusion);
        Assert.Equal("at most 10 N", Tolerance.AtMost(Force.FromNewtons(10)).ToString());
        Assert.Null(Tolerance.AtMost(Force.FromNewtons(10)).Lower);
    }
}
