using PrinterMath.Measurement;
using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Tension.Tests;

public sealed class TensionerPairTests(ITestOutputHelper output)
{
    // The planted machine: T = T0 + G·n, f = √(T/µ)/(2L).
    private const double GainAA = 6;
    private const double GainAB = 1.5;
    private const double GainBA = 1.2;
    private const double GainBB = 5;
    private const double Density = 0.0084;
    private const double SpanLength = 0.25;
    private const double Noise = 0.2;

    private static readonly (double A, double B)[] Turns = [(0, 0), (0.5, 0), (0.5, 0.5)];

    [Fact]
    public void Exact_readings_give_back_the_planted_matrix()
    {
        TensionerPair pair = Learn(Span(SpanLength, Density, exact: true), Turns, 15, 13, () => 0);
        Assert.Empty(pair.Findings);
        double[] planted = [GainAA, GainAB, GainBA, GainBB];
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(planted[i], pair.Gains.Estimate<Force>(i).SiValue, 1e-9);
        }
    }

    // After the turns both belts must be at the target: the planted machine is turned by what the balance says, and the prediction must hold.
    [Fact]
    public void Balance_brings_both_to_the_target()
    {
        TensionerPair pair = Learn(Span(SpanLength, Density, exact: true), Turns, 15, 13, () => 0, new TensionerOptions { LargestAdjustment = 10 });
        PairBalance balance = pair.BalanceFromLast(Force.FromNewtons(24));
        double a = 15 + (GainAA * (0.5 + balance.TurnA.Now)) + (GainAB * (0.5 + balance.TurnB.Now));
        double b = 13 + (GainBA * (0.5 + balance.TurnA.Now)) + (GainBB * (0.5 + balance.TurnB.Now));
        Assert.Equal(24, a, 1e-9);
        Assert.Equal(24, b, 1e-9);
        Assert.Equal(0, balance.RemainderA.Result.SiValue, 1e-9);
        Assert.Equal(0, balance.RemainderB.Result.SiValue, 1e-9);
        Assert.Equal(BeltEquality.Different, balance.Equality);
        Assert.Equal(Conclusion.Within, balance.PredictedVerdict.Conclusion);
        Assert.Equal(TurnSense.Tighten, balance.TurnA.Sense);
    }

    // Bounded at half a turn both screws are shortened alike, and the remainder is what the planted machine then lacks.
    [Fact]
    public void A_bound_shortens_both_alike()
    {
        TensionerPair pair = Learn(Span(SpanLength, Density, exact: true), Turns, 15, 13, () => 0);
        PairBalance balance = pair.BalanceFromLast(Force.FromNewtons(34));
        Assert.Equal(0.5, Math.Max(balance.TurnA.Now, balance.TurnB.Now), 1e-12);
        Assert.Equal(balance.TurnA.Now / balance.TurnA.Turns.Result.SiValue, balance.TurnB.Now / balance.TurnB.Turns.Result.SiValue, 1e-12);
        Assert.True(balance.TurnA.IsBounded && balance.TurnB.IsBounded);
        double a = 15 + (GainAA * (0.5 + balance.TurnA.Now)) + (GainAB * (0.5 + balance.TurnB.Now));
        Assert.Equal(a - 34, balance.RemainderA.Result.SiValue, 1e-9);
    }

    [Fact]
    public void Without_coupling_each_belt_is_turned_by_itself()
    {
        BeltSpan span = Span(SpanLength, Density, exact: true);
        Tensioner Of(int strands) => Tensioner.FromStiffness(
            Measured.Exact(Length.FromMillimeters(0.5)), strands, Measured.Exact(Length.FromMillimeters(1200)), Length.FromMillimeters(6),
            Measured.Exact(ForcePerLength.FromNewtonsPerMillimeter(2000)));
        TensionerPair pair = TensionerPair.Uncoupled(span, span, Of(1), Of(2));
        PairBalance balance = pair.Balance(Heard(18, 0), Heard(22, 0), Force.FromNewtons(20));
        Assert.Equal(0.4, balance.TurnA.Turns.Result.SiValue, 1e-9);
        Assert.Equal(-0.2, balance.TurnB.Turns.Result.SiValue, 1e-9);
        Assert.Throws<InvalidOperationException>(() => pair.BalanceFromLast(Force.FromNewtons(20)));
        Assert.Throws<ArgumentOutOfRangeException>(() => pair.Balance(Heard(18, 0), Heard(22, 0), Force.Zero));
    }

    [Theory]
    [InlineData(0.5, 0.5, 1.0, 1.0)]
    [InlineData(0.5, 0, 1.0, 0)]
    public void Screws_turned_alike_determine_nothing(double a1, double b1, double a2, double b2)
    {
        TensionerPair pair = Learn(Span(SpanLength, Density, exact: true), [(0, 0), (a1, b1), (a2, b2)], 15, 13, () => 0);
        Assert.Equal(DriveFindings.PoorlyDetermined, Assert.Single(pair.Findings).Code);
        Assert.False(pair.IsDetermined);
        Assert.Throws<IndeterminateException>(() => pair.Gains);
        Assert.Throws<IndeterminateException>(() => pair.BalanceFromLast(Force.FromNewtons(20)));
    }

    [Fact]
    public void Turns_too_small_show_no_gain()
    {
        TensionerPair pair = Learn(Span(SpanLength, Density, exact: false), [(0, 0), (0.01, 0), (0.01, 0.01)], 15, 13, () => 0);
        Assert.Equal(DriveFindings.NoGain, Assert.Single(pair.Findings).Code);
        Assert.Throws<ArgumentException>(() => Learn(Span(SpanLength, Density, exact: false), [(0, 0), (1, 0)], 15, 13, () => 0));
    }

    // The fourth reading is off by 3 Hz, 15 of its standard uncertainties.
    [Fact]
    public void A_reading_off_the_plane_is_a_finding()
    {
        int call = 0;
        TensionerPair pair = Learn(
            Span(SpanLength, Density, exact: false), [(0, 0), (0.5, 0), (0.5, 0.5), (0, 0.5)], 15, 13, () => ++call == 7 ? 15 : 0);
        Assert.Equal(DriveFindings.ReadingsDisagree, Assert.Single(pair.Findings).Code);
        Assert.True(pair.IsDetermined);
    }

    // Readings with noise and a span error of their own: intervals of the gain AA and of belt A's remainder must hold what the planted machine does in 93 to 97 %, widened by
    // 3.29·√(0.95·0.05/n). Turns are made with 0.02 turns of error. Found for AA, AB, remainder: 288, 279, 281; 277, 291, 283; 282, 285, 284 of 300.
    [Theory]
    [InlineData(11, 300)]
    [InlineData(12, 300)]
    [InlineData(13, 300)]
    public void Gains_and_remainder_cover_the_truth(int seed, int cases)
    {
        var random = new Random(seed);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        int gain = 0;
        int coupling = 0;
        int remainder = 0;
        for (int i = 0; i < cases; i++)
        {
            BeltSpan span = Span(SpanLength + (0.0005 * Normal()), Density * (1 + (0.02 * Normal())), exact: false);
            TensionerPair pair = Learn(span, Turns, 15, 13, Normal);
            PairBalance balance = pair.BalanceFromLast(Force.FromNewtons(20));
            double a = 15 + (GainAA * (0.5 + balance.TurnA.Now + (0.02 * Normal()))) + (GainAB * (0.5 + balance.TurnB.Now + (0.02 * Normal())));
            gain += pair.Gains.Estimate<Force>(0).Interval().Contains(Force.FromNewtons(GainAA)) ? 1 : 0;
            coupling += pair.Gains.Estimate<Force>(1).Interval().Contains(Force.FromNewtons(GainAB)) ? 1 : 0;
            remainder += balance.RemainderA.Result.Interval().Contains(Force.FromNewtons(a - 20)) ? 1 : 0;
        }

        double spread = 3.29 * Math.Sqrt(0.95 * 0.05 / cases);
        output.WriteLine($"seed {seed}: gain AA {gain}, AB {coupling}, remainder {remainder} of {cases}");
        Assert.InRange(gain / (double)cases, 0.93 - spread, 0.97 + spread);
        Assert.InRange(coupling / (double)cases, 0.93 - spread, 0.97 + spread);
        Assert.InRange(remainder / (double)cases, 0.93 - spread, 0.97 + spread);
    }

    private static TensionerPair Learn(BeltSpan span, (double A, double B)[] turns, double a, double b, Func<double> normal, TensionerOptions? options = null) =>
        TensionerPair.FromReadings(span, span, [.. turns.Select(n => Read(n.A, n.B, a, b, normal))], options);

    private static PairReading Read(double turnsA, double turnsB, double a, double b, Func<double> normal) => new(
        Measured.Exact(turnsA),
        Measured.Exact(turnsB),
        Heard(a + (GainAA * turnsA) + (GainAB * turnsB), normal()),
        Heard(b + (GainBA * turnsA) + (GainBB * turnsB), normal()));

    private static Measured<Frequency> Heard(double tension, double normal) =>
        Measured.Of(Frequency.FromHertz((Math.Sqrt(tension / Density) / (2 * SpanLength)) + (Noise * normal)), Frequency.FromHertz(Noise));

    private static BeltSpan Span(double length, double density, bool exact) => new(
        exact ? Measured.Exact(Length.FromMeters(length)) : Measured.Of(Length.FromMeters(length), Length.FromMillimeters(0.5)),
        exact ? Measured.Exact(LinearDensity.FromKilogramsPerMeter(density)) : Measured.Of(LinearDensity.FromKilogramsPerMeter(density), LinearDensity.FromKilogramsPerMeter(0.02 * Density)),
        new BeltSpanOptions { Ends = SpanEnds.Pinned, Rigidity = Measured.Exact(default(FlexuralRigidity)) });
}
