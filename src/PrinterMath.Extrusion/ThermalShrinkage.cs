using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Shrinkage to expect from cooling alone: a prior idea of the scale of an axis, which <see cref="DimensionalFit"/> measures.</summary>
/// <remarks>
/// s = −α·(T_solid − T_room): the plastic keeps its length from where it turns solid, the glass transition of an amorphous one. Printed parts shrink less where their
/// own cold layers hold them, and more across what shrinks last, so half to double of it is no surprise. α of ABS is about 90·10⁻⁶/K with T_g near 105 to 115 °C.
/// Source: Crawford, Plastics Engineering, table 1.8, for such values; the formula is the definition of α taken as constant.
/// </remarks>
/// <example><code>Measured&lt;double&gt; s = ThermalShrinkage.Scale(expansion, glassTransition, room).Result;   // about −0.008 for ABS</code></example>
public static class ThermalShrinkage
{
    /// <summary>Relative scale error s, a ratio: negative, since the part ends up too short.</summary>
    /// <param name="expansion">Coefficient of linear thermal expansion α, greater than zero.</param>
    /// <param name="solid">Temperature at which the plastic turns solid, above the room.</param>
    /// <param name="room">Temperature at which the part is measured.</param>
    /// <returns>The scale error and its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">α is not positive, or the temperatures are not in order.</exception>
    /// <exception cref="InvalidOperationException">An input was never measured.</exception>
    public static UncertaintyBudget<double> Scale(Measured<CoefficientOfThermalExpansion> expansion, MeasuredTemperature solid, MeasuredTemperature room)
    {
        double alpha = Guard.Positive(expansion.SiValue, nameof(expansion));
        double difference = Guard.Positive(solid.Value.Kelvins - room.Value.Kelvins, nameof(solid));
        return Propagation.FirstOrder<double>(
            -alpha * difference,
            [BudgetInput.Of("thermal expansion", expansion), BudgetInput.Of("solidification temperature", solid), BudgetInput.Of("room temperature", room)],
            [-difference, -alpha, alpha]);
    }
}
