using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Height zero z₀: the height of the axis, positive upwards, at which the nozzle touches the surface at printing temperature.</summary>
/// <remarks>
/// <para>z₀ = z − t − o + g_n + g_b: z the height that the method found, t the gauge's thickness, o the nozzle's height above the surface when a probe triggers, g_n the downward
/// growth of the nozzle and g_b the upward growth of the bed between measuring and printing. Each has its line in the budget. With the axis at h the gap in printing is h − z₀.</para>
/// <para>Not in it: a bed that bends when heated, ooze under the nozzle, and the tilt of the bed.</para>
/// <para>Caution: set a new zero from above, with the gap in view; a sign that is wrong drives the nozzle into the bed. Hot parts burn.</para>
/// <para>Source: geometry; JCGM 100:2008 (GUM), clause 5, for the budget.</para>
/// </remarks>
/// <example><code>
/// HeightZero zero = HeightZero.From(reading.SurfaceHeight, new HeightZeroOptions { NozzleGrowth = nozzle, BedGrowth = bed });
/// Verdict&lt;Length&gt; verdict = zero.JudgeGap(axisHeight, Tolerance.Around(Length.FromMillimeters(0.2), Length.FromMillimeters(0.03)));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class HeightZero
{
    private const double LargestGrowth = 1e-3;
    private readonly BudgetInput[] _inputs;
    private readonly double[] _signs;

    private HeightZero(BudgetInput[] inputs, double[] signs, Finding[] findings)
    {
        _inputs = inputs;
        _signs = signs;
        Findings = Array.AsReadOnly(findings);
        Budget = Propagation.FirstOrder<Length>(Sum(), inputs, signs);
    }

    /// <summary>z₀ and the share of each part in its uncertainty.</summary>
    public UncertaintyBudget<Length> Budget { get; }

    /// <summary>The height z₀.</summary>
    public Measured<Length> Height => Budget.Result;

    /// <summary>What is to be added to the height that the method found, z₀ − z.</summary>
    public Measured<Length> Offset => _inputs.Length == 1
        ? Measured.Exact(Length.Zero)
        : Propagation.FirstOrder<Length>(Sum() - _inputs[0].SiValue, [.. _inputs.Skip(1)], _signs.AsSpan(1)).Result;

    /// <summary>What was noticed: <c>heightZero.growth.suspect</c> (caution) for a growth above 1 mm.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Height zero from the height that a method found.</summary>
    /// <param name="found">Height z of the axis at which contact or trigger was found.</param>
    /// <param name="options">What stands between; null for nothing, as in bare contact at printing temperature.</param>
    /// <returns>The height zero.</returns>
    /// <exception cref="ArgumentException">The height was never measured.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The gauge is negative, or the probe's offset beyond 50 mm.</exception>
    public static HeightZero From(Measured<Length> found, HeightZeroOptions? options = null)
    {
        options ??= new HeightZeroOptions();
        if (!found.HasValue)
        {
            throw Guard.Refused(nameof(found), "found was never measured.");
        }

        var inputs = new List<BudgetInput> { BudgetInput.Of("height found", found) };
        var signs = new List<double> { 1 };
        var findings = new List<Finding>();
        if (options.GaugeThickness.HasValue)
        {
            Guard.Between(options.GaugeThickness.SiValue, 0, 0.05, "options.GaugeThickness");
            inputs.Add(BudgetInput.Of("gauge thickness", options.GaugeThickness));
            signs.Add(-1);
        }

        if (options.NozzleAboveTrigger.HasValue)
        {
            Guard.Between(options.NozzleAboveTrigger.SiValue, -0.05, 0.05, "options.NozzleAboveTrigger");
            inputs.Add(BudgetInput.Of("nozzle above trigger", options.NozzleAboveTrigger));
            signs.Add(-1);
        }

        AddGrowth("growth of the nozzle", options.NozzleGrowth);
        AddGrowth("growth of the bed", options.BedGrowth);
        return new HeightZero([.. inputs], [.. signs], [.. findings]);

        void AddGrowth(string name, ThermalGrowth? growth)
        {
            if (growth is null)
            {
                return;
            }

            inputs.Add(BudgetInput.Of(name, growth.Growth));
            signs.Add(1);
            if (Math.Abs(growth.Growth.SiValue) > LargestGrowth)
            {
                findings.Add(new Finding(
                    "heightZero.growth.suspect",
                    FindingSeverity.Caution,
                    FormattableString.Invariant($"The {name} of {growth.Growth.SiValue * 1e3:0.##} mm is more than a printer's parts show: are expansion, length and temperatures in the units that were said?"),
                    new FindingNumber("growth", growth.Growth.SiValue, "m")));
            }
        }
    }

    /// <summary>Gap between nozzle and surface in printing with the axis at a height, h − z₀; negative when the nozzle would be driven into the bed.</summary>
    /// <param name="axisHeight">Height h of the axis, taken as exact.</param>
    /// <returns>The gap and its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not finite.</exception>
    public UncertaintyBudget<Length> Gap(Length axisHeight) => Propagation.FirstOrder<Length>(
        Guard.Finite(axisHeight.Meters, nameof(axisHeight)) - Sum(), _inputs, [.. _signs.Select(sign => -sign)]);

    /// <summary>Whether the gap of the first layer is as wanted.</summary>
    /// <param name="axisHeight">Height of the axis in the first layer.</param>
    /// <param name="gap">The accepted gap.</param>
    /// <returns>The verdict; when undecided it says what limits it.</returns>
    /// <remarks>Guarded at a specific risk of 5 %. Source: JCGM 106:2012, clause 8.</remarks>
    /// <exception cref="ArgumentNullException">No tolerance.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The height is not finite.</exception>
    public Verdict<Length> JudgeGap(Length axisHeight, Tolerance<Length> gap) => Guard.NotNull(gap).Judge(Gap(axisHeight));

    /// <summary>Invariant text.</summary>
    /// <returns>The height.</returns>
    public override string ToString() => Height.ToString();

    private double Sum()
    {
        double sum = 0;
        for (int i = 0; i < _inputs.Length; i++)
        {
            sum += _signs[i] * _inputs[i].SiValue;
        }

        return sum;
    }
}
