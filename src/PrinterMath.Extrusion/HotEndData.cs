using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>What is known of a hot end, for <see cref="HotEnd.Of"/>.</summary>
public sealed record HotEndData
{
    /// <summary>Length L over which the filament is heated, up to where it has to be soft.</summary>
    /// <value>Must be stated, greater than zero.</value>
    public required Measured<Length> HeatedLength { get; init; }

    /// <summary>Diameter d of the filament.</summary>
    /// <value>Must be stated, greater than zero.</value>
    public required Measured<Length> FilamentDiameter { get; init; }

    /// <summary>Temperature of the filament where heating begins.</summary>
    /// <value>20 to 50 °C, as a range: a drive and a cold side are warmer than the room (common practice, no source).</value>
    public MeasuredTemperature Inlet { get; init; } = MeasuredTemperature.FromKelvins(308.15, 30 / Math.Sqrt(12));

    /// <summary>Heat transfer coefficient h between block and filament.</summary>
    /// <value>Null: none, the surface of the filament takes on the temperature of the block at once: the most that conduction allows. Greater than zero otherwise.</value>
    public Measured<HeatTransferCoefficient>? Contact { get; init; }

    /// <summary>Power of the heater that is left for the plastic: losses to the room and to fans taken off.</summary>
    /// <value>Null: power is not checked. Greater than zero otherwise.</value>
    public Measured<Power>? Power { get; init; }

    /// <summary>The way of the melt from the heated length to the orifice.</summary>
    /// <value>Null: pressure is not checked.</value>
    public MeltPath? Path { get; init; }

    /// <summary>The drive that pushes.</summary>
    /// <value>Null: force is not checked.</value>
    public FilamentDrive? Drive { get; init; }
}
