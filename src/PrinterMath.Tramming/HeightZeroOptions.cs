using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>What stands between the height a method found and the height at which the nozzle touches the surface in printing. What is left at its default is not there.</summary>
/// <example><code>var options = new HeightZeroOptions { GaugeThickness = paper, NozzleGrowth = nozzle, BedGrowth = bed };</code></example>
public sealed record HeightZeroOptions
{
    /// <summary>Thickness of the gauge between nozzle and surface; leave it out where the reading had it subtracted already.</summary>
    /// <value>Zero or more; not there by default.</value>
    public Measured<Length> GaugeThickness { get; init; }

    /// <summary>How far the nozzle is above the surface when the probe triggers: positive where the probe's contact is lower than the nozzle.</summary>
    /// <value>Within ±50 mm; not there by default.</value>
    public Measured<Length> NozzleAboveTrigger { get; init; }

    /// <summary>Growth of the nozzle and what holds it, downwards, from measuring to printing.</summary>
    /// <value>Null by default.</value>
    public ThermalGrowth? NozzleGrowth { get; init; }

    /// <summary>Growth of the bed and what carries it, upwards, from measuring to printing.</summary>
    /// <value>Null by default.</value>
    public ThermalGrowth? BedGrowth { get; init; }
}
