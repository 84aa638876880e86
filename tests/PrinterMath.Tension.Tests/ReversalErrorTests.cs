using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class ReversalErrorTests
{
    private static IReadOnlyList<Length> Micrometers(params double[] values) => [.. values.Select(v => Length.FromMicrometers(v))];

    // Target 1: means 10 and −20: B = 30; s↑² = 4 (8, 10, 12), s↓² = 1 (−21, −20, −19), n = 3; step 6 µm adds 36/6: u² = 4/3 + 1/3 + 6 = 7.6667.
    // Target 2: means 0 and −10: B = 10, one reading each, so s² is pooled: (2·4 + 2·1)/4 = 2.5, u² = 2·2.5 + 6 = 11. B̄ = 20, u² = (7.6667 + 11)/4.
    [Fact]
    public void By_hand()
    {
        ReversalError reversal = ReversalError.From(
            [
                new ReversalReadings(Length.FromMillimeters(50), Micrometers(8, 10, 12), Micrometers(-21, -20, -19)),
                new ReversalReadings(Length.FromMillimeters(150), Micrometers(0), Micrometers(-10)),
            ],
            Length.FromMicrometers(6));
        Assert.Equal(30e-6, reversal.Largest.SiValue, 1e-15);
        Assert.Equal(Math.Sqrt(23.0 / 3) * 1e-6, reversal.Largest.SiStandardUncertainty, 1e-15);
        Assert.Equal(50, reversal.LargestAt.Millimeters, 1e-12);
        Assert.Equal(20e-6, reversal.Mean.SiValue, 1e-15);
        Assert.Equal(Math.Sqrt((23.0 / 3) + 11) / 2 * 1e-6, reversal.Mean.SiStandardUncertainty, 1e-15);
        Assert.Equal(10e-6, reversal.AtTargets[1].SiValue, 1e-15);
        Assert.Equal(Math.Sqrt(11) * 1e-6, reversal.AtTargets[1].SiStandardUncertainty, 1e-15);
        Assert.Empty(reversal.Findings);
        Assert.Equal(Conclusion.Within, reversal.Judge(Length.FromMicrometers(50)).Conclusion);
        Assert.Equal(Conclusion.Outside, reversal.Judge(Length.FromMicrometers(20)).Conclusion);
        Assert.Equal(Conclusion.Undecided, reversal.Judge(Length.FromMicrometers(31)).Conclusion);
    }

    [Fact]
    public void Exchanging_the_directions_changes_the_signs_alone()
    {
        IReadOnlyList<Length> a = Micrometers(3, 5);
        IReadOnlyList<Length> b = Micrometers(-7, -8);
        ReversalError one = ReversalError.From([new ReversalReadings(Length.Zero, a, b)], Length.FromMicrometers(1));
        ReversalError other = ReversalError.From([new ReversalReadings(Length.Zero, b, a)], Length.FromMicrometers(1));
        Assert.Equal(one.Mean.SiValue, -other.Mean.SiValue, 1e-18);
        Assert.Equal(one.Largest, other.Largest);
    }

    [Fact]
    public void Single_runs_say_that_the_scatter_is_unknown()
    {
        ReversalError reversal = ReversalError.From([new ReversalReadings(Length.Zero, Micrometers(3), Micrometers(-7))], Length.FromMicrometers(6));
        Assert.Equal(DriveFindings.ScatterUnknown, Assert.Single(reversal.Findings).Code);
        Assert.Equal(Math.Sqrt(6) * 1e-6, reversal.Largest.SiStandardUncertainty, 1e-15);
    }

    [Fact]
    public void Bad_input()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ReversalReadings(Length.Zero, [], Micrometers(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ReversalError.From([], Length.FromMicrometers(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ReversalError.From([new ReversalReadings(Length.Zero, Micrometers(1), Micrometers(1))], Length.Zero));
    }
}
