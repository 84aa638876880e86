using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>How much a part grows in height between measuring and printing, α·L·(T_printing − T_measuring): positive when it is hotter in printing.</summary>
/// <remarks>
/// One coefficient and one temperature stand for the whole length: for a part with a gradient use its mean temperature. Typical α: steel 12, brass 19, aluminium 23, borosilicate
/// glass 3.3 (in 10⁻⁶/K; handbook values, from memory): give them an uncertainty. Source: definition of the coefficient of linear thermal expansion.
/// </remarks>
/// <example><code>ThermalGrowth nozzle = ThermalGrowth.Of(brass, lengthBelowClamp, measuredAt: room, printedAt: hot);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ThermalGrowth
{
    private ThermalGrowth(UncertaintyBudget<Length> budget) => Budget = budget;

    /// <summary>The growth and where its uncertainty comes from.</summary>
    public UncertaintyBudget<Length> Budget { get; }

    /// <summary>The growth.</summary>
    public Measured<Length> Growth => Budget.Result;

    /// <summary>The growth of a part.</summary>
    /// <param name="expansion">Coefficient of linear thermal expansion α, from −10⁻⁴ to 10⁻³ per kelvin.</param>
    /// <param name="length">Length L of the part along z, from where it is held; greater than zero and at most 1 m.</param>
    /// <param name="measuredAt">Its temperature when the height was measured.</param>
    /// <param name="printedAt">Its temperature in printing.</param>
    /// <returns>The growth.</returns>
    /// <exception cref="ArgumentOutOfRangeException">α or L is out of range: check their units.</exception>
    /// <exception cref="InvalidOperationException">An input was never measured.</exception>
    public static ThermalGrowth Of(
        Measured<CoefficientOfThermalExpansion> expansion, Measured<Length> length, MeasuredTemperature measuredAt, MeasuredTemperature printedAt)
    {
        double alpha = Guard.Between(expansion.SiValue, -1e-4, 1e-3, nameof(expansion));
        double l = length.SiValue is > 0 and <= 1 ? length.SiValue : throw Guard.Out(nameof(length), length, "greater than zero and at most 1 m");
        double rise = printedAt.Value.Kelvins - measuredAt.Value.Kelvins;
        return new ThermalGrowth(Propagation.FirstOrder<Length>(
            alpha * l * rise,
            [
                BudgetInput.Of("thermal expansion", expansion),
                BudgetInput.Of("length", length),
                BudgetInput.Of("temperature when printing", printedAt),
                BudgetInput.Of("temperature when measured", measuredAt),
            ],
            [l * rise, alpha * rise, alpha * l, -alpha * l]));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The growth.</returns>
    public override string ToString() => Growth.ToString();
}
