using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>The tension at which an axis accelerates best at a speed, and how fast it then does.</summary>
/// <remarks>
/// <para>Below it the slack side limits, a = (T₀/q − F_guides − κ·T₀)/m; above it the motor does, a = ((s·T(ω) − τ_motor)/r − F_guides − κ·T₀)/(m + J/r²); q is the worst share of the
/// strands plus what is to be left on the slack side. The optimum is where both meet.</para>
/// <para>It says nothing of belt strength and bearings: where it lies above the upper limit of the <see cref="Tension.TensionWindow"/>, that limit is best, and motors are not what limits.</para>
/// </remarks>
/// <example><code>TensionOptimum best = drive.BestTension(motor, Speed.FromMillimetersPerSecond(200));</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class TensionOptimum
{
    private readonly UncertaintyBudget<Force> _tension;
    private readonly UncertaintyBudget<Acceleration> _acceleration;
    private readonly ReadOnlyCollection<Finding> _findings;

    private TensionOptimum(UncertaintyBudget<Force> tension, UncertaintyBudget<Acceleration> acceleration, params Finding[] findings)
    {
        _tension = tension;
        _acceleration = acceleration;
        _findings = Array.AsReadOnly(findings);
    }

    /// <summary><see cref="DriveFindings.NoTorque"/>, or nothing.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Whether there is an acceleration to give at all.</summary>
    public bool Exists => _findings.Count == 0;

    /// <summary>The best tension with its budget.</summary>
    /// <exception cref="IndeterminateException">Friction takes all the usable torque.</exception>
    public UncertaintyBudget<Force> Tension => Exists ? _tension : throw new IndeterminateException(_findings[0]);

    /// <summary>The acceleration at that tension with its budget.</summary>
    /// <exception cref="IndeterminateException">Friction takes all the usable torque.</exception>
    public UncertaintyBudget<Acceleration> Acceleration => Exists ? _acceleration : throw new IndeterminateException(_findings[0]);

    /// <summary>The tension, if there is one.</summary>
    /// <param name="tension">The tension, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetTension(out Measured<Force> tension)
    {
        tension = Exists ? _tension.Result : default;
        return Exists;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Tension and acceleration, or the finding that stands in their place.</returns>
    public override string ToString() => Exists ? $"{_acceleration.Result} at {_tension.Result}" : _findings[0].ToString();

    internal static TensionOptimum From(UncertaintyBudget<Force> tension, UncertaintyBudget<Acceleration> acceleration, double omega) =>
        acceleration.Result.SiValue > 0
            ? new TensionOptimum(tension, acceleration)
            : new TensionOptimum(tension, acceleration, AccelerationLimit.NoTorque(acceleration.Result.SiValue, omega));
}
