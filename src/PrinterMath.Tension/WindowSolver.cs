using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Computes a <see cref="TensionWindow"/>. Inputs stand in the order: loads, drag, then share or allowed load or both.</summary>
internal sealed class WindowSolver
{
    private const double TypicalShaftLoad = 28;
    private const int DragRounds = 8;
    private readonly BeltDrive _drive;
    private readonly double _acceleration;
    private readonly WorstStrand _worst;
    private readonly List<BudgetInput> _loads;
    private readonly int _drag;
    private readonly int _last;
    private readonly BudgetInput _left;

    private WindowSolver(BeltDrive drive, TensionWindowOptions options)
    {
        _drive = drive;
        _acceleration = Guard.NonNegative(options.Acceleration.MetersPerSecondSquared, nameof(options));
        Measured<double> left = options.SlackSideShare ?? SlackSide.UsualShare;
        Guard.NonNegative(left.SiValue, nameof(options));
        _left = SlackSide.Input(left);
        _worst = WorstStrand.Of(drive);
        _loads = drive.LoadInputs();
        _drag = _loads.Count;
        _loads.AddRange(drive.Drag.Inputs);
        _last = _loads.Count;
    }

    /// <summary>Largest tension from all inputs and the allowed load.</summary>
    private delegate double UpperModel(ReadOnlySpan<double> x, double allowed);

    internal static TensionWindow Solve(BeltDrive drive, BeltSpan span, TensionWindowOptions options)
    {
        var solver = new WindowSolver(drive, options);
        UncertaintyBudget<Force> lower = Propagation.FirstOrder<Force>(x => solver.Lower(x, x[solver._last]), [.. solver._loads, solver._left]);
        List<Limit> uppers = [solver.Strength(), .. drive.Belts.SelectMany(solver.Hubs)];
        Limit binding = uppers.MinBy(limit => limit.Upper.Result.SiValue)!;
        Limit closest = uppers.MinBy(limit => limit.Opening.ProbabilityOfConformity)!;
        return new TensionWindow(
            span, lower, binding, closest, solver._worst, drive.LargestForce(options.Acceleration),
            x => solver.SlackShare(x), Findings(drive, lower.Result.SiValue, binding, closest));
    }

    /// <summary>T₀/(F + κ·T₀) − share at the estimates.</summary>
    private double SlackShare(double tension)
    {
        double[] x = [.. _loads.Select(input => input.SiValue)];
        return (tension / Transmitted(x, tension)) - _worst.Share;
    }

    private double Transmitted(ReadOnlySpan<double> x, double tension) => _drive.ForceNewtons(_acceleration, x) + (_drive.Drag.Ratio(x[_drag..]) * tension);

    /// <summary>T₀ = (F + κ·T₀)·q, q = share + left: T₀ = F·q/(1 − κ·q).</summary>
    private double Lower(ReadOnlySpan<double> x, double left)
    {
        double q = _worst.Share + left;
        return _drive.ForceNewtons(_acceleration, x) * q / (1 - (_drive.Drag.Ratio(x[_drag..]) * q));
    }

    /// <summary>T₀ + share·(F + κ·T₀) = strength.</summary>
    private Limit Strength() => Of(
        UpperTensionLimit.BeltStrength,
        "belt",
        BudgetInput.Of("working strength", _drive.WorkingStrength),
        (x, allowed) => ((allowed * _drive.Width) - (_drive.ForceNewtons(_acceleration, x) * _worst.Share)) / (1 + (_drive.Drag.Ratio(x[_drag..]) * _worst.Share)));

    private IEnumerable<Limit> Hubs(BeltPath belt)
    {
        for (int i = 0; i < belt.Pulleys.Count; i++)
        {
            bool motor = belt.Pulleys[i].Kind == PulleyKind.Motor;
            int place = i + 1;
            double wrap = _drive.Travel.Grid().Max(head => belt.WrapRadians(place, head));
            if ((motor ? _drive.ShaftLoad : _drive.IdlerLoad) is { } allowed && wrap > 1e-6)
            {
                yield return Of(
                    motor ? UpperTensionLimit.MotorShaft : UpperTensionLimit.Idler,
                    $"{belt.Pulleys[i].Name} of belt {belt.Name}",
                    BudgetInput.Of(motor ? "shaft load" : "idler load", allowed),
                    (x, load) => HubPretension(x, load, wrap, motor));
            }
        }
    }

