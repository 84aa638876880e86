using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Largest acceleration that the motors give at a speed with the stated margin.</summary>
/// <remarks>a = ((s·T(ω) − τ_motor)/r − F_guides − κ·T₀)/(m + J/r²), m the mass at the belt.</remarks>
/// <example><code>Verdict&lt;Acceleration&gt; verdict = drive.LargestAcceleration(motor, speed).Judge(planned);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class AccelerationLimit
{
    private readonly UncertaintyBudget<Acceleration> _budget;
    private readonly ReadOnlyCollection<Finding> _findings;

    private AccelerationLimit(UncertaintyBudget<Acceleration> budget, params Finding[] findings)
    {
        _budget = budget;
        _findings = Array.AsReadOnly(findings);
    }

    /// <summary><see cref="DriveFindings.NoTorque"/>, or nothing.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>The acceleration with its budget.</summary>
    /// <exception cref="IndeterminateException">Friction takes all the usable torque.</exception>
    public UncertaintyBudget<Acceleration> Budget => _findings.Count == 0 ? _budget : throw new IndeterminateException(_findings[0]);

    /// <summary>The acceleration, if there is one.</summary>
    /// <param name="acceleration">The acceleration, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetValue(out Measured<Acceleration> acceleration)
    {
        acceleration = _findings.Count == 0 ? _budget.Result : default;
        return _findings.Count == 0;
    }

    /// <summary>Judges a planned acceleration.</summary>
    /// <param name="planned">The acceleration, zero or more.</param>
    /// <returns>Within: the motors give it with the stated margin. Outside: steps will be lost and layers shift. Undecided: what would decide.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The acceleration is negative.</exception>
    public Verdict<Acceleration> Judge(Acceleration planned)
    {
        Guard.NonNegative(planned.MetersPerSecondSquared, nameof(planned));
        return Tolerance.AtLeast(planned).Judge(_budget);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The acceleration, or the finding that stands in its place.</returns>
    public override string ToString() => _findings.Count == 0 ? $"at most {_budget.Result}" : _findings[0].ToString();

    internal static AccelerationLimit From(UncertaintyBudget<Acceleration> budget, double omega) =>
        budget.Result.SiValue > 0 ? new AccelerationLimit(budget) : new AccelerationLimit(budget, NoTorque(budget.Result.SiValue, omega));

    internal static Finding NoTorque(double acceleration, double omega) => new(
        DriveFindings.NoTorque,
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"At {omega:G4} rad/s friction alone takes more than the usable torque: move slower, raise the supply voltage or the current."),
        new FindingNumber("acceleration", acceleration, "m/s2"),
        new FindingNumber("motorSpeed", omega, "rad/s"));
}
