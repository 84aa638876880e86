using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>
/// A height found without a probe, heights positive upwards: the nozzle (or the gauge under it) is clear of the surface at one height and touches at the next lower one.
/// </summary>
/// <remarks>
/// <para>The contact lies somewhere between the two, no place more likely than another: z = (clear + touching)/2 − t with
/// u² = (clear − touching)²/12 + u²(t), t the thickness of the gauge between nozzle and surface. Light seen under the nozzle is a gauge without thickness.</para>
/// <para>Caution: approach slowly and in small steps; a hot nozzle burns, and a nozzle driven into the bed damages both.</para>
/// <para>Source: JCGM 100:2008 (GUM), 4.3.7, equations (6) and (7).</para>
/// </remarks>
/// <example><code>
/// var paper = Measured.FromRange(Length.FromMillimeters(0.09), Length.FromMillimeters(0.11));
/// ContactReading reading = ContactReading.WithGauge(clear: Length.FromMillimeters(0.15), touching: Length.FromMillimeters(0.10), paper);
/// ProbePoint point = reading.At(x, y);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ContactReading
{
    private readonly double _clear;
    private readonly double _touching;

    private ContactReading(double clear, double touching, Measured<Length> gaugeThickness)
    {
        _clear = clear;
        _touching = touching;
        GaugeThickness = gaugeThickness;
    }

    /// <summary>Lowest height at which there was no contact.</summary>
    public Length Clear => Length.FromMeters(_clear);

    /// <summary>Highest height at which there was contact, below <see cref="Clear"/>.</summary>
    public Length Touching => Length.FromMeters(_touching);

    /// <summary>Thickness t of the gauge between nozzle and surface; zero and exact for a light gap.</summary>
    public Measured<Length> GaugeThickness { get; }

    /// <summary>Height at which the bare nozzle touches the surface, positive upwards: the middle of the interval less the gauge.</summary>
    public Measured<Length> SurfaceHeight => Budget.Result;

    /// <summary>The same height with the share of the step and of the gauge in its uncertainty.</summary>
    public UncertaintyBudget<Length> Budget => Propagation.FirstOrder<Length>(
        x => x[0] - x[1],
        [BudgetInput.Of("height of contact", Measured.FromRange(Touching, Clear)), BudgetInput.Of("gauge thickness", GaugeThickness)]);

    /// <summary>A reading through a gauge: a feeler, a sheet, a block.</summary>
    /// <param name="clear">Lowest height without contact.</param>
    /// <param name="touching">Highest height with contact, below <paramref name="clear"/>.</param>
    /// <param name="gaugeThickness">Thickness of the gauge, zero or more.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A height is not finite, or the thickness is negative.</exception>
    /// <exception cref="ArgumentException">The readings contradict each other, or the thickness was never measured.</exception>
    public static ContactReading WithGauge(Length clear, Length touching, Measured<Length> gaugeThickness)
    {
        double high = Guard.Finite(clear.Meters, nameof(clear));
        double low = Guard.Finite(touching.Meters, nameof(touching));
        if (low >= high)
        {
            throw Guard.Refused(
                nameof(touching),
                FormattableString.Invariant($"Touching at {low * 1e3} mm and clear at {high * 1e3} mm contradict each other; contact must be below the clear height."));
        }

        if (!gaugeThickness.HasValue)
        {
            throw Guard.Refused(nameof(gaugeThickness), "gaugeThickness was never measured; for no gauge use ByLight.");
        }

        Guard.NonNegative(gaugeThickness.SiValue, nameof(gaugeThickness));
        return new ContactReading(high, low, gaugeThickness);
    }

    /// <summary>A reading by the gap of light under the nozzle, or by any contact without something in between.</summary>
    /// <param name="clear">Lowest height at which light is seen.</param>
    /// <param name="touching">Highest height at which none is seen, below <paramref name="clear"/>.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A height is not finite.</exception>
    /// <exception cref="ArgumentException">The readings contradict each other.</exception>
    public static ContactReading ByLight(Length clear, Length touching) => WithGauge(clear, touching, Measured.Exact(Length.Zero));

    /// <summary>The reading as a probe point whose uncertainty is that of the step alone.</summary>
    /// <param name="x">Where it was made, along x.</param>
    /// <param name="y">Where it was made, along y.</param>
    /// <returns>A point at the surface height.</returns>
    /// <remarks>
    /// The gauge's error is the same at every point: it moves a whole plane up or down and leaves tilt and screw turns untouched. Where a
    /// height itself counts, add the gauge's uncertainty to the height of the plane, once.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    public ProbePoint At(Length x, Length y) => ProbePoint.FromMeters(
        x.Meters, y.Meters, SurfaceHeight.SiValue, Measured.FromRange(Touching, Clear).SiStandardUncertainty);

    /// <summary>Invariant text.</summary>
    /// <returns>The surface height.</returns>
    public override string ToString() => SurfaceHeight.ToString();
}