    /// <summary>The drag depends on the tension sought, weakly: the iteration gains at least a digit a round.</summary>
    private double HubPretension(ReadOnlySpan<double> x, double load, double wrap, bool motor)
    {
        double tension = 0;
        for (int round = 0; round < DragRounds; round++)
        {
            tension = HubPretension(load, Transmitted(x, Math.Max(0, tension)), _worst.Share, wrap, motor);
        }

        return tension;
    }

    /// <summary>On the motor T₀ + (1 − share)·F and T₀ − share·F, or the mirrored pair; on an idler both strands are the tight one: T₀ + share·F.</summary>
    private static double HubPretension(double load, double force, double share, double wrap, bool motor) => motor
        ? Math.Min(HubLoad.Pretension(load, share * force, (1 - share) * force, wrap), HubLoad.Pretension(load, (1 - share) * force, share * force, wrap))
        : (load / (2 * Math.Sin(Math.Min(wrap, Math.PI) / 2))) - (share * force);

    /// <summary>A limit and the room between it and the lower limit, in which loads stand once.</summary>
    private Limit Of(UpperTensionLimit kind, string place, BudgetInput allowed, UpperModel model)
    {
        UncertaintyBudget<Force> upper = Propagation.FirstOrder<Force>(x => model(x, x[_last]), [.. _loads, allowed]);
        UncertaintyBudget<Force> room = Propagation.FirstOrder<Force>(x => model(x, x[_last + 1]) - Lower(x, x[_last]), [.. _loads, _left, allowed]);
        return new Limit(kind, place, upper, room, Tolerance.AtLeast(Force.Zero).Judge(room));
    }

    private static List<Finding> Findings(BeltDrive drive, double lower, Limit binding, Limit closest)
    {
        List<Finding> findings = [];
        double upper = binding.Upper.Result.SiValue;
        FindingNumber[] both = [new("lower", lower, "N"), new("upper", upper, "N")];
        if (closest.Opening.Conclusion == Conclusion.Outside)
        {
            findings.Add(new Finding(
                DriveFindings.EmptyWindow,
                FindingSeverity.Blocking,
                string.Create(CultureInfo.InvariantCulture, $"The slack side asks for at least {lower:G3} N, but the limit of the {closest.Place} allows {closest.Upper.Result.SiValue:G3} N at most: lower the acceleration or the moving mass, or take a stronger part."),
                both));
        }
        else if (closest.Opening.Conclusion == Conclusion.Undecided)
        {
            findings.Add(new Finding(
                DriveFindings.UndecidedWindow,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"Whether any tension serves is open: at least {lower:G3} N, and the limit of the {closest.Place} at {closest.Upper.Result.SiValue:G3} N; to decide, {closest.Opening.Limitation}."),
                [.. both, new("probability", closest.Opening.ProbabilityOfConformity, "1")]));
        }

        if (upper <= 0)
        {
            findings.Add(new Finding(
                DriveFindings.Overloaded,
                FindingSeverity.Blocking,
                $"The transmitted force alone is too much for the {binding.Place}: lower the acceleration or the moving mass, or take a stronger part.",
                both));
        }

        double pull = HubLoad.Newtons(lower, lower, drive.Belts[0].MotorWrap(drive.Travel.Middle));
        if (drive.ShaftLoad is null && pull > TypicalShaftLoad)
        {
            findings.Add(new Finding(
                DriveFindings.ShaftLoadUnknown,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"The least tension pulls the motor shaft with {pull:G3} N, above the {TypicalShaftLoad} N that are typical (common practice, no source): look up the maker's radial load."),
                new FindingNumber("shaftLoad", pull, "N"),
                new FindingNumber("typical", TypicalShaftLoad, "N")));
        }

        return findings;
    }

    internal sealed record Limit(
        UpperTensionLimit Kind, string Place, UncertaintyBudget<Force> Upper, UncertaintyBudget<Force> Room, Verdict<Force> Opening);
}
