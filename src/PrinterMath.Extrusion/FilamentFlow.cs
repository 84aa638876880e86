using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Volumetric flow of the filament that is fed, Q = π·d²/4·v, with its budget.</summary>
/// <remarks>
/// (u(Q)/Q)² = (2·u(d)/d)² + (u(v)/v)². Source: JCGM 100:2008, 5.1.6. Not to be confused with <see cref="Bead.FlowAt"/>, the flow that a bead needs.
/// </remarks>
/// <example><code>Measured&lt;VolumeFlow&gt; flow = FilamentFlow.At(diameter, feed).Result;</code></example>
public static class FilamentFlow
{
    /// <summary>Flow at a feed speed.</summary>
    /// <param name="diameter">Diameter d of the filament, greater than zero.</param>
    /// <param name="feed">Speed v of the filament, greater than zero.</param>
    /// <returns>The flow and its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Diameter or speed is not positive.</exception>
    /// <exception cref="InvalidOperationException">Diameter or speed was never measured.</exception>
    public static UncertaintyBudget<VolumeFlow> At(Measured<Length> diameter, Measured<Speed> feed)
    {
        double d = Guard.Positive(diameter.SiValue, nameof(diameter));
        double v = Guard.Positive(feed.SiValue, nameof(feed));
        double area = Math.PI / 4 * d * d;
        return Propagation.FirstOrder<VolumeFlow>(
            area * v, [BudgetInput.Of("filament diameter", diameter), BudgetInput.Of("feed speed", feed)], [Math.PI / 2 * d * v, area]);
    }
}
