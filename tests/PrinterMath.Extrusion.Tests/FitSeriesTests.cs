using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class FitSeriesTests
{
    private const FitOutcome Fits = FitOutcome.Fits, Tight = FitOutcome.DoesNotFit;

    [Fact]
    public void The_first_flow_halves_the_bracket() => Assert.Equal(0.95, FitSeries.Between(0.90, 1.00).NextFlow, 1e-12);

    [Fact]
    public void Answers_steer_the_next_flow()
    {
        FitSeries start = FitSeries.Between(0.90, 1.00);
        Assert.True(start.With(0.95, Fits).NextFlow > 0.95);
        Assert.True(start.With(0.95, Tight).NextFlow < 0.95);
        Assert.Empty(start.Trials);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.005)]
    [InlineData(0.0025)]
    public void The_next_flow_is_on_the_step(double step)
    {
        FitSeries series = FitSeries.Between(0.90, 1.00, new FitSeriesOptions { FlowStep = step });
        for (int i = 0; i < 8; i++)
        {
            double steps = series.NextFlow / step;
            Assert.Equal(Math.Round(steps), steps, 1e-8);
            Assert.InRange(series.NextFlow, 0.90, 1.00);
            series = series.With(series.NextFlow, series.NextFlow < 0.963 ? Fits : Tight);
        }
    }

    [Fact]
    public void Cleanly_separated_answers_have_a_finite_estimate()
    {
        FitSeries series = Answer(FitSeries.Between(0.90, 1.00), flow => flow < 0.957);
        Assert.Equal(FitSeriesState.WidthReached, series.State);
        Assert.InRange(series.Estimate.Flow.SiValue, 0.953, 0.961);
        Assert.InRange(0.957, series.Estimate.Lower, series.Estimate.Upper);
        Assert.Empty(series.Findings);
    }

    [Fact]
    public void Mirrored_answers_give_the_mirrored_estimate()
    {
        FitEstimate one = FitSeries.Between(0.90, 1.00).With(0.94, Fits).With(0.97, Tight).With(0.95, Fits).Estimate;
        FitEstimate other = FitSeries.Between(0.90, 1.00).With(0.96, Tight).With(0.93, Fits).With(0.95, Tight).Estimate;
        Assert.Equal(1.90 - one.Flow.SiValue, other.Flow.SiValue, 1e-10);
        Assert.Equal(1.90 - one.Lower, other.Upper, 1e-10);
    }

    [Fact]
    public void Order_of_answers_does_not_matter()
    {
        (double Flow, FitOutcome Outcome)[] answers = [(0.95, Fits), (0.97, Tight), (0.96, Tight), (0.955, Fits), (0.96, Fits)];
        FitEstimate one = With(answers).Estimate, other = With([.. Enumerable.Reverse(answers)]).Estimate;
        Assert.Equal(one.Flow.SiValue, other.Flow.SiValue, 1e-12);
        Assert.Equal(one.Lower, other.Lower, 1e-12);
    }

    [Fact]
    public void Trials_handed_over_together_are_trials_handed_over_one_by_one()
    {
        FitTrial[] trials = [FitTrial.At(0.95, Fits), FitTrial.At(0.97, Tight), FitTrial.At(0.9613, Tight), FitTrial.At(0.96, Fits)];
        FitSeries together = FitSeries.Between(0.90, 1.00).With(trials);
        FitSeries singly = trials.Aggregate(FitSeries.Between(0.90, 1.00), (series, trial) => series.With(trial.Flow, trial.Outcome));
        Assert.Equal(trials, together.Trials);
        Assert.Equal(singly.Estimate.Flow.SiValue, together.Estimate.Flow.SiValue);
        Assert.Equal(singly.Estimate.Upper, together.Estimate.Upper);
        Assert.Empty(FitSeries.Between(0.90, 1.00).With([]).Trials);
    }

    [Fact]
    public void A_trial_far_from_the_bracket_is_named()
    {
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(
            () => FitSeries.Between(0.90, 1.00).With([FitTrial.At(0.95, Fits), FitTrial.At(95, Tight)]));
        Assert.Equal("trials[1].Flow", refused.ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => FitTrial.At(0, Fits));
        Assert.Throws<ArgumentOutOfRangeException>(() => FitTrial.At(0.95, (FitOutcome)7));
    }

    [Fact]
    public void A_looser_answer_moves_the_estimate_up()
    {
        FitSeries common = FitSeries.Between(0.90, 1.00).With(0.94, Fits).With(0.97, Tight);
        Assert.True(common.With(0.955, Fits).Estimate.Flow.SiValue > common.With(0.955, Tight).Estimate.Flow.SiValue);
    }

    [Fact]
    public void All_fit()
    {
        FitSeries series = Answer(FitSeries.Between(0.90, 1.00), _ => true);
        Assert.Equal(FitSeriesState.BracketMissed, series.State);
        Assert.Equal(ExtrusionFindings.FitAllFit, Assert.Throws<IndeterminateException>(() => series.Estimate).Finding!.Code);
        Assert.Contains(series.Findings, f => f.Code == ExtrusionFindings.FitBracketMissed);
        Assert.False(series.TryGetEstimate(out _));
        Assert.False(series.TryGetTrialsStillNeeded(0.01, out _));
        Assert.Throws<IndeterminateException>(() => series.CompareWith(Measured.Of(0.97, 0.01)));
    }

    [Fact]
    public void None_fits()
    {
        FitSeries series = Answer(FitSeries.Between(0.90, 1.00), _ => false);
        Assert.Equal(FitSeriesState.BracketMissed, series.State);
        Assert.Equal(ExtrusionFindings.FitNoneFits, series.Findings[0].Code);
    }

    [Fact]
    public void Nothing_tried() =>
        Assert.Equal(ExtrusionFindings.FitNoTrials, Assert.Throws<IndeterminateException>(() => FitSeries.Between(0.90, 1.00).Estimate).Finding!.Code);

    [Fact]
    public void Reversed_answers_hold_no_estimate()
    {
        FitSeries series = With([(0.91, Tight), (0.92, Tight), (0.93, Tight), (0.97, Fits), (0.98, Fits), (0.99, Fits)]);
        Assert.Equal(ExtrusionFindings.FitOrderReversed, Assert.Single(series.Findings).Code);
        Assert.False(series.TryGetEstimate(out _));
    }

    [Fact]
    public void Answers_that_contradict_the_order_are_said_to()
    {
        FitSeries series = With([(0.91, Fits), (0.93, Tight), (0.95, Fits), (0.97, Fits), (0.98, Tight), (0.99, Tight)]);
        Assert.Equal(ExtrusionFindings.FitOrderContradicted, Assert.Single(series.Findings).Code);
        Assert.True(series.TryGetEstimate(out FitEstimate? wide));
        Assert.True(wide.Upper - wide.Lower > 0.03);
    }

    [Fact]
    public void More_trials_are_needed_for_a_narrower_interval()
    {
        FitSeries series = With([(0.94, Fits), (0.96, Fits), (0.965, Tight), (0.96, Tight), (0.97, Tight), (0.955, Fits)]);
        Assert.True(series.TryGetTrialsStillNeeded(0.004, out int some));
        Assert.True(series.TryGetTrialsStillNeeded(0.002, out int many));
        Assert.True(many > some && some > 0);
        Assert.True(series.TryGetTrialsStillNeeded(0.05, out int none));
        Assert.Equal(0, none);
    }

    [Fact]
    public void A_step_too_coarse_never_reaches_a_narrow_interval()
    {
        FitSeries series = FitSeries.Between(0.90, 1.00, new FitSeriesOptions { FlowStep = 0.02 });
        for (int i = 0; i < 30; i++)
        {
            series = series.With(0.94, Fits).With(0.96, Tight);
        }

        Assert.False(series.TryGetTrialsStillNeeded(0.002, out int trials));
        Assert.Equal(0, trials);
    }

    [Fact]
    public void A_fit_that_contradicts_the_wall_points_elsewhere_than_flow()
    {
        FitSeries series = Answer(FitSeries.Between(0.90, 1.00), flow => flow < 0.932);
        FitComparison conflict = series.CompareWith(Measured.Of(0.98, 0.004), Tolerance.Around(0.0, 0.02));
        Assert.Equal(ExtrusionFindings.FitConflictsWithWall, Assert.Single(conflict.Findings).Code);
        Assert.True(conflict.Difference.Result.SiValue < 0);
        Assert.Equal(Conclusion.Outside, conflict.Verdict!.Conclusion);
        Assert.Empty(series.CompareWith(Measured.Of(0.934, 0.004)).Findings);

        // Too tight at the right flow: faces lie 0.0814159265/(2·0.2) mm per unit of flow too far out.
        Bead bead = Bead.FromWidthAndHeight(Length.FromMillimeters(0.45), Length.FromMillimeters(0.2));
        Assert.Equal(-conflict.Difference.Result.SiValue * 0.0814159265 / 0.4, conflict.EquivalentOffset(bead).Value.Millimeters, 1e-9);
    }

    [Theory]
    [InlineData(90, 100)]
    [InlineData(1, 0.9)]
    [InlineData(0, 1)]
    [InlineData(0.9, double.NaN)]
    public void Refuses_brackets_that_are_no_ratios(double lower, double upper) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FitSeries.Between(lower, upper));

    [Fact]
    public void Refuses_flows_and_options_out_of_range()
    {
        FitSeries series = FitSeries.Between(0.90, 1.00);
        Assert.Throws<ArgumentOutOfRangeException>(() => series.With(95, Fits));
        Assert.Throws<ArgumentOutOfRangeException>(() => series.With(double.NaN, Fits));
        Assert.Throws<ArgumentOutOfRangeException>(() => series.With(0.95, (FitOutcome)7));
        Assert.Throws<ArgumentOutOfRangeException>(() => FitSeries.Between(0.90, 1.00, new FitSeriesOptions { FlowStep = 0.2 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => FitSeries.Between(0.90, 1.00, new FitSeriesOptions { MaximumTrials = 1 }));
    }

    private static FitSeries With((double Flow, FitOutcome Outcome)[] answers) =>
        answers.Aggregate(FitSeries.Between(0.90, 1.00), (series, answer) => series.With(answer.Flow, answer.Outcome));

    private static FitSeries Answer(FitSeries series, Func<double, bool> fits)
    {
        while (series.State == FitSeriesState.Running)
        {
            series = series.With(series.NextFlow, fits(series.NextFlow) ? Fits : Tight);
        }

        return series;
    }
}
