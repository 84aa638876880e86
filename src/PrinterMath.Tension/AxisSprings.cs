using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Belts and motors of a drive as springs, with the inputs that they have in common.</summary>
/// <remarks>1/k = 1/(EA·(1/L₁ + 1/L₂)) + r²/(N_r·T). Both belts are of one kind, both motors too.</remarks>
internal sealed class AxisSprings
{
    private readonly BeltDrive _drive;
    private readonly int _teeth;

    internal AxisSprings(BeltDrive drive, AxisOptions options)
    {
        _drive = drive;
        _teeth = Guard.AtLeast(options.RotorTeeth, 1, nameof(options));
        Measured<ForcePerLength> belt = options.StiffnessPerWidth
            ?? Measured.FromRange(ForcePerLength.FromNewtonsPerMillimeter(1500), ForcePerLength.FromNewtonsPerMillimeter(3000));
        Measured<Torque> motor = options.MotorTorque ?? Measured.FromRange(Torque.FromNewtonMeters(0.15), Torque.FromNewtonMeters(0.5));
        Guard.Positive(belt.SiValue, nameof(options));
        Guard.Positive(motor.SiValue, nameof(options));
        Springs = [BudgetInput.Of("belt stiffness per width", belt), BudgetInput.Of("motor torque", motor)];
        List<BudgetInput> inputs = [.. Springs, .. drive.LoadInputs()];
        All = inputs;
        WithoutFriction = [.. inputs.SkipLast(1)];
        WithoutMass = [.. Springs, inputs[^1]];
    }

    /// <summary>Belt and motor.</summary>
    internal IReadOnlyList<BudgetInput> Springs { get; }

    /// <summary>Belt, motor, masses.</summary>
    internal IReadOnlyList<BudgetInput> WithoutFriction { get; }

    /// <summary>Belt, motor, friction.</summary>
    internal IReadOnlyList<BudgetInput> WithoutMass { get; }

    private List<BudgetInput> All { get; }

    internal double NewtonsPerMeter(int belt, HeadPosition head, ReadOnlySpan<double> x)
    {
        BeltPath path = _drive.Belts[belt];
        double strands = x[0] * _drive.Width * ((1 / path.FirstStrand(head).Meters) + (1 / path.SecondStrand(head).Meters));
        double r = path.MotorRadius;
        return 1 / ((1 / strands) + (r * r / (_teeth * x[1])));
    }

    internal double Direct(HeadPosition head, ReadOnlySpan<double> x) =>
        NewtonsPerMeter(0, head, x) + (_drive.IsCrossed ? NewtonsPerMeter(1, head, x) : 0);

    internal double Hertz(HeadPosition head, ReadOnlySpan<double> x, bool higher = false) => _drive.IsCrossed
        ? CrossedModes.Hertz(NewtonsPerMeter(0, head, x), NewtonsPerMeter(1, head, x), x[2], x[3], higher)
        : Math.Sqrt(NewtonsPerMeter(0, head, x) / x[2]) / (2 * Math.PI);

    internal double[] Estimates() => [.. All.Select(input => input.SiValue)];
}
