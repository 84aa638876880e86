using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

public sealed class SequenceSearchTests
{
    private static readonly Mode Sharp = Known(50, 0.01, 0.05, 0.0001);

    // A mode known almost exactly: the more derivatives vanish, the less is left; ZVDD at the mode leaves next to nothing.
    [Fact]
    public void Without_an_acceptable_residual_the_least_is_taken()
    {
        SequenceChoice choice = SequenceSearch.For([Sharp]);
        Assert.Equal(SequenceFamily.ZVDD, choice.Pick.Family);
        Assert.Equal(choice.Candidates.Min(c => c.WorstResidual), choice.Pick.WorstResidual);
        Assert.Empty(choice.Findings);
        Assert.Equal(4 * 82, choice.Candidates.Count);
        Assert.Contains("328 sequences", choice.Reason, StringComparison.Ordinal);
    }

    // With 5 % good enough, ZV is enough for a mode known to 0.02 %: half a period, and nothing that meets the limit rounds the path less.
    [Fact]
    public void With_an_acceptable_residual_the_least_rounding_is_taken()
    {
        SequenceChoice choice = SequenceSearch.For([Sharp], new SequenceLimits { AcceptableResidual = 0.05 });
        Assert.Equal(SequenceFamily.ZV, choice.Pick.Family);
        Assert.InRange(choice.Pick.WorstResidual, 0, 0.05);
        Assert.DoesNotContain(choice.Candidates, c => c.WorstResidual <= 0.05 && c.VarianceSquareSeconds < choice.Pick.VarianceSquareSeconds);
    }

    // ± 15 % of frequency: ZV tolerates 3 % and ZVD 14 % either way at 5 %, EI 20 %.
    [Fact]
    public void An_uncertain_mode_asks_for_a_robust_sequence()
    {
        Mode vague = Known(50, 3.75, 0.01, 0.001);
        SequenceChoice choice = SequenceSearch.For([vague], new SequenceLimits { AcceptableResidual = 0.05 });
        Assert.Equal(SequenceFamily.EI, choice.Pick.Family);
    }

    [Fact]
    public void Limits_that_cannot_be_met_say_so()
    {
        SequenceChoice none = SequenceSearch.For([Sharp], new SequenceLimits { LongestDuration = Duration.FromMilliseconds(1) });
        Assert.False(none.TryGetPick(out _));
        Assert.Equal(SequenceFindings.AllTooLong, Assert.Throws<IndeterminateException>(() => none.Pick).Finding!.Code);

        SequenceChoice best = SequenceSearch.For(
            [Known(50, 5, 0.05, 0.01)],
            new SequenceLimits { LongestDuration = Duration.FromMilliseconds(12), AcceptableResidual = 0.02 });
        Assert.Equal(SequenceFindings.ResidualNotMet, Assert.Single(best.Findings).Code);
        Assert.True(best.Pick.Duration.Milliseconds <= 12);
        Assert.Throws<ArgumentException>(() => SequenceSearch.For([]));
    }

    // Two modes far apart: their convolution leaves nothing at either, and is among the candidates.
    [Fact]
    public void Two_modes_are_tried_each_with_its_own_sequence()
    {
        SequenceChoice choice = SequenceSearch.For([Sharp, Known(83, 0.01, 0.03, 0.0001)], new SequenceLimits { AcceptableResidual = 0.02 });
        SequenceCandidate both = choice.Candidates.Single(c => c.IsForEachMode && c.Family == SequenceFamily.ZV);
        Assert.InRange(both.WorstResidual, 0, 2e-3);
        Assert.InRange(choice.Pick.WorstResidual, 0, 0.02);
    }

    private static Mode Known(double hertz, double u, double zeta, double uZeta) =>
        Mode.FromValues(Measured.Of(Frequency.FromHertz(hertz), Frequency.FromHertz(u)), Measured.Of(zeta, uZeta), Measured.Exact(1.0));
}
