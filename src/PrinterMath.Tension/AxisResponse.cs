using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>How stiffly belts and motors hold the head at one place: stiffness, modes, lost motion, deflection, with their budgets.</summary>
/// <remarks>
/// Static springs, no damping, the frame rigid: frequencies are what to expect of the drive alone, an input to a resonance measurement and no substitute for it. Formulas at
/// <see cref="AxisStiffness"/> and <see cref="CrossedModes"/>.
/// </remarks>
/// <example><code>
/// AxisResponse middle = drive.AxesAt(layout.Travel.Middle, new AxisOptions { MotorTorque = motor.TorqueAtRunCurrent });
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class AxisResponse
{
    private readonly AxisSprings _springs;
    private readonly bool _crossed;

    internal AxisResponse(AxisSprings springs, bool crossed, HeadPosition head)
    {
        _springs = springs;
        _crossed = crossed;
        Head = head;
        Stiffness = Propagation.FirstOrder<ForcePerLength>(x => springs.Direct(head, x), springs.Springs);
        LowestFrequency = Propagation.FirstOrder<Frequency>(x => springs.Hertz(head, x), springs.WithoutFriction);
        LostMotion = Propagation.FirstOrder<Length>(x => (crossed ? 2 : 1) * x[2] / springs.Direct(head, x), springs.WithoutMass);
        Coupling = crossed
            ? Propagation.FirstOrder<ForcePerLength>(x => springs.NewtonsPerMeter(0, head, x) - springs.NewtonsPerMeter(1, head, x), springs.Springs)
            : null;
        HighestFrequency = crossed ? Propagation.FirstOrder<Frequency>(x => springs.Hertz(head, x, true), springs.WithoutFriction) : null;
    }

    /// <summary>Where the head is.</summary>
    public HeadPosition Head { get; }

    /// <summary>Stiffness along x, and along y of a crossed drive: k_xx = k_yy = k_A + k_B.</summary>
    public UncertaintyBudget<ForcePerLength> Stiffness { get; }

    /// <summary>k_xy = k_A − k_B of a crossed drive, else null.</summary>
    public UncertaintyBudget<ForcePerLength>? Coupling { get; }

    /// <summary>Natural frequency of the axis, of a crossed drive that of the lower mode.</summary>
    public UncertaintyBudget<Frequency> LowestFrequency { get; }

    /// <summary>Natural frequency of a crossed drive's higher mode, else null.</summary>
    public UncertaintyBudget<Frequency>? HighestFrequency { get; }

    /// <summary>F_friction/k: the head stops anywhere within ± this of where it should, coming from either side; along x or y of a crossed drive, both belts dragging.</summary>
    /// <remarks>A dial indicator sees twice this as reversal, see <see cref="ReversalError"/>.</remarks>
    public UncertaintyBudget<Length> LostMotion { get; }

    /// <summary>Static deflection along x under a force, on a crossed drive with the coupling: x = (k_xx·F_x − k_xy·F_y)/(4·k_A·k_B).</summary>
    /// <param name="forceX">Force along x.</param>
    /// <param name="forceY">Force along y; not used on a single axis.</param>
    /// <returns>The deflection with its budget.</returns>
    public UncertaintyBudget<Length> DeflectionX(Force forceX, Force forceY) => Deflection(forceX.Newtons, forceY.Newtons);

    /// <summary>Static deflection along y of a crossed drive under a force: y = (k_xx·F_y − k_xy·F_x)/(4·k_A·k_B).</summary>
    /// <param name="forceX">Force along x.</param>
    /// <param name="forceY">Force along y.</param>
    /// <param name="deflection">The deflection with its budget, or null on a single axis.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetDeflectionY(Force forceX, Force forceY, [NotNullWhen(true)] out UncertaintyBudget<Length>? deflection)
    {
        deflection = _crossed ? Deflection(forceY.Newtons, forceX.Newtons) : null;
        return _crossed;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Frequencies and where.</returns>
    public override string ToString() => HighestFrequency is null
        ? $"{LowestFrequency.Result} with the head at {Head}"
        : $"{LowestFrequency.Result} and {HighestFrequency.Result} with the head at {Head}";

    private UncertaintyBudget<Length> Deflection(double along, double across) => Propagation.FirstOrder<Length>(
        x =>
        {
            double a = _springs.NewtonsPerMeter(0, Head, x);
            if (!_crossed)
            {
                return along / a;
            }

            double b = _springs.NewtonsPerMeter(1, Head, x);
            return (((a + b) * along) - ((a - b) * across)) / (4 * a * b);
        },
        _springs.Springs);
}
