using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Demand and supply of one motor at one speed, as functions of all inputs.</summary>
/// <remarks>τ = r·(M·a + F_guides + κ·T₀) + τ_motor with M = mass at the belt + J/r², against s·T(ω), ω = belt speed/r.</remarks>
internal sealed class MotorDemand
{
    private const double LeastMass = 1e-6;
    private readonly BeltDrive _drive;
    private readonly StepperMotor _motor;
    private readonly MotorShare _share;
    private readonly double _radius;
    private readonly double _omega;
    private readonly double _usable;
    private readonly List<BudgetInput> _inputs;
    private readonly int _drag;
    private readonly int _own;
    private readonly int _electric;

    private MotorDemand(BeltDrive drive, StepperMotor motor, MotorShare share, double speed, double usable, Measured<Force> tension)
    {
        _drive = drive;
        _motor = motor;
        _share = share;
        _radius = drive.Belts[share.Belt].MotorRadius;
        _omega = speed * share.SpeedRatio / _radius;
        _usable = usable;
        _inputs = drive.LoadInputs();
        _drag = _inputs.Count;
        _inputs.AddRange(drive.Drag.Inputs);
        _own = _inputs.Count;
        _inputs.AddRange(
        [
            BudgetInput.Of("tension", tension), BudgetInput.Of("rotor inertia", motor.RotorInertia), BudgetInput.Of("pulley inertia", drive.PulleyInertia),
            BudgetInput.Of("motor friction", motor.FrictionTorque),
        ]);
        _electric = _inputs.Count;
        _inputs.AddRange(motor.Inputs);
    }

    /// <summary>The motor with the smaller reserve at an acceleration or, without one, with the smaller acceleration. A motor that the move asks for nothing is left out.</summary>
    internal static MotorDemand For(BeltDrive drive, StepperMotor motor, Speed speed, MotorMarginOptions? options, double? acceleration = null)
    {
        options ??= new MotorMarginOptions();
        Guard.NotNull(motor);
        double v = Guard.NonNegative(speed.MetersPerSecond, nameof(speed));
        double usable = options.UsableShare is > 0 and <= 1 ? options.UsableShare : throw Guard.Out(nameof(options.UsableShare), options.UsableShare, "greater than 0, at most 1");
        Measured<Force> tension = options.Tension ?? Measured.FromRange(Force.FromNewtons(10), Force.FromNewtons(40));
        Guard.NonNegative(tension.SiValue, nameof(options));
        return MotorShare.Of(drive, options.Direction)
            .Select(share => new MotorDemand(drive, motor, share, v, usable, tension))
            .Where(demand => demand.MassWithRotor(demand.Estimates()) > LeastMass)
            .MinBy(demand => acceleration is { } a ? demand.Reserve(demand.Estimates(), a) : demand.Accelerates(demand.Estimates()))!;
    }

    internal MotorMargin MarginAt(double acceleration) => new(
        _usable,
        Propagation.FirstOrder<Torque>(x => Required(x, acceleration), _inputs),
        Propagation.FirstOrder<Torque>(Available, _inputs),
        Propagation.FirstOrder<Torque>(x => Reserve(x, acceleration), _inputs));

    internal AccelerationLimit LargestAcceleration() =>
        AccelerationLimit.From(Propagation.FirstOrder<Acceleration>(Accelerates, _inputs), _omega);

    /// <summary>
    /// Belt: a = (T/q − F_g − κT)/m with q = share + left; motor: a = (F_m − F_g − κT)/M. They meet at T = (m·F_m + (M − m)·F_g)/(M/q − (M − m)·κ).
    /// </summary>
    internal TensionOptimum BestTension(Measured<double> left)
    {
        Guard.NonNegative(left.SiValue, nameof(left));
        double worst = WorstStrand.Of(_drive).Share;
        List<BudgetInput> inputs = [.. _inputs.Where(input => input.Name != "tension"), SlackSide.Input(left)];
        int last = inputs.Count - 1;
        double Tension(ReadOnlySpan<double> reduced)
        {
            Span<double> x = stackalloc double[reduced.Length];
            Restore(reduced, x);
            double q = worst + reduced[last];
            double belt = _share.Mass(x, 0);
            double inertia = MassWithRotor(x) - belt;
            double ratio = ((belt + inertia) / q) - (inertia * DragRatio(x));
            return ((belt * MotorForce(x)) + (inertia * _drive.FrictionNewtons(x))) / ratio;
        }

        double Acceleration(ReadOnlySpan<double> reduced)
        {
            Span<double> x = stackalloc double[reduced.Length];
            Restore(reduced, x);
            x[_own] = Tension(reduced);
            return Accelerates(x);
        }

        return TensionOptimum.From(
            Propagation.FirstOrder<Force>(Tension, inputs), Propagation.FirstOrder<Acceleration>(Acceleration, inputs), _omega);
    }

    private double[] Estimates() => [.. _inputs.Select(input => input.SiValue)];

    private double Reserve(ReadOnlySpan<double> x, double acceleration) => (_usable * Available(x)) - Required(x, acceleration);

    /// <summary>The inputs without the tension, which takes the place of the share at the end.</summary>
    private void Restore(ReadOnlySpan<double> reduced, Span<double> x)
    {
        reduced[.._own].CopyTo(x);
        x[_own] = 0;
        reduced[_own..^1].CopyTo(x[(_own + 1)..]);
    }

    private double Accelerates(ReadOnlySpan<double> x) => (MotorForce(x) - _drive.FrictionNewtons(x) - (DragRatio(x) * x[_own])) / MassWithRotor(x);

    /// <summary>(s·T(ω) − τ_motor)/r.</summary>
    private double MotorForce(ReadOnlySpan<double> x) => ((_usable * Available(x)) - x[_own + 3]) / _radius;

    private double Required(ReadOnlySpan<double> x, double acceleration) =>
        (_radius * ((acceleration * MassWithRotor(x)) + _drive.FrictionNewtons(x) + (DragRatio(x) * x[_own]))) + x[_own + 3];

    private double Available(ReadOnlySpan<double> x) => _motor.NewtonMeters(_omega, x[_electric..]);

    private double MassWithRotor(ReadOnlySpan<double> x) => _share.Mass(x, (x[_own + 1] + x[_own + 2]) / (_radius * _radius));

    private double DragRatio(ReadOnlySpan<double> x) => _drive.Drag.Ratio(x[_drag..]);
}
