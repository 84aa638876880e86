using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Largest acceleration that the motors give at a speed with the stated margin, or that a tension serves.</summary>
/// <remarks>
/// Motors: a = ((s·T(ω) − τ_motor)/r − F_guides − κ·T₀)/(m + J/r²), m the mass at the belt. Tension: a = (T₀·(1/q − κ) − F_guides)/m, q the share of the worst strand plus what the
/// slack side keeps.
/// </remarks>
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

    /// <summary><see cref="DriveFindings.NoTorque"/>, <see cref="DriveFindings.TooSlack"/>, or nothing.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>The acceleration with its budget.</summary>
    /// <exception cref="IndeterminateException">Friction takes all the usable torque, or all that the slack side can give.</exception>
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
    /// <returns>Within: motors or tension serve it. Outside: steps will be lost, or teeth may jump, and layers shift. Undecided: what would decide.</returns>
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

    internal static AccelerationLimit From(UncertaintyBudget<Acceleration> budget, Measured<Force> tension) =>
        budget.Result.SiValue > 0 ? new AccelerationLimit(budget) : new AccelerationLimit(budget, TooSlack(budget.Result.SiValue, tension.SiValue));

    private static Finding TooSlack(double acceleration, double newtons) => new(
        DriveFindings.TooSlack,
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"At {newtons:G4} N friction alone takes more than the slack side may give: tighten the belt before the axis moves."),
        new FindingNumber("acceleration", acceleration, "m/s2"),
        new FindingNumber("tension", newtons, "N"));

    internal static Finding NoTorque(double acceleration, double omega) => new(
        DriveFindings.NoTorque,
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"At {omega:G4} rad/s friction alone takes more than the usable torque: move slower, raise the supply voltage or the current."),
        new FindingNumber("acceleration", acceleration, "m/s2"),
        new FindingNumber("motorSpeed", omega, "rad/s"));
}
