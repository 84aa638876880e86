using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>An axis, or a pair of axes, driven by belts: ways of the belts, moving masses, friction, and what belts and bearings stand.</summary>
/// <remarks>On a crossed drive all answers are for one belt, the worse one; both are to carry the same tension. On single axes each belt has a drive and a window of its own.</remarks>
/// <example><code>
/// BeltDrive drive = BeltDrive.Crossed(layout, new BeltDriveOptions { MassX = head, MassY = beam });
/// TensionWindow window = drive.TensionWindow(span, new TensionWindowOptions { Acceleration = Acceleration.FromMetersPerSecondSquared(10) });
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class BeltDrive
{
    private readonly ReadOnlyCollection<BeltPath> _belts;

    private BeltDrive(bool crossed, HeadTravel travel, BeltDriveOptions options, params BeltPath[] belts)
    {
        IsCrossed = crossed;
        Travel = travel;
        _belts = Array.AsReadOnly(belts);
        MassX = Positive(options.MassX ?? Measured.FromRange(Mass.FromKilograms(0.2), Mass.FromKilograms(crossed ? 0.7 : 1.5)));
        MassY = Positive(options.MassY ?? Measured.FromRange(Mass.FromKilograms(0.5), Mass.FromKilograms(1.5)));
        Friction = options.Friction ?? Measured.FromRange(Force.FromNewtons(0.5), Force.FromNewtons(4));
        Guard.NonNegative(Friction.SiValue, nameof(options));
        Width = Guard.Positive(options.BeltWidth.Meters, nameof(options));
        WorkingStrength = Positive(options.WorkingStrength ?? Measured.FromRange(ForcePerLength.FromNewtonsPerMillimeter(4), ForcePerLength.FromNewtonsPerMillimeter(15)));
        IdlerLoad = Positive(options.IdlerLoad ?? Measured.FromRange(Force.FromNewtons(80), Force.FromNewtons(300)));
        ShaftLoad = options.ShaftLoad is { } load ? Positive(load) : null;
        PulleyInertia = Positive(options.PulleyInertia ?? Measured.FromRange(MassMomentOfInertia.FromKilogramSquareMeters(1e-7), MassMomentOfInertia.FromKilogramSquareMeters(1e-6)));
        Drag = BeltDrag.Worst(belts, travel, options);
    }

    /// <summary>Whether two motors share each movement.</summary>
    public bool IsCrossed { get; }

    /// <summary>The belts: two of a crossed drive, else one.</summary>
    public IReadOnlyList<BeltPath> Belts => _belts;

    /// <summary>Where the head goes.</summary>
    public HeadTravel Travel { get; }

    /// <summary>Mass that moves along x, as stated or the default range.</summary>
    public Measured<Mass> MassX { get; }

    /// <summary>Mass that moves along y, as stated or the default range; not used on a single axis.</summary>
    public Measured<Mass> MassY { get; }

    /// <summary>Friction at one belt, as stated or the default range.</summary>
    public Measured<Force> Friction { get; }

    internal double Width { get; }

    internal Measured<MassMomentOfInertia> PulleyInertia { get; }

    internal BeltDrag Drag { get; }

    internal Measured<ForcePerLength> WorkingStrength { get; }

    internal Measured<Force> IdlerLoad { get; }

    internal Measured<Force>? ShaftLoad { get; }

    /// <summary>A crossed two-motor drive.</summary>
    /// <param name="layout">Both belts.</param>
    /// <param name="options">What else is known; null for the default ranges.</param>
    /// <returns>The drive.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static BeltDrive Crossed(CrossedLayout layout, BeltDriveOptions? options = null) =>
        new(true, Guard.NotNull(layout).Travel, options ?? new BeltDriveOptions(), layout.BeltA, layout.BeltB);

    /// <summary>An axis with a motor of its own.</summary>
    /// <param name="layout">The belt.</param>
    /// <param name="options">What else is known; null for the default ranges.</param>
    /// <returns>The drive.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static BeltDrive SingleAxis(SingleAxisLayout layout, BeltDriveOptions? options = null) =>
        new(false, Guard.NotNull(layout).Travel, options ?? new BeltDriveOptions(), layout.Belt);

    /// <summary>Largest force that a belt transmits at an acceleration: worst over direction, friction included.</summary>
    /// <param name="acceleration">Magnitude of the acceleration, zero or more.</param>
    /// <returns>The force with its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The acceleration is negative.</exception>
    public UncertaintyBudget<Force> LargestForce(Acceleration acceleration)
    {
        double a = Guard.NonNegative(acceleration.MetersPerSecondSquared, nameof(acceleration));
        return Propagation.FirstOrder<Force>(x => ForceNewtons(a, x), LoadInputs());
    }

    /// <summary>Friction that a tension causes at one belt, worst place of the head: bearings under their hub loads, bending of the belt, pins that it slides over.</summary>
    /// <param name="tension">Tension at rest, zero or more.</param>
    /// <returns>κ·T₀ with its budget, κ = µ_b·Σ(d/r)·sin(θ/2) + c·n + (e^(µ_s·Σθ) − 1) over bearings, pulleys and pins.</returns>
    /// <remarks>Source: bearing friction moment ½·µ·R·d as in bearing makers' catalogues (from memory); pins L. Euler 1769, J. A. Eytelwein 1808.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The tension is negative.</exception>
    public UncertaintyBudget<Force> DragAt(Force tension)
    {
        double t = Guard.NonNegative(tension.Newtons, nameof(tension));
        return Propagation.FirstOrder<Force>(x => t * Drag.Ratio(x), Drag.Inputs);
    }

    /// <summary>What a move asks of the motor against what the motor can give.</summary>
    /// <param name="motor">The motor, one on each belt.</param>
    /// <param name="speed">Speed v of the head, zero or more.</param>
    /// <param name="acceleration">Acceleration a of the head along its way, zero or more.</param>
    /// <param name="options">Direction, tension and the share of the torque that may be used; null for the defaults.</param>
    /// <returns>Demand, supply and the verdict.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public MotorMargin MotorMargin(StepperMotor motor, Speed speed, Acceleration acceleration, MotorMarginOptions? options = null) =>
        MotorDemand.For(this, motor, speed, options, Guard.NonNegative(acceleration.MetersPerSecondSquared, nameof(acceleration)))
            .MarginAt(acceleration.MetersPerSecondSquared);

    /// <summary>Largest acceleration that the motors give at a speed without passing the usable share of their torque.</summary>
    /// <param name="motor">The motor, one on each belt.</param>
    /// <param name="speed">Speed v of the head, zero or more.</param>
    /// <param name="options">Direction, tension and the share of the torque that may be used; null for the defaults.</param>
    /// <returns>The acceleration with its budget, or a finding when friction takes all the torque.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public AccelerationLimit LargestAcceleration(StepperMotor motor, Speed speed, MotorMarginOptions? options = null) =>
        MotorDemand.For(this, motor, speed, options).LargestAcceleration();

    /// <summary>The tension at which the largest acceleration is available at a speed: less tension and the slack side goes slack first, more and friction eats the torque.</summary>
    /// <param name="motor">The motor, one on each belt.</param>
    /// <param name="speed">Speed v of the head, zero or more.</param>
    /// <param name="slackSideShare">As <see cref="TensionWindowOptions.SlackSideShare"/>.</param>
    /// <param name="options">Direction and the share of the torque that may be used; a stated tension is not used.</param>
    /// <returns>Tension and acceleration with their budgets, or a finding when friction takes all the torque.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public TensionOptimum BestTension(StepperMotor motor, Speed speed, Measured<double>? slackSideShare = null, MotorMarginOptions? options = null) =>
        MotorDemand.For(this, motor, speed, options).BestTension(slackSideShare ?? SlackSide.UsualShare);

    /// <summary>Largest acceleration that a tension serves: past it the slack side keeps less than its share, and teeth may jump.</summary>
    /// <param name="tension">Tension at rest, greater than zero.</param>
    /// <param name="slackSideShare">As <see cref="TensionWindowOptions.SlackSideShare"/>.</param>
    /// <returns>The acceleration with its budget, or a finding when friction alone takes the share.</returns>
    /// <remarks>
    /// a = (T₀·(1/q − κ) − F_guides)/m, q the worst share of the strands plus what is to be left on the slack side, m the mass at the belt: the lower limit of
    /// <see cref="TensionWindow(BeltSpan, TensionWindowOptions)"/> solved for a. It says nothing of motors, see <see cref="LargestAcceleration"/>.
    /// </remarks>
    /// <example><code>AccelerationLimit served = drive.AccelerationServedBy(span.TensionFor(heard).Value);</code></example>
    /// <exception cref="ArgumentOutOfRangeException">The tension is not positive, the share negative.</exception>
    /// <exception cref="InvalidOperationException">The tension was never measured.</exception>
    public AccelerationLimit AccelerationServedBy(Measured<Force> tension, Measured<double>? slackSideShare = null) =>
        SlackSide.Serves(this, tension, [BudgetInput.Of("tension", tension)], [1], slackSideShare ?? SlackSide.UsualShare);

    /// <summary>Largest acceleration that a tension serves, from the budget of the tension, so that a verdict names what to improve.</summary>
    /// <param name="tension">Tension at rest with its budget, greater than zero.</param>
    /// <param name="slackSideShare">As <see cref="TensionWindowOptions.SlackSideShare"/>.</param>
    /// <returns>As <see cref="AccelerationServedBy(Measured{Force}, Measured{double}?)"/>.</returns>
    /// <example><code>AccelerationLimit served = drive.AccelerationServedBy(span.TensionFor(heard).Budget);</code></example>
    /// <exception cref="ArgumentOutOfRangeException">The tension is not positive, the share negative.</exception>
    public AccelerationLimit AccelerationServedBy(UncertaintyBudget<Force> tension, Measured<double>? slackSideShare = null)
    {
        (List<BudgetInput> inputs, List<double> sensitivities) = KeptCorrelations.Of(Guard.NotNull(tension));
        return SlackSide.Serves(this, tension.Result, inputs, sensitivities, slackSideShare ?? SlackSide.UsualShare);
    }

    /// <summary>The tensions that serve an acceleration.</summary>
    /// <param name="span">The span that the person plucks, for the frequencies.</param>
    /// <param name="options">What the tension must serve.</param>
    /// <returns>The window.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range, or somewhere in the travel pulleys overlap or lose the belt.</exception>
    public TensionWindow TensionWindow(BeltSpan span, TensionWindowOptions options) => WindowSolver.Solve(this, Guard.NotNull(span), Guard.NotNull(options));

    /// <summary>How stiffly belts and motors hold the head at one place.</summary>
    /// <param name="head">Where the head is.</param>
    /// <param name="options">Belt and motor as springs; null for the default ranges.</param>
    /// <returns>Stiffness, modes and lost motion.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range, or with the head there pulleys overlap or lose the belt.</exception>
    public AxisResponse AxesAt(HeadPosition head, AxisOptions? options = null) => new(new AxisSprings(this, options ?? new AxisOptions()), IsCrossed, head);

    /// <summary>Expected first natural frequency over the travel: what a resonance measurement should find if belts and motors are what is softest.</summary>
    /// <param name="options">Belt and motor as springs; null for the default ranges.</param>
    /// <returns>Where it is lowest and where highest.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range, or somewhere in the travel pulleys overlap or lose the belt.</exception>
    public FrequencyRange FrequencyOverTravel(AxisOptions? options = null)
    {
        var springs = new AxisSprings(this, options ?? new AxisOptions());
        double[] x = springs.Estimates();
        HeadPosition[] heads = [.. Travel.Grid()];
        return new FrequencyRange(
            new AxisResponse(springs, IsCrossed, heads.MinBy(head => springs.Hertz(head, x))),
            new AxisResponse(springs, IsCrossed, heads.MaxBy(head => springs.Hertz(head, x))));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Kind, masses and friction.</returns>
    public override string ToString() => $"{(IsCrossed ? "crossed drive" : "single axis")}, {MassX}, friction {Friction}";

    internal List<BudgetInput> LoadInputs() =>
        IsCrossed
            ? [BudgetInput.Of("mass along x", MassX), BudgetInput.Of("mass along y", MassY), BudgetInput.Of("friction", Friction)]
            : [BudgetInput.Of("moving mass", MassX), BudgetInput.Of("friction", Friction)];

    /// <summary>Force at a belt from the first members of <see cref="LoadInputs"/>, guide friction included, drag of the tension not.</summary>
    internal double ForceNewtons(double acceleration, ReadOnlySpan<double> x) =>
        (acceleration * MassAtBelt(x)) + FrictionNewtons(x);

    internal double MassAtBelt(ReadOnlySpan<double> x) => IsCrossed ? DriveForce.CrossedMass(x[0], x[1], 0) : x[0];

    internal double FrictionNewtons(ReadOnlySpan<double> x) => x[IsCrossed ? 2 : 1];

    private static Measured<T> Positive<T>(Measured<T> measured)
        where T : struct
    {
        Guard.Positive(measured.SiValue, nameof(BeltDriveOptions));
        return measured;
    }
}
