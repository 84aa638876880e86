using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion.Tests;

public sealed class FeedCalibrationTests
{
    private static readonly Length Tenth = Length.FromMillimeters(0.1);
    private static readonly FeedCalibrationOptions Ruler = new() { Resolution = Tenth, RulerUncertainty = Length.FromMillimeters(0.2) };

    // Mean 97.3 of 100, s = 0.2: u² = 0.2²/4 + 0.1²/12 + 0.2² (mm²).
    [Fact]
    public void Scatter_step_and_ruler_add_up()
    {
        FeedCalibration feed = FeedCalibration.Fit(Trials(97.1, 97.3, 97.3, 97.5), Ruler);
        double scatter = Math.Sqrt(0.08 / 3) / 2;
        Assert.Equal(-0.027, feed.FeedError.Result.SiValue, 1e-12);
        Assert.Equal(Math.Sqrt((scatter * scatter) + (0.01 / 12) + 0.04) / 100, feed.FeedError.Result.SiStandardUncertainty, 1e-12);
        Assert.Equal(415 / 0.973, feed.Rescale(ReciprocalLength.FromInverseMillimeters(415)).Result.Value.InverseMillimeters, 1e-9);
        Assert.Equal(10 / 0.973, feed.Rescale(Angle.FromDegrees(10)).Result.Value.Degrees, 1e-9);
        Assert.Equal(feed.FeedError.Result.SiStandardUncertainty / 0.973 / 0.973, feed.Correction.Result.SiStandardUncertainty, 1e-12);
        Assert.Equal("ruler", feed.FeedError.Largest.Input.Name);
        Assert.Empty(feed.Findings);
        Assert.Null(feed.Verdict);
    }

    [Fact]
    public void Trials_all_alike_ask_for_the_resolution()
    {
        FeedCalibration mute = FeedCalibration.Fit(Trials(97.3, 97.3, 97.3));
        Assert.Equal(ExtrusionFindings.FeedResolutionMissing, Assert.Throws<IndeterminateException>(() => mute.Correction).Finding!.Code);
        Assert.False(mute.TryGetTrialsFor(0.001, out _));
        Assert.Contains("state the step", mute.ToString(), StringComparison.Ordinal);

        FeedCalibration stated = FeedCalibration.Fit(Trials(97.3, 97.3, 97.3), new FeedCalibrationOptions { Resolution = Tenth });
        Assert.Equal(0.1 / Math.Sqrt(12) / 100, stated.FeedError.Result.SiStandardUncertainty, 1e-15);
    }

    [Fact]
    public void Without_a_ruler_it_says_what_is_not_counted() =>
        Assert.Equal(ExtrusionFindings.FeedRulerNotStated, Assert.Single(FeedCalibration.Fit(Trials(97, 98)).Findings).Code);

    [Fact]
    public void Verdicts()
    {
        FeedCalibrationOptions options = Ruler with { Limit = Tolerance.Around(0.0, 0.01) };
        Assert.Equal(Conclusion.Outside, FeedCalibration.Fit(Trials(97.1, 97.3, 97.3, 97.5), options).Verdict!.Conclusion);
        Assert.Equal(Conclusion.Within, FeedCalibration.Fit(Trials(100.1, 99.9, 100.2, 100.0), options).Verdict!.Conclusion);
        Assert.Equal(Conclusion.Undecided, FeedCalibration.Fit(Trials(99.0, 99.2), options).Verdict!.Conclusion);
    }

    [Fact]
    public void Says_how_many_trials_a_wanted_uncertainty_takes()
    {
        FeedCalibration feed = FeedCalibration.Fit(Trials(97.1, 97.3, 97.3, 97.5), new FeedCalibrationOptions { RulerUncertainty = Length.FromMillimeters(0.03) });

        // s = 0.1633 mm: n = 0.02667/(0.05² − 0.03²) = 16.7.
        Assert.True(feed.TryGetTrialsFor(0.0005, out int trials));
        Assert.Equal(17, trials);
        Assert.False(feed.TryGetTrialsFor(0.0003, out int none));
        Assert.Equal(0, none);
    }

    [Fact]
    public void Drift_outlier_and_offset_are_found()
    {
        Assert.Contains(FeedCalibration.Fit(Trials(99.5, 99.1, 98.6, 98.2, 97.6, 97.2), Ruler).Findings, f => f.Code == ExtrusionFindings.FeedDrift);
        FeedCalibration apart = FeedCalibration.Fit(Trials(99.5, 99.6, 99.4, 95.1, 99.5, 99.6, 99.5), Ruler);
        Assert.Equal(4, Assert.Single(apart.Findings, f => f.Code == ExtrusionFindings.FeedOutlier).Numbers[0].Value);
        FeedTrial[] play = [Trial(50, 48.1), Trial(100, 98.0), Trial(150, 147.9), Trial(200, 198.1), Trial(50, 48.0), Trial(200, 198.0)];
        Assert.Equal(-0.002, Assert.Single(FeedCalibration.Fit(play, Ruler).Findings, f => f.Code == ExtrusionFindings.FeedOffset).Numbers[0].Value, 2e-4);
    }

    // Each test may raise a false alarm in 1 % of the cases; two apply here. 12 of 400 is beyond 99.9 % of a binomial with 2 % only from 19 on.
    [Fact]
    public void Good_series_stay_silent()
    {
        var workshop = new Workshop(11);
        int alarms = 0;
        for (int i = 0; i < 400; i++)
        {
            FeedTrial[] trials = [.. Enumerable.Range(0, 6).Select(_ => Trial(100, 97 + workshop.Gauss(0.3)))];
            alarms += FeedCalibration.Fit(trials, Ruler with { Resolution = null }).Findings.Count > 0 ? 1 : 0;
        }

        Assert.InRange(alarms, 0, 18);
    }

    [Fact]
    public void A_wrong_unit_is_noticed() =>
        Assert.Contains(
            FeedCalibration.Fit([Trial(100, 3.83), Trial(100, 3.84)], Ruler).Findings, f => f.Code == ExtrusionFindings.FeedImplausible);

    [Fact]
    public void Refuses_what_is_no_trial()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Trial(0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Trial(100, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => FeedCalibration.Fit([Trial(100, 97)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => FeedCalibration.Fit([Trial(100, 97), default]));
        Assert.Throws<ArgumentOutOfRangeException>(() => FeedCalibration.Fit(Trials(97, 98), new FeedCalibrationOptions { Resolution = Length.Zero }));
        Assert.Throws<ArgumentNullException>(() => FeedCalibration.Fit(null!));
    }

    private static FeedTrial Trial(double commanded, double measured) =>
        FeedTrial.Of(Length.FromMillimeters(commanded), Length.FromMillimeters(measured));

    private static FeedTrial[] Trials(params double[] measured) => [.. measured.Select(m => Trial(100, m))];
}
