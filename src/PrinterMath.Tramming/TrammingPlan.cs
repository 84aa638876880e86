using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>What to do to level a bed: the turn or move of each screw, what the bed should be like afterwards, and whether it is good enough already.</summary>
/// <remarks>
/// <para>Heights at the screws are those of the fitted plane, hᵢ = vᵢᵀβ; the change that levels the bed is Δhᵢ = h_ref − hᵢ = (v_ref − vᵢ)ᵀβ,
/// with covariance (v_ref − vᵢ)ᵀC(v_ref − vⱼ): the error of the reference is in it. They lie in one plane by construction, so four screws stay compatible.</para>
/// <para>Fixed supports and hinges restrict the tilts, and limits the changes: the plan then minimizes Σw(r·(p − p̄))², r the slopes that are left, p the probed places, subject to them, exactly, and only then sees to
/// the height. Changes that a limit gives carry no uncertainty; those of the others are first order with the limits that bind held fast, too small where a limit is only just reached.</para>
/// <para>With <see cref="TrammingOptions.RemoveTwist"/> hᵢ are the heights of plane and saddle fitted together, with the scatter of that fit: hᵢ = plane + t·p̃ᵢ, u²(hᵢ) = u²(plane) + p̃ᵢ²u²(t), p̃ the saddle less the plane
/// that takes the most of it.</para>
/// <para>Findings are those of the plane and of the twist, and <c>plan.tilt.unreached</c> (caution, or note where it cannot be told from none), <c>plan.limits.bind</c>, <c>plan.limits.unit.suspect</c>, <c>plan.support.away</c>
/// (cautions), <c>plan.limits.infeasible</c> (blocking). The plan is indeterminate when the plane is, when limits exclude each other, or when a twist that is to be removed is not known.</para>
/// <para>Caution: never turn a screw while the nozzle touches the bed; a hot bed burns; keep fingers out of the gap that closes.</para>
/// <para>Source: JCGM 100:2008 (GUM), 5.2.2, and JCGM 102:2011, 6.2.1, for the covariance; Nocedal, Wright 2006, Numerical Optimization, 2nd ed., 12.3 and 16.1, for the conditions that a constrained least-squares solution meets (from memory).</para>
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TrammingPlan
{
    private readonly AdjustableSupport[] _supports = [];
    private readonly Measured<Length>[] _changes = [];
    private readonly ScrewTurn[] _turns = [];
    private readonly PoweredMove[] _moves = [];
    private readonly double[] _covariance = [];
    private readonly double _degreesOfFreedom;
    private readonly Finding[] _findings;
    private readonly Finding? _blocking;
    private readonly PredictedPlane? _predicted;
    private readonly Measured<Length>? _remainingTwist;

    private TrammingPlan(PlaneFit plane, BedTwist? twist, IEnumerable<Finding> findings, Finding blocking)
    {
        Plane = plane;
        Twist = twist;
        _blocking = blocking;
        _findings = [.. plane.Findings, .. twist is null || plane.Blocking is not null ? [] : twist.Findings, .. findings];
        _findings = _findings.Contains(blocking) ? _findings : [.. _findings, blocking];
    }

    private TrammingPlan(
        PlaneFit plane, BedSupports supports, Measured<Length>[] changes, double[] covariance, double degreesOfFreedom, double smallestTurns, PredictedPlane predicted, BedTwist? twist, Measured<Length>? remainingTwist, List<Finding> findings)
    {
        Plane = plane;
        Twist = twist;
        _supports = supports.Adjustable.ToArray();
        _changes = changes;
        _turns = new ScrewTurn[supports.ScrewSpan.Length];
        _moves = new PoweredMove[changes.Length - _turns.Length];
        int turns = 0, moves = 0;
        for (int i = 0; i < changes.Length; i++)
        {
            if (_supports[i] is AdjustingScrew screw)
            {
                _turns[turns++] = new ScrewTurn(screw, changes[i], smallestTurns);
            }
            else
            {
                _moves[moves++] = new PoweredMove((PoweredScrew)_supports[i], changes[i]);
            }
        }

        _covariance = covariance;
        _degreesOfFreedom = degreesOfFreedom;
        _predicted = predicted;
        _remainingTwist = remainingTwist;
        _findings = [.. plane.Findings, .. twist is null ? [] : twist.Findings, .. findings];
    }

    /// <summary>The plane the plan was made from.</summary>
    public PlaneFit Plane { get; }

    /// <summary>Twist of a bed on four supports or more, as measured; null with three, which cannot twist it.</summary>
    public BedTwist? Twist { get; }

    /// <summary>What was noticed about points, twist, supports and limits.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Whether there is a plan; when false, <see cref="Findings"/> say why.</summary>
    public bool IsDeterminate => _blocking is null;

    /// <summary>The turns of the screws that are turned by hand, in their order.</summary>
    /// <exception cref="IndeterminateException">There is no plan.</exception>
    public IReadOnlyList<ScrewTurn> Turns =>
        TryGetTurns(out IReadOnlyList<ScrewTurn> turns) ? turns : throw Indeterminate();

    /// <summary>The moves of the powered screws, in their order.</summary>
    /// <exception cref="IndeterminateException">There is no plan.</exception>
    public IReadOnlyList<PoweredMove> Moves => IsDeterminate ? Array.AsReadOnly(_moves) : throw Indeterminate();

    /// <summary>All turns of the plan together, by hand and by motor, a ratio, zero or more.</summary>
    /// <exception cref="IndeterminateException">There is no plan.</exception>
    public double TotalTurns => IsDeterminate ? _changes.Select((change, i) => Math.Abs(change.SiValue) / _supports[i].TurnLead.SiValue).Sum() : throw Indeterminate();

    /// <summary>The twist after the turns: as measured where it is kept out of them, zero with its uncertainty where it is removed; null with three supports, or where the points do not carry it.</summary>
    /// <remarks>With removal, u² is that of the amplitude and what errors of the leads and whole steps twist.</remarks>
    public Measured<Length>? RemainingTwist => _remainingTwist;

    /// <summary>Whether no screw is worth turning or moving: the probe cannot see what is left, or the hand cannot set it.</summary>
    /// <remarks>Not a verdict: see <see cref="Judge"/>.</remarks>
    /// <exception cref="IndeterminateException">There is no plan.</exception>
    public bool NothingWorthTurning => !Turns.Any(turn => turn.WorthTurning) && !_moves.Any(move => move.WorthMoving);

    /// <summary>The height changes with their covariance, by the names of the adjustable supports in their order, in metres.</summary>
    /// <exception cref="IndeterminateException">There is no plan.</exception>
    public JointEstimate HeightChanges => IsDeterminate
        ? JointEstimate.FromSi(
            [.. _supports.Select(support => support.Name)],
            [.. _supports.Select(_ => "m")],
            [.. _changes.Select(change => change.SiValue)],
            _covariance,
            _degreesOfFreedom)
        : throw Indeterminate();

    /// <summary>The plane after all turns of the plan.</summary>
    /// <exception cref="IndeterminateException">There is no plan.</exception>
    public PredictedPlane PredictedPlane => _predicted ?? throw Indeterminate();

    /// <summary>What turning cannot remove: the flatness of the readings about their plane, as read.</summary>
    /// <remarks>A statistic that noise widens, see <see cref="PlaneFit.RawFlatness"/>.</remarks>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Length RemainingRawFlatness => Plane.RawFlatness;

    /// <summary>The turns, in the order of the screws, where there is a plan.</summary>
    /// <param name="turns">The turns; empty when there are none.</param>
    /// <returns>Whether there are.</returns>
    public bool TryGetTurns(out IReadOnlyList<ScrewTurn> turns)
    {
        turns = Array.AsReadOnly(_turns);
        return IsDeterminate;
    }

    /// <summary>Whether the bed is level enough as probed: its height spread over the probed rectangle, <see cref="PlaneFit.HeightSpread"/>, against a limit.</summary>
    /// <param name="tolerance">The accepted spread, usually <c>Tolerance.AtMost(...)</c>.</param>
    /// <returns>The verdict; when undecided it says how many probe readings would decide it, if readings alone can.</returns>
    /// <remarks>Guarded at a specific risk of 5 %. Source: JCGM 106:2012, clause 8. For what is left after turning judge <see cref="PredictedPlane.HeightSpread"/>.</remarks>
    /// <exception cref="ArgumentNullException">No tolerance.</exception>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Verdict<Length> Judge(Tolerance<Length> tolerance)
    {
        var spread = BudgetInput.Repeated("probe readings", Plane.HeightSpread, Plane.Points.Count);
        return Guard.NotNull(tolerance).Judge(Propagation.FirstOrder<Length>(spread.SiValue, [spread], [1]));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>One clause for each screw, or why there is none.</returns>
    public override string ToString() => _blocking?.ToString() ?? string.Join("; ", _turns.Select(turn => turn.ToString()).Concat(_moves.Select(move => move.ToString())));

    private IndeterminateException Indeterminate() => new(_blocking!);

    internal static TrammingPlan Blocked(PlaneFit plane, BedTwist? twist, IEnumerable<Finding> findings, Finding blocking) => new(plane, twist, findings, blocking);

    internal static TrammingPlan Of(
        PlaneFit plane, BedSupports supports, Measured<Length>[] changes, double[] covariance, double degreesOfFreedom, double smallestTurns, PredictedPlane predicted, BedTwist? twist, Measured<Length>? remainingTwist, List<Finding> findings) =>
        new(plane, supports, changes, covariance, degreesOfFreedom, smallestTurns, predicted, twist, remainingTwist, findings);
}
