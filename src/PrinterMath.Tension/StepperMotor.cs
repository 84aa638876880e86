using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>A two-phase hybrid stepping motor with its supply: what it can give at a speed, and how warm it gets.</summary>
/// <remarks>
/// <para>Torque K_t·I_q as a synchronous machine at the best load angle: an upper envelope. Resonances, detent and driver losses only lower it, and microsteps lose exactness
/// long before steps are lost.</para>
/// <para>K_t = T_hold/(√2·I_rated), both phases carrying I_rated at standstill; the EMF constant is the same number. Source: P. Acarnley 2002, Stepping Motors, 4th ed., ch. 5 (from memory).</para>
/// </remarks>
/// <example><code>
/// var motor = new StepperMotor(new StepperMotorData { HoldingTorque = torque, RatedCurrent = rated, Resistance = resistance, SupplyVoltage = supply });
/// Measured&lt;Torque&gt; largest = motor.LargestTorque(RotationalSpeed.FromRevolutionsPerMinute(900)).Result;
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class StepperMotor
{
    private static readonly Measured<ElectricInductance> UnknownInductance =
        Measured.FromRange(ElectricInductance.FromMillihenries(1), ElectricInductance.FromMillihenries(6));

    private static readonly Measured<MassMomentOfInertia> UnknownInertia = Measured.FromRange(
        MassMomentOfInertia.FromKilogramSquareMeters(3e-6), MassMomentOfInertia.FromKilogramSquareMeters(9e-6));

    private static readonly Measured<Torque> UnknownFriction = Measured.FromRange(Torque.FromNewtonMeters(0.002), Torque.FromNewtonMeters(0.015));

    private readonly StepperMotorData _data;
    private readonly BudgetInput[] _inputs;

    /// <summary>A motor.</summary>
    /// <param name="data">What is known of it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public StepperMotor(StepperMotorData data)
    {
        _data = Guard.NotNull(data);
        Guard.Positive(data.HoldingTorque.SiValue, nameof(data));
        Guard.Positive(data.RatedCurrent.AmperesRms, nameof(data));
        Guard.Positive(data.Resistance.SiValue, nameof(data));
        Guard.Positive(data.SupplyVoltage.Volts, nameof(data));
        Guard.AtLeast(data.RotorTeeth, 1, nameof(data));
        Inductance = data.Inductance ?? UnknownInductance;
        RotorInertia = data.RotorInertia ?? UnknownInertia;
        Guard.Positive(Inductance.SiValue, nameof(data));
        Guard.Positive(RotorInertia.SiValue, nameof(data));
        FrictionTorque = data.FrictionTorque ?? UnknownFriction;
        Guard.NonNegative(FrictionTorque.SiValue, nameof(data));
        RunCurrent = data.RunCurrent ?? data.RatedCurrent;
        _inputs = [BudgetInput.Of("holding torque", data.HoldingTorque), BudgetInput.Of("winding resistance", data.Resistance), BudgetInput.Of("winding inductance", Inductance)];
    }

    /// <summary>Inductance L of a phase, as stated or the default range.</summary>
    public Measured<ElectricInductance> Inductance { get; }

    /// <summary>Rotor inertia J, as stated or the default range.</summary>
    public Measured<MassMomentOfInertia> RotorInertia { get; }

    /// <summary>Friction of the motor itself, as stated or the default range.</summary>
    public Measured<Torque> FrictionTorque { get; }

    /// <summary>Current while moving.</summary>
    public WindingCurrent RunCurrent { get; }

    /// <summary>Number N_r of rotor teeth.</summary>
    public int RotorTeeth => _data.RotorTeeth;

    /// <summary>Holding torque at the run current, T_hold·I_run/I_rated: torque follows the current while the iron is not saturated.</summary>
    public Measured<Torque> TorqueAtRunCurrent
    {
        get
        {
            double share = RunCurrent.AmperesRms / _data.RatedCurrent.AmperesRms;
            Measured<Torque> hold = _data.HoldingTorque;
            return Measured<Torque>.FromSi(share * hold.SiValue, share * hold.SiStandardUncertainty, hold.DegreesOfFreedom);
        }
    }

    /// <summary>Copper loss P = 2·I_rms²·R of both windings at the run current, cold resistance.</summary>
    public Measured<Power> CopperLoss
    {
        get
        {
            double square = 2 * RunCurrent.AmperesRms * RunCurrent.AmperesRms;
            Measured<ElectricResistance> r = _data.Resistance;
            return Measured<Power>.FromSi(square * r.SiValue, square * r.SiStandardUncertainty, r.DegreesOfFreedom);
        }
    }

    /// <summary>Largest torque at a speed, with its budget; zero above the speed at which the supply can drive no current.</summary>
    /// <param name="speed">Speed ω of the shaft, zero or more.</param>
    /// <returns>The upper envelope.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is negative.</exception>
    public UncertaintyBudget<Torque> LargestTorque(RotationalSpeed speed)
    {
        double omega = Guard.NonNegative(speed.RadiansPerSecond, nameof(speed));
        return Propagation.FirstOrder<Torque>(x => NewtonMeters(omega, x), _inputs);
    }

    /// <summary>Largest torque at a speed, the estimate alone: allocates nothing.</summary>
    /// <param name="speed">Speed ω of the shaft, zero or more.</param>
    /// <returns>The upper envelope, as of <see cref="LargestTorque"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is negative.</exception>
    public Torque LargestTorqueEstimate(RotationalSpeed speed) => Torque.FromNewtonMeters(NewtonMeters(
        Guard.NonNegative(speed.RadiansPerSecond, nameof(speed)), [_data.HoldingTorque.SiValue, _data.Resistance.SiValue, Inductance.SiValue]));

    /// <summary>Case temperature rise over ambient when running continuously at the run current.</summary>
    /// <param name="perWatt">Rise for each watt of loss, greater than zero; anywhere from 2 to 8 K when null (common practice, no source: it depends on the mount).</param>
    /// <returns>The rise, with its budget; iron losses not included.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rise for each watt is not positive.</exception>
    public UncertaintyBudget<TemperatureDelta> CaseRise(Measured<TemperatureDelta>? perWatt = null)
    {
        Measured<TemperatureDelta> rise = perWatt ?? Measured.FromRange(TemperatureDelta.FromKelvins(2), TemperatureDelta.FromKelvins(8));
        Guard.Positive(rise.SiValue, nameof(perWatt));
        return Propagation.FirstOrder<TemperatureDelta>(
            x => x[0] * x[1], [BudgetInput.Of("copper loss", CopperLoss), BudgetInput.Of("case rise per watt", rise)]);
    }

    /// <summary>Whether the case stays cool enough for the windings.</summary>
    /// <param name="ambient">Temperature around the motor.</param>
    /// <param name="windingClass">Highest winding temperature: 130 °C for class B, 155 °C for class F (IEC 60085, from memory); above ambient.</param>
    /// <param name="perWatt">As for <see cref="CaseRise"/>.</param>
    /// <returns>Verdict on the case's rise; the windings are taken to be 20 K warmer than the case (common practice, no source).</returns>
    /// <remarks>Caution: a case above 60 °C burns the hand and softens printed mounts long before the windings suffer.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The class is not at least 20 K above ambient, or the rise for each watt is not positive.</exception>
    public Verdict<TemperatureDelta> JudgeCaseRise(Temperature ambient, Temperature windingClass, Measured<TemperatureDelta>? perWatt = null)
    {
        double allowed = Guard.Positive(windingClass.Kelvins - ambient.Kelvins - 20, nameof(windingClass));
        return Tolerance.AtMost(TemperatureDelta.FromKelvins(allowed)).Judge(CaseRise(perWatt));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Holding torque and rated current.</returns>
    public override string ToString() => $"stepper of {_data.HoldingTorque} at {_data.RatedCurrent}";

    /// <summary>Holding torque, resistance and inductance.</summary>
    internal IReadOnlyList<BudgetInput> Inputs => _inputs;

    /// <summary>Torque from <see cref="Inputs"/>, in that order, all in SI.</summary>
    internal double NewtonMeters(double speed, ReadOnlySpan<double> x)
    {
        double k = x[0] / _data.RatedCurrent.AmperesPeak;
        return k * StepperEnvelope.TorqueCurrent(
            speed, k, Math.Max(double.Epsilon, x[1]), Math.Max(0, x[2]), _data.RotorTeeth, _data.SupplyVoltage.Volts, RunCurrent.AmperesPeak);
    }
}
