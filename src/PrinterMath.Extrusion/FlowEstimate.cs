using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>One estimate of what the present flow has to be multiplied by, from a wall, from a weighed part, or from the feed.</summary>
/// <remarks>
/// <para>From a wall the ratio is A(wanted width)/A(measured width) of the <see cref="Bead"/> at the layer height, not the ratio of the widths: the flow
/// is not proportional to the width (see <see cref="Bead.AreaSensitivity"/>).</para>
/// <para>Caution: let the part cool; hot end and bed burn. Fumes need ventilation.</para>
/// </remarks>
/// <example><code>
/// FlowEstimate wall = FlowEstimate.FromWall(bead, CaliperReadings.Combine(readings, step, instrument).Result);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FlowEstimate
{
    private const double Implausible = 1.5;
    private readonly UncertaintyBudget<double>? _budget;
    private readonly Finding? _finding;

    private FlowEstimate(string name, UncertaintyBudget<double>? budget, Finding? finding)
    {
        Name = name;
        _budget = budget;
        _finding = finding;
    }

    /// <summary>Where the estimate comes from; unique within a combination.</summary>
    public string Name { get; }

    /// <summary>What was noticed, see <see cref="ExtrusionFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _finding is null ? [] : [_finding];

    /// <summary>Factor on the present flow, with its budget.</summary>
    /// <exception cref="IndeterminateException">The wall is too thin for the number of beads and their spacing.</exception>
    public UncertaintyBudget<double> Ratio => _budget ?? throw new IndeterminateException(_finding!);

    /// <summary>From the thickness of a printed wall.</summary>
    /// <param name="target">The bead that was commanded.</param>
    /// <param name="thickness">Measured thickness of the wall, greater than zero; see <see cref="CaliperReadings"/>.</param>
    /// <param name="options">Number of beads, spacing and crests; null for a single bead.</param>
    /// <returns>The estimate.</returns>
    /// <remarks>
    /// w = thickness − (n − 1)·spacing − crests; ratio = A(w_target)/A(w). The model lets the whole surplus of a wall appear at its two faces.
    /// Print it at the speed and the layer height that count, away from corners and the seam.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="InvalidOperationException">The target is the default, or the thickness was never measured.</exception>
    public static FlowEstimate FromWall(Bead target, Measured<Length> thickness, WallOptions? options = null)
    {
        options ??= new WallOptions();
        double measured = Guard.Positive(thickness.SiValue, nameof(thickness));
        int beads = Guard.AtLeast(options.Beads, 1);
        Length spacing = options.Spacing ?? (beads > 1 ? target.FillingSpacing : target.Width);
        double between = target.WallThickness(beads, spacing).Meters - target.WidthMeters;
        Measured<Length> crests = options.CrestHeight ?? Measured.Exact(Length.Zero);
        Guard.NonNegative(crests.SiValue, nameof(options.CrestHeight));
        double height = target.HeightMeters, width = measured - between - crests.SiValue;
        string name = options.Name ?? (beads == 1 ? "wall of one bead" : string.Create(CultureInfo.InvariantCulture, $"wall of {beads} beads"));
        if (width < height)
        {
            return new FlowEstimate(name, null, new Finding(
                ExtrusionFindings.FlowWallTooThin,
                FindingSeverity.Blocking,
                string.Create(CultureInfo.InvariantCulture, $"The wall leaves {width * 1e3:G3} mm for a bead {height * 1e3:G3} mm high: check unit, number of beads and spacing."),
                new FindingNumber("beadWidth", width, "m"),
                new FindingNumber("beadHeight", height, "m")));
        }

        double area = Bead.SquareMeters(width, height), ratio = target.AreaSquareMeters / area;
        double sensitivity = -ratio * height / area;
        return Of(name, Propagation.FirstOrder<double>(
            ratio, [BudgetInput.Of("wall thickness", thickness), BudgetInput.Of("layer crests", crests)], [sensitivity, -sensitivity]));
    }

    /// <summary>From a weighed part: commanded mass over weighed mass.</summary>
    /// <param name="commanded">Volume of plastic that was commanded for the part, greater than zero.</param>
    /// <param name="density">Density of the solid filament, greater than zero.</param>
    /// <param name="mass">Weighed mass of the part, greater than zero.</param>
    /// <returns>The estimate; it needs no bead model, but the density must be known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    /// <exception cref="InvalidOperationException">Density or mass was never measured.</exception>
    public static FlowEstimate FromMass(Volume commanded, Measured<Density> density, Measured<Mass> mass)
    {
        double v = Guard.Positive(commanded.CubicMeters, nameof(commanded));
        double rho = Guard.Positive(density.SiValue, nameof(density));
        double m = Guard.Positive(mass.SiValue, nameof(mass));
        return Of("weighed part", Propagation.FirstOrder<double>(
            v * rho / m, [BudgetInput.Of("density", density), BudgetInput.Of("mass", mass)], [v / m, -v * rho / (m * m)]));
    }

    /// <summary>From the feed drive, when its constant is left as it is and the flow takes up its error.</summary>
    /// <param name="feed">The calibration.</param>
    /// <returns>The estimate.</returns>
    /// <exception cref="IndeterminateException">The calibration holds no answer.</exception>
    public static FlowEstimate FromFeed(FeedCalibration feed) => Of("feed", Guard.NotNull(feed).Correction);

    /// <summary>Factor on the present flow, if the data hold one.</summary>
    /// <param name="ratio">The factor, or the default.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetRatio(out Measured<double> ratio)
    {
        ratio = _budget?.Result ?? default;
        return _budget is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Name and factor, or the finding in its place.</returns>
    public override string ToString() => $"{Name}: {_budget?.Result.ToString() ?? _finding!.ToString()}";

    private static FlowEstimate Of(string name, UncertaintyBudget<double> budget)
    {
        double ratio = budget.Result.SiValue;
        return new FlowEstimate(name, budget, ratio is > 1 / Implausible and < Implausible ? null : new Finding(
            ExtrusionFindings.FlowImplausible,
            FindingSeverity.Caution,
            string.Create(CultureInfo.InvariantCulture, $"The flow would have to be multiplied by {ratio:G3}: check units, number of beads, spacing and density."),
            new FindingNumber("ratio", ratio, "1")));
    }
}
