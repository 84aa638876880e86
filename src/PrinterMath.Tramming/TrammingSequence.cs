using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>
/// Passes over one bed, with what was turned between them: how fast they converge, what each screw really does, the next turns with that knowledge, how many more passes it takes, and, where they
/// do not go where the turns should bring them, why. Heights are positive upwards.
/// </summary>
/// <remarks>
/// <para>z = s(x, y) + Σⱼ Aⱼ(x, y)·hⱼ, h = R·t + setting errors: s the bed's own shape (free at places read in two passes or more, else plane, twist and bow), Aⱼ the height there for a height of 1 at screw j of
/// a stiff plate, t the turns so far. R is learned by least squares with the prior of <see cref="TrammingSequenceOptions"/>; its posterior covariance goes into the next turns.</para>
/// <para>Causes are looked for in the residuals by F tests of nested linear models: Bonferroni over the places of a cause, Holm over causes, family-wise risk
/// <see cref="TrammingSequenceOptions.FamilyWiseRisk"/>. Where one is significant, that of the largest marginal likelihood is named, with effects of any length as likely beforehand for each cause: causes with more places,
/// more numbers or more certain effects gain nothing by that. A cause that another one explains away is named as undecided between the two (<see cref="SequenceDiagnosis.Rivals"/>).</para>
/// <para>Play, stated or found, makes a turn longer by what of the gap it first takes up (<see cref="ScrewTurn.PlayTakenUp"/>), by where earlier turns left the screw in it.</para>
/// <para>What cannot be seen: a move of a corner in the very interval in which its screw was turned far hides in the prior of the lead, and so does motion lost in a first turn. A drift at a steady pace is told from steps
/// only when there are passes enough, and only with times. A point is called moved only when read twice before and twice after.</para>
/// <para>Findings: <c>sequence.uncertainty.unknown</c>, <c>plane.collinear</c>, <c>sequence.response.none</c> (blocking), one for each diagnosis, <c>sequence.lead</c>, <c>sequence.backlash</c>,
/// <c>sequence.flex</c>, <c>sequence.loose</c>, <c>sequence.drift</c>, and <c>sequence.misfit</c>, <c>sequence.turns.none</c> (cautions), <c>sequence.one</c>, <c>sequence.times.none</c>,
/// <c>sequence.places.differ</c>, <c>sequence.noise</c> (notes).</para>
/// <para>Source: Draper, Smith 1998, Applied Regression Analysis, 3rd ed., 6.2 (extra sum of squares); Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., 14.8 (prior as data); Holm 1979, Scand. J. Stat. 6, 65;
/// Kass, Raftery 1995, J. Am. Stat. Assoc. 90, 773, 4.1 (marginal likelihood) (all from memory).</para>
/// <para>Caution: never turn a screw while the nozzle touches the bed; a hot bed and a hot nozzle burn; keep fingers out of the gap that closes.</para>
/// </remarks>
/// <example><code>
/// TrammingSequence passes = TrammingSequence.Of(supports, [first, second]);
/// foreach (SequenceDiagnosis diagnosis in passes.Diagnoses) { Console.WriteLine(diagnosis); }
/// foreach (ScrewTurn turn in passes.NextTurns) { Console.WriteLine(turn); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TrammingSequence
{
    private readonly TrammingPass[] _passes;
    private readonly Finding[] _findings;
    private readonly SequenceDiagnosis[] _diagnoses;
    private readonly ScrewResponse[] _responses;
    private readonly TrammingPlan? _plan;
    private readonly NextTurns? _next;
    private readonly LearnedResponse? _learned;
    private readonly Measured<double>? _factor;
    private readonly double _freedom;

    internal TrammingSequence(BedSupports supports, TrammingPass[] passes, Finding blocking)
    {
        Supports = supports;
        _passes = passes;
        _findings = [blocking];
        _diagnoses = [];
        _responses = [];
        Blocking = blocking;
    }

    internal TrammingSequence(
        BedSupports supports,
        TrammingPass[] passes,
        TrammingPlan plan,
        NextTurns next,
        LearnedResponse learned,
        ScrewResponse[] responses,
        SequenceDiagnosis[] diagnoses,
        Measured<double>? factor,
        double freedom,
        Finding[] findings)
    {
        Supports = supports;
        _passes = passes;
        _plan = plan;
        _next = next;
        _learned = learned;
        _responses = responses;
        _diagnoses = diagnoses;
        _factor = factor;
        _freedom = freedom;
        _findings = findings;
    }

    /// <summary>The screws.</summary>
    public BedSupports Supports { get; }

    /// <summary>The passes, in order.</summary>
    public IReadOnlyList<TrammingPass> Passes => Array.AsReadOnly(_passes);

    /// <summary>What was noticed.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Whether the readings fix planes and their uncertainty; when false, <see cref="Findings"/> say why.</summary>
    public bool IsDeterminate => Blocking is null;

    /// <summary>Why the passes do not go where the turns should bring them, the strongest cause first; empty when turns and probe noise explain them.</summary>
    /// <exception cref="IndeterminateException">The readings fix no plane or no uncertainty.</exception>
    public IReadOnlyList<SequenceDiagnosis> Diagnoses => IsDeterminate ? Array.AsReadOnly(_diagnoses) : throw Indeterminate();

    /// <summary>What each screw does, in the order of the screws.</summary>
    /// <exception cref="IndeterminateException">The readings fix no plane or no uncertainty.</exception>
    public IReadOnlyList<ScrewResponse> Responses => IsDeterminate ? Array.AsReadOnly(_responses) : throw Indeterminate();

    /// <summary>The plane of the last pass, with the uncertainty that the probe's noise gives it: the shape of the bed is not noise here.</summary>
    /// <exception cref="IndeterminateException">The readings fix no plane or no uncertainty.</exception>
    public PlaneFit Plane => _plan?.Plane ?? throw Indeterminate();

    /// <summary>
    /// Convergence factor κ: size of the tilt after a round over that before it, root mean square over rounds that began with a tilt beyond noise; 0 is perfect, 1 is no progress, more than 1 diverges.
    /// </summary>
    /// <remarks>κ² = Σ|eₚ₊₁|²/Σ|eₚ|², e the heights at the screws about their mean, each square less the noise's share. Where the tilt after is within noise the 95 % interval reaches zero.</remarks>
    /// <exception cref="IndeterminateException">There is one pass alone, or no round began with a tilt beyond noise.</exception>
    public Measured<double> ConvergenceFactor => TryGetConvergenceFactor(out Measured<double> factor)
        ? factor
        : throw (Blocking is null ? new IndeterminateException("No round of turning began with a tilt beyond the probe's noise; convergence has no meaning.") : Indeterminate());

    /// <summary>The next turns, by the learned response, in the order of the screws.</summary>
    /// <exception cref="IndeterminateException">The readings fix no plane or no uncertainty, or a screw does not move the bed.</exception>
    public IReadOnlyList<ScrewTurn> NextTurns => TryGetNextTurns(out IReadOnlyList<ScrewTurn> turns) ? turns : throw Indeterminate();

    /// <summary>Highest minus lowest height of the plane over the probed rectangle, expected after the next turns.</summary>
    /// <remarks>Probe noise, what is not known of the response, and the setting of the turns, about level; see <see cref="PredictedPlane.HeightSpread"/> for the distribution.</remarks>
    /// <exception cref="IndeterminateException">There are no next turns.</exception>
    public Measured<Length> PredictedSpread
    {
        get
        {
            NextTurns next = Next;
            SlopeCovariance probe = Plane.Solution.SlopeCovariance;
            SlopeCovariance moves = next.Slopes([.. next.Response.Zip(next.Setting, (r, s) => r + s)]);
            (double width, double depth) = Plane.ProbedExtent;
            return TiltSpread.OfLeveled(new SlopeCovariance(probe.X + moves.X, probe.Y + moves.Y, probe.Both + moves.Both), width, depth, _freedom);
        }
    }

    /// <summary>Heights of the bed at the screws after the next turns, above their mean or above the screw that is kept still: zero, with their covariance, in metres.</summary>
    /// <exception cref="IndeterminateException">There are no next turns.</exception>
    public JointEstimate PredictedHeights
    {
        get
        {
            NextTurns next = Next;
            ReadOnlySpan<AdjustingScrew> screws = Supports.ScrewSpan;
            return JointEstimate.FromSi(
                [.. screws.ToArray().Select(screw => screw.Name)], [.. screws.ToArray().Select(_ => "m")], new double[screws.Length], next.Left, _freedom);
        }
    }

    private Finding? Blocking { get; }

    private NextTurns Next => _next is { Blocking: null } next ? next : throw Indeterminate();

    /// <summary>Evaluates a sequence of passes.</summary>
    /// <param name="supports">The screws.</param>
    /// <param name="passes">The passes in order, at least one; nothing was turned before the first.</param>
    /// <param name="options">What is known beforehand; null for the defaults of <see cref="TrammingSequenceOptions"/>.</param>
    /// <returns>The sequence, or a result whose findings say what the readings lack.</returns>
    /// <exception cref="ArgumentException">No pass, a turn before the first, a screw that is not there, a pass before the one it follows, other supports than three or four screws turned by hand, or options that contradict each other or limit the next turns.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static TrammingSequence Of(BedSupports supports, IReadOnlyList<TrammingPass> passes, TrammingSequenceOptions? options = null)
    {
        TrammingSequenceOptions chosen = options ?? new TrammingSequenceOptions();
        chosen.Check();
        TrammingPass[] copy = [.. Guard.NotNull(passes)];
        SequenceCheck.Passes(Guard.NotNull(supports), copy, nameof(passes));
        SequenceCheck.Next(chosen.Next);
        return SequenceEstimator.Estimate(supports, copy, chosen);
    }

    /// <summary>κ, where a round began with a tilt beyond noise.</summary>
    /// <param name="factor">The convergence factor.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetConvergenceFactor(out Measured<double> factor)
    {
        factor = _factor ?? default;
        return _factor is not null;
    }

    /// <summary>The next turns, where they can be planned.</summary>
    /// <param name="turns">The turns; empty when there are none.</param>
    /// <returns>Whether there are.</returns>
    public bool TryGetNextTurns(out IReadOnlyList<ScrewTurn> turns)
    {
        turns = _next is { Blocking: null } next ? Array.AsReadOnly(next.Turns) : [];
        return turns.Count > 0;
    }

    /// <summary>Whether the bed is level enough as last probed: its height spread over the probed rectangle against a limit, at a risk of 5 %.</summary>
    /// <param name="tolerance">The accepted spread, usually <c>Tolerance.AtMost(...)</c>.</param>
    /// <returns>The verdict.</returns>
    /// <remarks>Source: JCGM 106:2012, clause 8.</remarks>
    /// <exception cref="ArgumentNullException">No tolerance.</exception>
    /// <exception cref="IndeterminateException">The readings fix no plane or no uncertainty.</exception>
    public Verdict<Length> Judge(Tolerance<Length> tolerance) => (_plan ?? throw Indeterminate()).Judge(tolerance);

    /// <summary>How many more rounds bring the height spread within a limit, or what keeps them from it.</summary>
    /// <param name="largestSpread">The largest accepted height spread over the probed rectangle, greater than zero.</param>
    /// <returns>The forecast.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not finite and positive.</exception>
    /// <exception cref="IndeterminateException">There are no next turns.</exception>
    public PassForecast Forecast(Length largestSpread)
    {
        double limit = Guard.Positive(largestSpread.Meters, nameof(largestSpread));
        NextTurns next = Next;
        (double width, double depth) = Plane.ProbedExtent;
        double relative = Enumerable.Range(0, _responses.Length).Max(k => Math.Sqrt(_learned!.Variance(k, k)) / Math.Abs(_responses[k].EffectiveLead.SiValue));
        var estimator = new ForecastEstimator(
            limit, width, depth, _freedom, Plane.Solution.SlopeCovariance, next.Slopes(next.Response), next.Slopes(next.Setting), relative);
        return estimator.Forecast(Judge(Tolerance.AtMost(largestSpread)).Conclusion == Conclusion.Within, _diagnoses.Any(d => d.Cause != SequenceCause.Lead));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>What is wrong and what to turn, or why there is no answer.</returns>
    public override string ToString() => Blocking?.ToString()
        ?? $"{_passes.Length} passes, {(_factor is Measured<double> factor ? $"convergence {factor}" : "no convergence factor")}; "
        + $"{(_diagnoses.Length == 0 ? "nothing found" : string.Join(", ", _diagnoses.Select(d => d.Code)))}; {string.Join("; ", (_next?.Turns ?? []).Select(t => t.ToString()))}";

    private IndeterminateException Indeterminate() => new(Blocking ?? _next!.Blocking!);
}
