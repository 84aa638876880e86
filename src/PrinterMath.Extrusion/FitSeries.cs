using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Extrusion;

/// <summary>Two mating pieces printed at one flow after another, each answering whether they fit: which flow to try next, when to stop, and where half would fit.</summary>
/// <remarks>
/// <para>Model: more flow makes the fit tighter, P(fits) = Φ((µ − x)/σ) at flow x. Prior: µ uniform over the bracket and a quarter of it to either side; ln σ from a
/// hundredth to half of the bracket with a density ∝ σ^¼, between "its order of magnitude is unknown" and "its size is unknown", chosen among four powers from 0 to 1 for
/// intervals that hold in simulation. The posterior is summed on a grid, so answers that separate cleanly, where a maximum-likelihood fit has no finite answer,
/// need no special care. Next flow: the one on the machine's step that leaves the smallest expected variance of µ.</para>
/// <para>Source: probit model, Finney 1971, Probit Analysis, 3rd ed. (from memory); choice of the next trial, Kontsevich, Tyler 1999, Vision Research 39, 2729 to 2737 (from
/// memory; they use entropy where this uses variance).</para>
/// <para>Immutable: each answer gives a new series, and the order of answers does not matter to the estimate. Flow is set by wall or mass, see
/// <see cref="FlowCorrection"/>; the fit is compared with it by <see cref="CompareWith"/> and never sets it alone.</para>
/// <para>Caution: let the pieces cool before you take them off and join them by hand without force; hot end and bed burn, and fumes need ventilation.</para>
/// </remarks>
/// <example><code>
/// FitSeries series = FitSeries.Between(0.90, 1.00);
/// while (series.State == FitSeriesState.Running) { series = series.With(series.NextFlow, AskTheBench(series.NextFlow)); }
/// if (series.TryGetEstimate(out FitEstimate? estimate)) { Console.WriteLine(estimate); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FitSeries
{
    private const double LargestFlow = 5;
    private readonly FitGrid _grid;
    private readonly FitSeriesOptions _options;
    private readonly double[] _weights;
    private readonly double _scale;
    private readonly FitTrial[] _trials;

    private FitSeries(FitGrid grid, FitSeriesOptions options, double lower, double upper, double[] weights, double scale, FitTrial[] trials)
    {
        _grid = grid;
        _options = options;
        _weights = weights;
        _scale = scale;
        _trials = trials;
        Lower = lower;
        Upper = upper;
        Trials = Array.AsReadOnly(trials);
    }

    /// <summary>Lower end of the bracket, a ratio.</summary>
    public double Lower { get; }

    /// <summary>Upper end of the bracket, a ratio.</summary>
    public double Upper { get; }

    /// <summary>The trials so far, in order.</summary>
    public IReadOnlyList<FitTrial> Trials { get; }

    /// <summary>Whether to go on.</summary>
    public FitSeriesState State
    {
        get
        {
            FitPosterior posterior = Posterior;
            return posterior.OutsideProbability(Lower, Upper) >= FitPosterior.Coverage ? FitSeriesState.BracketMissed
                : HasBothAnswers && posterior.HalfWidth <= _options.WantedHalfWidth ? FitSeriesState.WidthReached
                : _trials.Length >= _options.MaximumTrials ? FitSeriesState.TrialsUsedUp
                : FitSeriesState.Running;
        }
    }

    /// <summary>The flow to print next, a ratio: a multiple of the flow step within the bracket. It stays available after the series has stopped.</summary>
    public double NextFlow => _grid.Flow(Posterior.BestCandidate());

    /// <summary>What was noticed, see <see cref="ExtrusionFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => new ReadOnlyCollection<Finding>([.. FitChecks.Find(_trials, _grid, State == FitSeriesState.BracketMissed)]);

    /// <summary>The 50 % flow with its interval.</summary>
    /// <exception cref="IndeterminateException">No trials, all alike in their answer, or the order of answers reversed.</exception>
    public FitEstimate Estimate =>
        FitChecks.Blocking(_trials, _grid) is { } finding ? throw new IndeterminateException(finding) : Posterior.Estimate();

    private double Margin => (Upper - Lower) / 4;

    private FitPosterior Posterior => new(_grid, _weights, _scale);

    private bool HasBothAnswers =>
        Array.Exists(_trials, trial => trial.Outcome == FitOutcome.Fits) && Array.Exists(_trials, trial => trial.Outcome == FitOutcome.DoesNotFit);

    /// <summary>An empty series in a bracket.</summary>
    /// <param name="lower">Lowest flow to try, a ratio greater than zero; 0.90 is common practice.</param>
    /// <param name="upper">Highest flow to try, a ratio above the lower one and at most 5; 1.00 is common practice.</param>
    /// <param name="options">Step and stop rule; null for the defaults.</param>
    /// <returns>The series.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The bracket or an option is out of range; flows are ratios, not per cent.</exception>
    public static FitSeries Between(double lower, double upper, FitSeriesOptions? options = null)
    {
        options ??= new FitSeriesOptions();
        Guard.StrictlyBetween(lower, 0, LargestFlow);
        if (!(upper > lower && upper <= LargestFlow))
        {
            throw Guard.Out(nameof(upper), upper, string.Create(CultureInfo.InvariantCulture, $"above lower, {lower}, and at most {LargestFlow}"));
        }

        Guard.Positive(options.WantedHalfWidth);
        Guard.AtLeast(options.MaximumTrials, 2);
        double bracket = upper - lower;
        Guard.Between(Guard.Positive(options.FlowStep), bracket / 1000, bracket / 2 * (1 + 1e-9));
        var grid = new FitGrid(lower, upper, options.FlowStep);
        return new FitSeries(grid, options, lower, upper, grid.Prior(), 1, []);
    }

    /// <summary>The series with one more trial.</summary>
    /// <param name="flow">Flow both pieces were printed at, a ratio; within the bracket or a quarter of it outside.</param>
    /// <param name="outcome">Whether they fitted.</param>
    /// <returns>A new series; this one stays as it is.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is too far from the bracket, or the answer is not one of those named.</exception>
    public FitSeries With(double flow, FitOutcome outcome)
    {
        Guard.Between(flow, Lower - Margin, Upper + Margin);
        return With([FitTrial.At(flow, outcome)]);
    }

    /// <summary>The series with trials that were recorded.</summary>
    /// <param name="trials">The trials, in any order; flows within the bracket or a quarter of it outside.</param>
    /// <returns>A new series; this one stays as it is.</returns>
    /// <example><code>FitSeries series = FitSeries.Between(0.90, 1.00).With([FitTrial.At(0.94, FitOutcome.Fits), FitTrial.At(0.97, FitOutcome.DoesNotFit)]);</code></example>
    /// <exception cref="ArgumentOutOfRangeException">A flow is too far from the bracket.</exception>
    public FitSeries With(IReadOnlyList<FitTrial> trials)
    {
        double[] weights = [.. _weights];
        double scale = _scale;
        for (int i = 0; i < Guard.NotNull(trials).Count; i++)
        {
            double flow = Guard.Between(trials[i].Flow, Lower - Margin, Upper + Margin, string.Create(CultureInfo.InvariantCulture, $"trials[{i}].Flow"));
            scale = 1 / _grid.Update(weights, scale, flow, trials[i].Outcome == FitOutcome.Fits, weights);
        }

        return new FitSeries(_grid, _options, Lower, Upper, weights, scale, [.. _trials, .. trials]);
    }

    /// <summary>The 50 % flow with its interval, if the answers hold it.</summary>
    /// <param name="estimate">The estimate, or null.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetEstimate([System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out FitEstimate? estimate)
    {
        estimate = FitChecks.Blocking(_trials, _grid) is null ? Posterior.Estimate() : null;
        return estimate is not null;
    }

    /// <summary>About how many more trials bring half the width of the 95 % interval down to a wanted value.</summary>
    /// <param name="halfWidth">Wanted half width, a ratio greater than zero.</param>
    /// <param name="trials">The number, zero when it is reached already or there is no answer.</param>
    /// <returns>False when the flow step is too coarse for it, or the answers hold no estimate yet.</returns>
    /// <remarks>
    /// Halvings until the standard uncertainty is down to σ, then the information (2/π)/σ² of each trial near µ; with σ as known so far, so a
    /// plan, not a promise.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The half width is not positive.</exception>
    public bool TryGetTrialsStillNeeded(double halfWidth, out int trials)
    {
        Guard.Positive(halfWidth);
        trials = 0;
        return TryGetEstimate(out FitEstimate? estimate) && FitPlan.TryGetTrials(estimate, halfWidth, _options.FlowStep, out trials);
    }

    /// <summary>Compares the flow that the fit asks for with that of a measured wall.</summary>
    /// <param name="flowFromWall">Flow from wall or mass, see <see cref="FlowCorrection.NewFlow"/>.</param>
    /// <param name="limit">Limits of fit minus wall; null for no verdict.</param>
    /// <returns>The comparison; a conflict is a finding.</returns>
    /// <exception cref="IndeterminateException">The answers hold no estimate.</exception>
    /// <exception cref="InvalidOperationException">The flow of the wall was never measured.</exception>
    public FitComparison CompareWith(Measured<double> flowFromWall, Tolerance<double>? limit = null) =>
        FitComparison.Of(Estimate.Flow, flowFromWall, limit);

    /// <summary>Invariant text.</summary>
    /// <returns>Number of trials and state, and the estimate if there is one.</returns>
    public override string ToString() =>
        $"{_trials.Length} trials, {State}{(TryGetEstimate(out FitEstimate? estimate) ? $", {estimate}" : string.Empty)}";
}
