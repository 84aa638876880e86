using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class BeltSpanTests
{
    private static readonly Measured<Length> Free = Measured.Of(Length.FromMillimeters(242), Length.FromMillimeters(0.5));
    private static readonly Measured<LinearDensity> Density = Measured.Of(LinearDensity.FromGramsPerMeter(8.4), LinearDensity.FromGramsPerMeter(0.05));
    private static readonly Measured<Frequency> Heard = Measured.Of(Frequency.FromHertz(110), Frequency.FromHertz(0.3));

    [Fact]
    public void Unknown_ends_lie_between_pinned_and_clamped_and_widen_the_answer()
    {
        double Newtons(SpanEnds ends) => new BeltSpan(Free, Density, new BeltSpanOptions { Ends = ends }).TensionFor(Heard).Value.SiValue;
        Measured<Force> between = new BeltSpan(Free, Density).TensionFor(Heard).Value;
        Assert.InRange(between.SiValue, Newtons(SpanEnds.Clamped), Newtons(SpanEnds.Pinned));
        Assert.True(between.SiStandardUncertainty > new BeltSpan(Free, Density, new BeltSpanOptions { Ends = SpanEnds.Pinned }).TensionFor(Heard).Value.SiStandardUncertainty);
    }

    [Fact]
    public void Frequency_and_tension_agree()
    {
        var span = new BeltSpan(Free, Density);
        Measured<Force> tension = span.TensionFor(Heard).Value;
        // The mean of two frequencies and the mean of two tensions differ in second order of the end effect: below 1e-4.
        Assert.Equal(110, span.FrequencyAt(tension).Result.SiValue, 110 * 1e-4);
    }

    [Fact]
    public void A_frequency_below_the_rigidity_alone_has_no_tension()
    {
        var span = new BeltSpan(
            Measured.Of(Length.FromMillimeters(30), Length.FromMillimeters(0.5)),
            Density,
            new BeltSpanOptions { Rigidity = Measured.Exact(FlexuralRigidity.FromNewtonSquareMeters(2e-4)) });
        SpanTension tension = span.TensionFor(Measured.Of(Frequency.FromHertz(40), Frequency.FromHertz(0.5)));
        Assert.False(tension.TryGetValue(out _));
        Assert.Equal(TensionFindings.Slack, Assert.Throws<IndeterminateException>(() => tension.Value).Finding?.Code);
    }

    [Fact]
    public void A_length_in_the_wrong_unit_is_noticed()
    {
        var span = new BeltSpan(Measured.Of(Length.FromMeters(242), Length.FromMeters(0.5)), Density);
        Assert.Equal(TensionFindings.Implausible, Assert.Single(span.TensionFor(Heard).Findings).Code);
    }

    [Fact]
    public void A_short_slack_span_is_cautioned()
    {
        var span = new BeltSpan(
            Measured.Of(Length.FromMillimeters(40), Length.FromMillimeters(0.5)),
            Density,
            new BeltSpanOptions { Rigidity = Measured.Exact(FlexuralRigidity.FromNewtonSquareMeters(1e-4)), Ends = SpanEnds.Pinned });
        Assert.Equal(TensionFindings.StiffnessDominates, Assert.Single(span.TensionFor(Measured.Of(Frequency.FromHertz(220), Frequency.FromHertz(0.5))).Findings).Code);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-0.242)]
    public void Length_must_be_positive(double meters) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new BeltSpan(Measured<Length>.FromSi(meters, 0.001), Density));

    [Fact]
    public void Weighed_sample()
    {
        Measured<LinearDensity> density = LinearDensityOf.Sample(
            Measured.Of(Mass.FromGrams(8.4), Mass.FromGrams(0.03)), Measured.Of(Length.FromMeters(1), Length.FromMillimeters(4)));
        Assert.Equal(8.4e-3, density.SiValue, 1e-15);
        Assert.Equal(Math.Sqrt(Math.Pow(0.03 / 8.4, 2) + (0.004 * 0.004)), density.RelativeStandardUncertainty, 1e-12);
    }

    [Fact]
    public void Typical_density_is_per_width() =>
        Assert.Equal(
            LinearDensityOf.TypicalTwoMillimeterPitch(Length.FromMillimeters(9)).SiValue,
            1.5 * LinearDensityOf.TypicalTwoMillimeterPitch(Length.FromMillimeters(6)).SiValue,
            1e-15);
}
