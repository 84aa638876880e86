using UnitsNet;

namespace PrinterMath.Measurement.Tests;

public sealed class PropagationTests
{
    private static BudgetInput Input(string name, double value, double u, double degreesOfFreedom = double.PositiveInfinity) =>
        BudgetInput.Of(name, Measured<double>.FromSi(value, u, degreesOfFreedom));

    [Fact]
    public void Numerical_sensitivities_equal_derived_ones()
    {
        BudgetInput[] inputs = [Input("a", 2, 0.01), Input("b", -3, 0.1), Input("c", 1e-6, 1e-9)];
        UncertaintyBudget<double> numerical = Propagation.FirstOrder<double>(x => x[0] * x[0] * Math.Sin(x[1]) / x[2], inputs);
        double[] derived = [4 * Math.Sin(-3.0) / 1e-6, 4 * Math.Cos(-3.0) / 1e-6, -4 * Math.Sin(-3.0) / 1e-12];
        foreach (BudgetLine line in numerical.Lines)
        {
            // Fourth-order error of a step of u/10: below 1e-9 for the widest input.
            Assert.Equal(1, line.SiSensitivity / derived[Array.IndexOf(inputs, line.Input)], 1e-8);
        }

        UncertaintyBudget<double> given = Propagation.FirstOrder<double>(numerical.Result.SiValue, inputs, derived);
        Assert.Equal(1, given.Result.SiStandardUncertainty / numerical.Result.SiStandardUncertainty, 1e-8);
    }

    [Fact]
    public void Fully_correlated_inputs_add_linearly_and_cancel_in_a_difference()
    {
        BudgetInput[] inputs = [Input("a", 5, 0.3), Input("b", 4, 0.4)];
        InputCorrelation[] same = [new("a", "b", 1)];
        Assert.Equal(0.7, Propagation.FirstOrder<double>(x => x[0] + x[1], inputs, same).Result.SiStandardUncertainty, 1e-12);
        Assert.Equal(0.1, Propagation.FirstOrder<double>(x => x[0] - x[1], inputs, same).Result.SiStandardUncertainty, 1e-12);
        Assert.Equal(0.5, Propagation.FirstOrder<double>(x => x[0] - x[1], inputs).Result.SiStandardUncertainty, 1e-12);
    }

    [Fact]
    public void A_quantity_minus_itself_is_exact()
    {
        Measured<double> zero = Propagation.FirstOrder<double>(x => x[0] - x[0], [Input("a", 5, 0.3)]).Result;
        Assert.Equal(0, zero.SiValue);
        Assert.Equal(0, zero.SiStandardUncertainty);
    }

    [Fact]
    public void Shares_add_up_to_one_and_are_ranked()
    {
        UncertaintyBudget<double> budget = Propagation.FirstOrder<double>(
            x => x[0] + (2 * x[1]) - x[2], [Input("a", 1, 0.1), Input("b", 1, 0.2), Input("c", 1, 0.3)], [new("a", "c", 0.5)]);
        Assert.Equal(1, budget.Lines.Sum(line => line.VarianceShare), 1e-12);
        Assert.Equal("b", budget.Largest.Input.Name);
        Assert.True(budget.Lines[0].VarianceShare >= budget.Lines[1].VarianceShare);
    }

    // Joined inputs count once: two readings with the same four degrees of freedom, fully correlated, keep four, where Welch-Satterthwaite for
    // independent ones would say eight.
    [Fact]
    public void Correlated_inputs_do_not_gain_degrees_of_freedom()
    {
        BudgetInput[] inputs = [Input("a", 1, 0.1, 4), Input("b", 1, 0.1, 4)];
        Assert.Equal(8, Propagation.FirstOrder<double>(x => x[0] + x[1], inputs).Result.DegreesOfFreedom, 1e-9);
        Assert.Equal(4, Propagation.FirstOrder<double>(x => x[0] + x[1], inputs, [new("a", "b", 1)]).Result.DegreesOfFreedom, 1e-9);
    }

    [Fact]
    public void Temperatures_propagate_in_kelvin()
    {
        BudgetInput bed = BudgetInput.Of("bed", Measured.Of(Temperature.FromDegreesCelsius(60), TemperatureDelta.FromKelvins(0.5)));
        Measured<Length> growth = Propagation.FirstOrder<Length>(x => 2e-5 * 0.1 * (x[0] - 293.15), [bed]).Result;
        Assert.Equal(80e-6, growth.SiValue, 1e-15);
        Assert.Equal(1e-6, growth.SiStandardUncertainty, 1e-12);
    }

    [Fact]
    public void Mistakes_are_named()
    {
        BudgetInput[] inputs = [Input("a", 1, 0.1), Input("b", 1, 0.1), Input("c", 1, 0.1)];
        static double Sum(ReadOnlySpan<double> x) => x[0] + x[1] + x[2];
        Assert.Throws<ArgumentOutOfRangeException>(() => Propagation.FirstOrder<double>(Sum, []));
        Assert.Throws<ArgumentException>(() => Propagation.FirstOrder<double>(Sum, [inputs[0], inputs[0], inputs[1]]));
        Assert.Throws<ArgumentException>(() => Propagation.FirstOrder<double>(Sum, inputs, [new("a", "d", 0.5)]));
        Assert.Throws<ArgumentException>(() => Propagation.FirstOrder<double>(Sum, inputs, [new("a", "a", 0.5)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Propagation.FirstOrder<double>(Sum, inputs, [new("a", "b", 1.5)]));
        Assert.Throws<ArgumentException>(() => Propagation.FirstOrder<double>(Sum, inputs, [new("a", "b", 1), new("b", "c", 1), new("a", "c", -1)]));
        Assert.Throws<ArgumentException>(() => Propagation.FirstOrder<double>(x => Math.Log(x[0] - 1), inputs));
        Assert.Throws<ArgumentException>(() => Propagation.FirstOrder<double>(1, inputs, [1.0]));
    }

    // JCGM 100:2008, G.4.1, equation (G.2b), by hand: u = 3, 4 with ν = 9, 16: 25²/(81/9 + 256/16) = 25.
    [Fact]
    public void Welch_Satterthwaite_by_hand() =>
        Assert.Equal(25, EffectiveDegreesOfFreedom.WelchSatterthwaite([3, 4], [9, 16]), 1e-12);

    [Fact]
    public void Joint_estimates_are_checked()
    {
        Assert.Throws<ArgumentException>(() => JointEstimate.FromSi(["a", "a"], ["1", "1"], [1, 2], [1, 0, 0, 1], 5));
        Assert.Throws<ArgumentException>(() => JointEstimate.FromSi(["a", "b"], ["1", "1"], [1, 2], [1, 0.5, 0, 1], 5));
        Assert.Throws<ArgumentException>(() => JointEstimate.FromSi(["a", "b"], ["1", "1"], [1, 2], [1, 2, 2, 1], 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => JointEstimate.FromSi(["a"], ["1"], [1], [-1], 5));
        JointEstimate joint = JointEstimate.FromSi(["a", "b"], ["m", "1"], [1, 2], [0.04, 0.01, 0.01, 0.09], 5);
        Assert.Equal(0.2, joint.Estimate<Length>(0).SiStandardUncertainty, 1e-15);
        Assert.Throws<ArgumentException>(() => joint.Estimate<Length>(1));
        Assert.Equal(0.01 / 0.06, joint.Correlation(0, 1), 1e-12);
    }
}
