using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>The drive of the filament: which force it can push with, and what gives way first.</summary>
/// <remarks>
/// <para>Torque F = M·i·η/r; grip as measured; buckling F = π²·E·I/L² with I = π·d⁴/64, both ends pinned (Euler), which a guide that clamps exceeds; yield F = σ·π·d²/4.</para>
/// <para>Source: definition of torque; S. P. Timoshenko, J. M. Gere 1961, Theory of Elastic Stability, 2nd ed., 2.1 (from memory); for filament N. Venkataraman et al. 2000, Rapid Prototyping
/// Journal 6, 244 (from memory); Turner, Strong, Gold 2014, Rapid Prototyping Journal 20, 192 to 204.</para>
/// <para>Caution: power off before a hand goes near wheel and gear; they start by themselves.</para>
/// </remarks>
/// <example><code>
/// FilamentDrive drive = FilamentDrive.Of(new FilamentDriveData { FilamentDiameter = d, Grip = pulled, FreeLength = gap, Modulus = e });
/// DriveLimit first = drive.Weakest;
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FilamentDrive
{
    private readonly ReadOnlyCollection<DriveLimit> _limits;
    private readonly FilamentDriveData _data;

    private FilamentDrive(FilamentDriveData data, IEnumerable<DriveLimit> limits)
    {
        _data = data;
        _limits = limits.OrderBy(limit => limit.Force.SiValue).ToList().AsReadOnly();
    }

    /// <summary>Diameter of the filament.</summary>
    public Measured<Length> FilamentDiameter => _data.FilamentDiameter;

    /// <summary>Force lost on the way.</summary>
    public Measured<Force> Friction => _data.Friction;

    /// <summary>What can give way, the weakest first; as many as were stated.</summary>
    public IReadOnlyList<DriveLimit> Limits => _limits;

    /// <summary>What gives way first.</summary>
    public DriveLimit Weakest => _limits[0];

    /// <summary>A drive.</summary>
    /// <param name="data">What is known of it.</param>
    /// <returns>The drive.</returns>
    /// <exception cref="ArgumentException">Nothing that could give way is stated, or only half of a pair.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="InvalidOperationException">A number was never measured.</exception>
    public static FilamentDrive Of(FilamentDriveData data)
    {
        Guard.NotNull(data);
        double d = Guard.Positive(data.FilamentDiameter.SiValue, nameof(data.FilamentDiameter));
        Guard.NonNegative(data.Friction.SiValue, nameof(data.Friction));
        Guard.Positive(data.GearRatio, nameof(data.GearRatio));
        if (Guard.Positive(data.GearEfficiency.SiValue, nameof(data.GearEfficiency)) > 1)
        {
            throw Guard.Out(nameof(data.GearEfficiency), data.GearEfficiency, "at most 1");
        }

        List<DriveLimit> limits = [];
        if (data.EffectiveRadius is { } wheel)
        {
            Guard.Positive(wheel.SiValue, nameof(data.EffectiveRadius));
        }

        if (data.MotorTorque is { } torque)
        {
            Guard.Positive(torque.SiValue, nameof(data.MotorTorque));
            Measured<Length> radius = data.EffectiveRadius ?? throw Guard.Refused(nameof(data.EffectiveRadius), "The torque of the motor needs the effective radius of the wheel.");
            limits.Add(new DriveLimit(LimitKind.Torque, Propagation.FirstOrder<Force>(
                x => x[1] * data.GearRatio * x[2] / x[0],
                [BudgetInput.Of("effective radius", radius), BudgetInput.Of("motor torque", torque), BudgetInput.Of("gear efficiency", data.GearEfficiency)])));
        }

        BudgetInput diameter = BudgetInput.Of("filament diameter", data.FilamentDiameter);
        if (data.FreeLength is { } gap && data.Modulus is { } modulus)
        {
            Guard.Positive(gap.SiValue, nameof(data.FreeLength));
            Guard.Positive(modulus.SiValue, nameof(data.Modulus));
            limits.Add(new DriveLimit(LimitKind.Buckling, Propagation.FirstOrder<Force>(
                x => Math.PI * Math.PI * x[1] * Math.PI / 64 * x[2] * x[2] * x[2] * x[2] / (x[0] * x[0]),
                [BudgetInput.Of("free length", gap), BudgetInput.Of("modulus of the filament", modulus), diameter])));
        }
        else if (data.FreeLength is not null || data.Modulus is not null)
        {
            throw Guard.Refused(nameof(data), "Free length and modulus of the filament belong together; one of them is not stated.");
        }

        if (data.YieldStress is { } stress)
        {
            double sigma = Guard.Positive(stress.SiValue, nameof(data.YieldStress));
            limits.Add(new DriveLimit(LimitKind.Yield, Propagation.FirstOrder<Force>(
                sigma * Math.PI / 4 * d * d, [BudgetInput.Of("yield stress of the filament", stress), diameter], [Math.PI / 4 * d * d, sigma * Math.PI / 2 * d])));
        }

        Stated(LimitKind.Grip, "grip", data.Grip, nameof(data.Grip));
        Stated(LimitKind.StatedForce, "stated force", data.StatedForce, nameof(data.StatedForce));
        return limits.Count > 0
            ? new FilamentDrive(data, limits)
            : throw Guard.Refused(nameof(data), "Nothing is stated that could give way: torque and radius, grip, free length and modulus, yield stress or a force.");

        void Stated(LimitKind kind, string name, Measured<Force>? force, string member)
        {
            if (force is { } known)
            {
                limits.Add(new DriveLimit(kind, Propagation.FirstOrder<Force>(Guard.Positive(known.SiValue, member), [BudgetInput.Of(name, known)], [1])));
            }
        }
    }

    /// <summary>Torque of the motor that a force on the filament takes, M = (F + friction)·r/(i·η).</summary>
    /// <param name="force">Force that reaches the melt, greater than zero; see <see cref="PressureDrop.ForceOn"/>.</param>
    /// <returns>The torque and its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The force is not positive.</exception>
    /// <exception cref="InvalidOperationException">The force was never measured, or the drive has no effective radius.</exception>
    public UncertaintyBudget<Torque> TorqueFor(Measured<Force> force)
    {
        Guard.Positive(force.SiValue, nameof(force));
        Measured<Length> radius = _data.EffectiveRadius ?? throw new InvalidOperationException("The effective radius of the wheel was not stated.");
        return Propagation.FirstOrder<Torque>(
            x => (x[0] + x[1]) * x[2] / (_data.GearRatio * x[3]),
            [BudgetInput.Of("force", force), BudgetInput.Of("friction", _data.Friction), BudgetInput.Of("effective radius", radius), BudgetInput.Of("gear efficiency", _data.GearEfficiency)]);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>What gives way, the weakest first.</returns>
    public override string ToString() => string.Join(", ", _limits);
}
