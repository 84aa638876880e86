using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Constants of a plastic, for <see cref="MeltMaterial.Of"/>.</summary>
public sealed record MeltMaterialData
{
    /// <summary>Density ρ of the solid filament.</summary>
    /// <value>Must be stated, greater than zero.</value>
    public required Measured<Density> Density { get; init; }

    /// <summary>Specific heat c_p, mean between room and melt.</summary>
    /// <value>Must be stated, greater than zero.</value>
    public required Measured<SpecificEntropy> SpecificHeat { get; init; }

    /// <summary>Thermal conductivity k.</summary>
    /// <value>Must be stated, greater than zero.</value>
    public required Measured<ThermalConductivity> Conductivity { get; init; }

    /// <summary>Temperature that the centre of the filament must have reached where it leaves the heated length, so that it flows.</summary>
    /// <value>Must be stated: melting point of a crystalline plastic; for an amorphous one some 50 K above the glass transition (common practice, no source).</value>
    public required MeasuredTemperature SoftAt { get; init; }

    /// <summary>Temperature below which a printed bead holds its shape: glass transition of an amorphous plastic, crystallisation of another.</summary>
    /// <value>Must be stated, at most <see cref="SoftAt"/>.</value>
    public required MeasuredTemperature SolidAt { get; init; }

    /// <summary>Heat of melting.</summary>
    /// <value>Null: none counted; right for amorphous plastics, too little for others. Greater than zero.</value>
    public Measured<SpecificEnergy>? LatentHeat { get; init; }

    /// <summary>Viscosity of the melt.</summary>
    /// <value>Null: not known; nothing that needs a pressure can be said.</value>
    public MeltViscosity? Viscosity { get; init; }

    /// <summary>Where the constants come from.</summary>
    /// <value>Empty.</value>
    public IReadOnlyList<ConstantSource> Sources { get; init; } = [];
}
