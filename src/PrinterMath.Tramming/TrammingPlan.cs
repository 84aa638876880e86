using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>What to do to level a bed: the turn of each screw, what the bed should be like afterwards, and whether it is good enough already.</summary>
/// <remarks>
/// <para>Heights at the screws are those of the fitted plane, hᵢ = vᵢᵀβ; the change that levels the bed is Δhᵢ = h_ref − hᵢ = (v_ref − vᵢ)ᵀβ,
/// with covariance (v_ref − vᵢ)ᵀC(v_ref − vⱼ): the error of the reference is in it. They lie in one plane by construction, so four screws stay compatible.</para>
/// <para>Findings are those of the plane and of the twist. The plan is indeterminate when the plane is.</para>
/// <para>Caution: never turn a screw while the nozzle touches the bed; a hot bed burns; keep fingers out of the gap that closes.</para>
/// <para>Source: JCGM 100:2008 (GUM), 5.2.2, and JCGM 102:2011, 6.2.1, for the covariance.</para>
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TrammingPlan
{
    private readonly ScrewTurn[] _turns;
    private readonly double[] _covariance;

    internal TrammingPlan(PlaneFit plane, ScrewTurn[] turns, double[] covariance, PredictedPlane? predicted, BedTwist? twist)
    {
        Plane = plane;
        Twist = twist;
        Predicted = predicted;
        _turns = turns;
        _covariance = covariance;
    }

    /// <summary>The plane the plan was made from.</summary>
    public PlaneFit Plane { get; }

    /// <summary>Twist of a bed on four screws; null with three, which cannot twist it.</summary>
    public BedTwist? Twist { get; }

    /// <summary>What was noticed about the points and the twist.</summary>
    public IReadOnlyList<Finding> Findings => [.. Plane.Findings, .. Twist is null || Plane.Blocking is not null ? [] : Twist.Findings];

    /// <summary>The turns, in the order of the screws.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public IReadOnlyList<ScrewTurn> Turns =>
        TryGetTurns(out IReadOnlyList<ScrewTurn> turns) ? turns : throw Indeterminate();

    /// <summary>Whether no screw is worth turning: the probe cannot see what is left, or the hand cannot set it.</summary>
    /// <remarks>Not a verdict: see <see cref="Judge"/>.</remarks>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public bool NothingWorthTurning => !Turns.Any(turn => turn.WorthTurning);

    /// <summary>The height changes with their covariance, by the names of the screws, in metres.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public JointEstimate HeightChanges => JointEstimate.FromSi(
        [.. Turns.Select(turn => turn.Name)],
        [.. _turns.Select(_ => "m")],
        [.. _turns.Select(turn => turn.HeightChange.SiValue)],
        _covariance,
        Plane.Solution.DegreesOfFreedom);

    /// <summary>The plane after all turns of the plan.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public PredictedPlane PredictedPlane => Predicted ?? throw Indeterminate();

    /// <summary>What turning cannot remove: the flatness of the readings about their plane, as read.</summary>
    /// <remarks>A statistic that noise widens, see <see cref="PlaneFit.RawFlatness"/>.</remarks>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Length RemainingRawFlatness => Plane.RawFlatness;

    private PredictedPlane? Predicted { get; }

    /// <summary>The turns, in the order of the screws, where the points fix a plane.</summary>
    /// <param name="turns">The turns; empty when there are none.</param>
    /// <returns>Whether there are.</returns>
    public bool TryGetTurns(out IReadOnlyList<ScrewTurn> turns)
    {
        turns = Array.AsReadOnly(_turns);
        return Plane.IsDeterminate;
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
    public override string ToString() => Plane.Blocking?.ToString() ?? string.Join("; ", _turns.Select(turn => turn.ToString()));

    private IndeterminateException Indeterminate() => new(Plane.Blocking!);
}
