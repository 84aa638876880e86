using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Computes a <see cref="TensionWindow"/>.</summary>
internal static class WindowSolver
{
    private const double TypicalShaftLoad = 28;

    internal static TensionWindow Solve(BeltDrive drive, BeltSpan span, TensionWindowOptions options)
    {
        double a = Guard.NonNegative(options.Acceleration.MetersPerSecondSquared, nameof(options));
        Measured<double> left = options.SlackSideShare ?? Measured.FromRange(0.1, 0.3);
        Guard.NonNegative(left.SiValue, nameof(options));
        WorstStrand worst = WorstStrand.Of(drive);
        List<BudgetInput> loads = drive.LoadInputs();
        int last = loads.Count;
        UncertaintyBudget<Force> lower = Propagation.FirstOrder<Force>(
            x => drive.ForceNewtons(a, x) * (worst.Share + x[last]), [.. loads, BudgetInput.Of("share left on the slack side", left)]);

        // The limits of hubs are read at the tight and slack tensions of the worst head position.
        List<(UpperTensionLimit Kind, string Place, UncertaintyBudget<Force> Limit)> uppers =
        [
            (UpperTensionLimit.BeltStrength, "belt", Propagation.FirstOrder<Force>(
                x => (x[last] * drive.Width) - (drive.ForceNewtons(a, x) * worst.Share), [.. loads, BudgetInput.Of("working strength", drive.WorkingStrength)])),
        ];
        foreach (BeltPath belt in drive.Belts)
        {
            for (int i = 0; i < belt.Pulleys.Count; i++)
            {
                bool motor = belt.Pulleys[i].Kind == PulleyKind.Motor;
                if ((motor ? drive.ShaftLoad : drive.IdlerLoad) is not { } allowed)
                {
                    continue;
                }

                double wrap = drive.Travel.Grid().Max(head => belt.Wrap(i, head).Radians);
                if (wrap > 1e-6)
                {
                    string name = $"{belt.Pulleys[i].Name} of belt {belt.Name}";
                    uppers.Add((motor ? UpperTensionLimit.MotorShaft : UpperTensionLimit.Idler, name, Propagation.FirstOrder<Force>(
                        x => HubPretension(x[last], drive.ForceNewtons(a, x), worst.Share, wrap, motor), [.. loads, BudgetInput.Of(motor ? "shaft load" : "idler load", allowed)])));
                }
            }
        }

        (UpperTensionLimit kind, string place, UncertaintyBudget<Force> upper) = uppers.MinBy(limit => limit.Limit.Result.SiValue);
        List<Finding> findings = Findings(drive, lower.Result.SiValue, upper.Result.SiValue, place);
        return new TensionWindow(span, lower, upper, kind, place, worst, drive.LargestForce(options.Acceleration), findings);
    }

    /// <summary>On the motor T₀ + (1 − share)·F and T₀ − share·F, or the mirrored pair; on an idler both strands are the tight one: T₀ + share·F.</summary>
    private static double HubPretension(double load, double force, double share, double wrap, bool motor) => motor
        ? Math.Min(HubLoad.Pretension(load, share * force, (1 - share) * force, wrap), HubLoad.Pretension(load, (1 - share) * force, share * force, wrap))
        : (load / (2 * Math.Sin(Math.Min(wrap, Math.PI) / 2))) - (share * force);

    private static List<Finding> Findings(BeltDrive drive, double lower, double upper, string place)
    {
        List<Finding> findings = [];
        if (lower > upper)
        {
            findings.Add(new Finding(
                DriveFindings.EmptyWindow,
                FindingSeverity.Blocking,
                string.Create(CultureInfo.InvariantCulture, $"The slack side asks for at least {lower:G3} N, but the limit of the {place} allows {upper:G3} N at most: lower the acceleration or the moving mass, or take a stronger part."),
                new FindingNumber("lower", lower, "N"),
                new FindingNumber("upper", upper, "N")));
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
}
