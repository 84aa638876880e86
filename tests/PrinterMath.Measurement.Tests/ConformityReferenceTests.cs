using MathNet.Numerics.Distributions;
using UnitsNet;

namespace PrinterMath.Measurement.Tests;

[Trait("Evidence", "Published")]
public sealed class ConformityReferenceTests
{
    // JCGM 106:2012, 7.4, two-sided tolerance; value 0.08, u 0.015, limits ±0.10: p = 0.908789 (SciPy 1.10.1, norm.cdf, six digits).
    [Fact]
    public void Probability_of_conformity_between_two_limits() =>
        Assert.Equal(0.908789, Tolerance.Around(0.0, 0.10).Judge(Measured.Of(0.08, 0.015)).ProbabilityOfConformity, 5e-7);

    // JCGM 106:2012, table 1 (from memory): p_c against ỹ = (T_U − y)/u for one limit.
    [Theory]
    [InlineData(0.80, 0.84)]
    [InlineData(0.90, 1.28)]
    [InlineData(0.95, 1.64)]
    [InlineData(0.99, 2.33)]
    [InlineData(0.999, 3.09)]
    public void Probability_of_conformity_with_one_limit(double probability, double reduced) =>
        Assert.Equal(probability, Tolerance.AtMost(reduced).Judge(Measured.Of(0.0, 1.0)).ProbabilityOfConformity, 2e-3);

    // Global consumer's risk, draft NCSLI RP-19: items in tolerance with probability 0.95,
    // measurement uncertainty a quarter of the items' spread: 0.87100925 %; in tolerance with 0.80: 2.85583037 %.
    [Theory]
    [InlineData(0.95, 0.0087100925)]
    [InlineData(0.80, 0.0285583037)]
    public void Consumers_risk(double inTolerance, double risk)
    {
        double limit = Normal.InvCDF(0, 1, (1 + inTolerance) / 2);
        Assert.Equal(risk, ConformityRisk.FalseAcceptance(0, 1, 0.25, -limit, limit), 1e-6);
    }

    // The two risks and the two ways of being right share out all items: P(accepted) = P(good) − FalseRejection + FalseAcceptance, and
    // P(accepted) is normal with variance 1 + 0.25².
    [Fact]
    public void Risks_add_up()
    {
        double good = Normal.CDF(0, 1, 1.5) - Normal.CDF(0, 1, -1.2);
        double spread = Math.Sqrt(1 + (0.25 * 0.25));
        double accepted = Normal.CDF(0, spread, 1.4) - Normal.CDF(0, spread, -1.1);
        double sum = good - ConformityRisk.FalseRejection(0, 1, 0.25, -1.2, 1.5, 0.1) + ConformityRisk.FalseAcceptance(0, 1, 0.25, -1.2, 1.5, 0.1);
        Assert.Equal(accepted, sum, 1e-12);
    }

    // JCGM 106:2012, 8.3.2 guarded acceptance: one limit, w = 1.64 u for 5 %: the quantile is 1.6449 (standard normal table).
    [Fact]
    public void Guard_band_at_five_percent() =>
        Assert.Equal(1.6449, Tolerance.AtMost(Length.FromMeters(1)).Judge(Measured.Of(Length.FromMeters(0), Length.FromMeters(1))).GuardBand.Meters, 5e-5);
}
