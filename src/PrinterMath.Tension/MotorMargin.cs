using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>What a move asks of a motor against what the motor can give: this predicts a layer shift.</summary>
/// <remarks>
/// Reserve = s·T(ω) − (r·F + (J_rotor + J_pulley)·a_belt/r + τ_friction), s the usable share, F with the friction that the tension causes. T(ω) is an upper envelope, so without a
/// margin (s = 1) even a reserve of some size promises nothing.
/// </remarks>
/// <example><code>
/// MotorMargin margin = drive.MotorMargin(motor, Speed.FromMillimetersPerSecond(200), Acceleration.FromMetersPerSecondSquared(5));
/// Console.WriteLine(margin.Verdict);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MotorMargin
{
    internal MotorMargin(double usableShare, UncertaintyBudget<Torque> required, UncertaintyBudget<Torque> available, UncertaintyBudget<Torque> reserve)
    {
        UsableShare = usableShare;
        Required = required;
        Available = available;
        Reserve = reserve;
    }

    /// <summary>Share s of the largest torque that may be used, a ratio.</summary>
    public double UsableShare { get; }

    /// <summary>Torque that the move asks for, the worse motor.</summary>
    public UncertaintyBudget<Torque> Required { get; }

    /// <summary>Largest torque at that motor's speed.</summary>
    public UncertaintyBudget<Torque> Available { get; }

    /// <summary>Usable share of the largest torque minus what the move asks for; negative when it is passed.</summary>
    public UncertaintyBudget<Torque> Reserve { get; }

    /// <summary>Within: the reserve is positive. Outside: the motor will lose steps sooner or later, and layers shift. Undecided: what would decide.</summary>
    public Verdict<Torque> Verdict => Tolerance.AtLeast(Torque.Zero).Judge(Reserve);

    /// <summary>Required over largest torque, a ratio, if the motor has any torque at that speed.</summary>
    /// <param name="utilization">The ratio, or zero.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetUtilization(out double utilization)
    {
        double available = Available.Result.SiValue;
        utilization = available > 0 ? Required.Result.SiValue / available : 0;
        return available > 0;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Demand, supply and usable share.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"needs {Required.Result} of {Available.Result}, {UsableShare * 100:0} % usable");
}
