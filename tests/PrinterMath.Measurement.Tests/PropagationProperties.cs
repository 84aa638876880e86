using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace PrinterMath.Measurement.Tests;

/// <summary>Two inputs with uncertainty and a correlation.</summary>
public sealed record TwoInputs(double A, double B, double UncertaintyOfA, double UncertaintyOfB, double Correlation);

public static class TwoInputsArbitrary
{
    public static Arbitrary<TwoInputs> Inputs() => Arb.From(
        from a in Gen.Choose(-10_000, 10_000)
        from b in Gen.Choose(-10_000, 10_000)
        from ua in Gen.Choose(1, 1000)
        from ub in Gen.Choose(1, 1000)
        from r in Gen.Choose(-100, 100)
        select new TwoInputs(a / 100.0, b / 100.0, ua / 1000.0, ub / 1000.0, r / 100.0));
}

[Properties(Arbitrary = [typeof(TwoInputsArbitrary)], MaxTest = 300)]
public sealed class PropagationProperties
{
    private const double Rounding = 1e-9;

    [Property]
    public bool Variance_of_a_sum_by_hand(TwoInputs i)
    {
        double u = Sum(i).Result.SiStandardUncertainty;
        double byHand = (i.UncertaintyOfA * i.UncertaintyOfA) + (4 * i.UncertaintyOfB * i.UncertaintyOfB)
            + (4 * i.Correlation * i.UncertaintyOfA * i.UncertaintyOfB);
        return Math.Abs((u * u) - byHand) <= Rounding * ((i.UncertaintyOfA * i.UncertaintyOfA) + (4 * i.UncertaintyOfB * i.UncertaintyOfB));
    }

    [Property]
    public bool Shares_add_up_to_one(TwoInputs i)
    {
        UncertaintyBudget<double> budget = Sum(i);
        return budget.Result.SiStandardUncertainty < 1e-6 || Math.Abs(budget.Lines.Sum(line => line.VarianceShare) - 1) < Rounding;
    }

    [Property]
    public bool A_change_of_unit_scales_everything(TwoInputs i)
    {
        Measured<Length> meters = Measured<Length>.FromSi(i.A, i.UncertaintyOfA);
        Measured<double> millimeters = Propagation.FirstOrder<double>(x => 1000 * x[0], [BudgetInput.Of("a", meters)]).Result;
        return Math.Abs(millimeters.SiValue - (1000 * i.A)) <= 1e-9
            && Math.Abs(millimeters.SiStandardUncertainty - (1000 * i.UncertaintyOfA)) <= Rounding * 1000 * i.UncertaintyOfA;
    }

    [Property]
    public bool The_order_of_inputs_does_not_matter(TwoInputs i)
    {
        BudgetInput a = BudgetInput.Of("a", Measured.Of(i.A, i.UncertaintyOfA));
        BudgetInput b = BudgetInput.Of("b", Measured.Of(i.B, i.UncertaintyOfB));
        double one = Propagation.FirstOrder<double>(x => x[0] * x[1], [a, b], [new("a", "b", i.Correlation)]).Result.SiStandardUncertainty;
        double other = Propagation.FirstOrder<double>(x => x[0] * x[1], [b, a], [new("b", "a", i.Correlation)]).Result.SiStandardUncertainty;
        return Math.Abs(one - other) <= Rounding * (one + 1e-6);
    }

    [Property]
    public bool A_verdict_follows_its_mirror_image(TwoInputs i)
    {
        Tolerance<double> limits = Tolerance.Between(-20.0, 50.0);
        Tolerance<double> mirrored = Tolerance.Between(-50.0, 20.0);
        Verdict<double> verdict = limits.Judge(Measured.Of(i.A, i.UncertaintyOfA));
        Verdict<double> mirror = mirrored.Judge(Measured.Of(-i.A, i.UncertaintyOfA));
        return verdict.Conclusion == mirror.Conclusion && Math.Abs(verdict.ProbabilityOfConformity - mirror.ProbabilityOfConformity) < 1e-12;
    }

    [Property]
    public bool A_decided_verdict_is_wrong_with_at_most_the_risk(TwoInputs i)
    {
        Verdict<double> verdict = Tolerance.Between(-20.0, 50.0).Judge(Measured.Of(i.A, i.UncertaintyOfA, 7));
        return verdict.Conclusion switch
        {
            Conclusion.Within => verdict.ProbabilityOfConformity >= 0.95 && verdict.Limitation is null,
            Conclusion.Outside => verdict.ProbabilityOfConformity <= 0.05 && verdict.Limitation is null,
            _ => verdict.Limitation is not null,
        };
    }

    private static UncertaintyBudget<double> Sum(TwoInputs i) => Propagation.FirstOrder<double>(
        x => x[0] + (2 * x[1]),
        [BudgetInput.Of("a", Measured.Of(i.A, i.UncertaintyOfA)), BudgetInput.Of("b", Measured.Of(i.B, i.UncertaintyOfB))],
        [new("a", "b", i.Correlation)]);
}
