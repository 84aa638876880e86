using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class BeltComparisonTests
{
    private static readonly Measured<LinearDensity> Density = Measured.Of(LinearDensity.FromGramsPerMeter(8.4), LinearDensity.FromGramsPerMeter(0.4));

    private static HeardSpan Belt(string name, double hertz, double millimeters = 242) => new(
        name,
        new BeltSpan(Measured.Of(Length.FromMillimeters(millimeters), Length.FromMillimeters(0.3)), Density),
        Measured.Of(Frequency.FromHertz(hertz), Frequency.FromHertz(0.2)));

    [Fact]
    public void A_shared_density_cancels()
    {
        BeltComparison pair = BeltComparison.Of(Belt("A", 110), Belt("B", 108));
        Assert.True(pair.FirstTension.Value.RelativeStandardUncertainty > 0.045);
        // 2·u(f)/f, 2·u(L)/L and the ends of both spans remain: √2·√(0.36² + 0.25² + 0.4²) % or so.
        Assert.InRange(pair.RelativeDifference.Result.SiStandardUncertainty, 0.003, 0.012);
        Assert.Equal(2 * ((110.0 * 110) - (108 * 108)) / ((110.0 * 110) + (108 * 108)), pair.RelativeDifference.Result.SiValue, 1e-3);
    }

    [Fact]
    public void Exchanging_the_belts_changes_the_sign()
    {
        BeltComparison ab = BeltComparison.Of(Belt("A", 110), Belt("B", 104, 250));
        BeltComparison ba = BeltComparison.Of(Belt("B", 104, 250), Belt("A", 110));
        Assert.Equal(ab.Difference.Result.SiValue, -ba.Difference.Result.SiValue, 1e-12);
        Assert.Equal(ab.Difference.Result.SiStandardUncertainty, ba.Difference.Result.SiStandardUncertainty, 1e-12);
        Assert.Equal(ab.Turn.Name, ba.Turn.Name);
    }

    [Theory]
    [InlineData(110, 110, Conclusion.Within)]
    [InlineData(110, 100, Conclusion.Outside)]
    [InlineData(110, 107.4, Conclusion.Undecided)]
    public void Verdict_on_equality(double a, double b, Conclusion expected) =>
        Assert.Equal(expected, BeltComparison.Of(Belt("A", a), Belt("B", b), new BeltComparisonOptions { LargestRelativeDifference = 0.05 }).Verdict?.Conclusion);

    [Fact]
    public void The_slacker_belt_is_brought_up_to_the_other()
    {
        BeltComparison pair = BeltComparison.Of(Belt("A", 110), Belt("B", 100));
        Assert.Equal("B", pair.Turn.Name);
        Assert.True(pair.Turn.IsNeeded);
        Assert.False(pair.FirstChange.IsNeeded);
        Assert.Equal(110, pair.Turn.TargetFrequency.SiValue, 0.05);
        Assert.Null(pair.Verdict);
    }

    [Fact]
    public void A_target_moves_both()
    {
        BeltComparison pair = BeltComparison.Of(Belt("A", 120), Belt("B", 100), new BeltComparisonOptions { Target = Force.FromNewtons(24) });
        Assert.True(pair.FirstChange.Change.SiValue < 0);
        Assert.True(pair.SecondChange.Change.SiValue > 0);
        Assert.StartsWith("slacken belt A", pair.FirstChange.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_belts_cannot_have_one_name() =>
        Assert.Throws<ArgumentException>(() => BeltComparison.Of(Belt("A", 110), Belt("A", 100)));
}
