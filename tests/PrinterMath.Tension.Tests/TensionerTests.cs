using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class TensionerTests
{
    // EA·P·N/L with EA 12 kN (2 kN/mm × 6 mm), P 0.5 mm, L 1.2 m: 5.0 N/turn at a belt end, 10.0 N/turn at a pulley.
    [Theory]
    [InlineData(1, 5.0)]
    [InlineData(2, 10.0)]
    public void Gain_by_hand(int strands, double newtons)
    {
        Tensioner tensioner = Known(strands);
        Assert.Equal(newtons, tensioner.GainPerTurn.SiValue, 1e-9);
        Assert.Equal((30 - 20) / newtons, tensioner.TurnsToward(Force.FromNewtons(30), Measured.Exact(Force.FromNewtons(20))).Result.SiValue, 1e-9);
        Assert.True(tensioner.TurnsToward(Force.FromNewtons(10), Measured.Exact(Force.FromNewtons(20))).Result.SiValue < 0);
    }

    // Planted gain 6 N/turn, reading noise 0.3 Hz each, a fresh span error each time; 95 % intervals must hold the gain in 93 to 97 % widened by the 99.9 % binomial
    // limits of 2000 cases (±1.6 %). The simulator is Mersenne's law.
    [Fact]
    public void Learned_gain_covers_the_truth()
    {
        var random = new Random(20);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        int held = 0;
        for (int i = 0; i < 2000; i++)
        {
            double length = 0.25 + (0.001 * Normal());
            double density = 0.0084 * (1 + (0.02 * Normal()));
            Measured<Frequency> Heard(double tension) => Measured.Of(
                Frequency.FromHertz((Math.Sqrt(tension / 0.0084) / 0.5) + (0.3 * Normal())), Frequency.FromHertz(0.3));
            var span = new BeltSpan(
                Measured.Of(Length.FromMeters(length), Length.FromMillimeters(1)),
                Measured.Of(LinearDensity.FromKilogramsPerMeter(density), LinearDensity.FromKilogramsPerMeter(0.0084 * 0.02)),
                new BeltSpanOptions { Ends = SpanEnds.Pinned, Rigidity = Measured.Exact(default(FlexuralRigidity)) });
            Measured<Force> gain = Tensioner.FromReadings(span, Heard(15), Heard(21), Measured.Exact(1.0)).GainPerTurn;
            held += gain.Interval().Contains(Force.FromNewtons(6)) ? 1 : 0;
        }

        Assert.InRange(held / 2000.0, 0.93 - 0.016, 0.97 + 0.016);
    }

    [Fact]
    public void Readings_that_show_no_tightening_hold_no_gain()
    {
        var span = new BeltSpan(Measured.Exact(Length.FromMeters(0.25)), Measured.Exact(LinearDensity.FromGramsPerMeter(8.4)));
        Measured<Frequency> heard = Measured.Of(Frequency.FromHertz(110), Frequency.FromHertz(1));
        Assert.Throws<IndeterminateException>(() => Tensioner.FromReadings(span, heard, heard, Measured.Exact(1.0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Tensioner.FromReadings(span, heard, heard, Measured.Exact(0.0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Known(3));
    }

    private static Tensioner Known(int strands) => Tensioner.FromStiffness(
        Measured.Exact(Length.FromMillimeters(0.5)), strands, Measured.Exact(Length.FromMillimeters(1200)), Length.FromMillimeters(6),
        Measured.Exact(ForcePerLength.FromNewtonsPerMillimeter(2000)));
}
