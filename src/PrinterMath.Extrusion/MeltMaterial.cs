using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>A plastic: what it takes to heat it, when it flows, and how viscous its melt is.</summary>
/// <remarks>
/// <para>The ready ones span what two sources say, as ranges; a constant on which there were not two within a factor of three is left out. Grades, pigments and fillers differ: give your own
/// constants with <see cref="Of"/> where you have them. Each number's origin is in <see cref="Sources"/>.</para>
/// <para>Caution: melt burns. The maker's temperature limits of filament and hot end come first; overheated plastic gives off harmful fumes: ventilate.</para>
/// </remarks>
/// <example><code>
/// MeltMaterial pla = MeltMaterial.Pla;
/// foreach (ConstantSource source in pla.Sources) { Console.WriteLine(source); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MeltMaterial
{
    private readonly ReadOnlyCollection<ConstantSource> _sources;

    private MeltMaterial(string name, MeltMaterialData data)
    {
        Name = name;
        Density = data.Density;
        SpecificHeat = data.SpecificHeat;
        Conductivity = data.Conductivity;
        SoftAt = data.SoftAt;
        SolidAt = data.SolidAt;
        LatentHeat = data.LatentHeat;
        Viscosity = data.Viscosity;
        _sources = data.Sources.ToList().AsReadOnly();
    }

    /// <summary>Polylactide.</summary>
    public static MeltMaterial Pla => MeltMaterialTable.Pla;

    /// <summary>Acrylonitrile butadiene styrene.</summary>
    public static MeltMaterial Abs => MeltMaterialTable.Abs;

    /// <summary>Glycol-modified polyethylene terephthalate; no viscosity, since no two sources for one were found.</summary>
    public static MeltMaterial Petg => MeltMaterialTable.Petg;

    /// <summary>Polyamide 66; no viscosity and no heat of melting, since no two sources were found.</summary>
    public static MeltMaterial Pa66 => MeltMaterialTable.Pa66;

    /// <summary>Polycarbonate; no viscosity, since no two sources for one were found.</summary>
    public static MeltMaterial Pc => MeltMaterialTable.Pc;

    /// <summary>The ready ones.</summary>
    public static IReadOnlyList<MeltMaterial> Known => MeltMaterialTable.Known;

    /// <summary>Name.</summary>
    public string Name { get; }

    /// <summary>Density ρ of the solid filament.</summary>
    public Measured<Density> Density { get; }

    /// <summary>Specific heat c_p, mean between room and melt.</summary>
    public Measured<SpecificEntropy> SpecificHeat { get; }

    /// <summary>Thermal conductivity k.</summary>
    public Measured<ThermalConductivity> Conductivity { get; }

    /// <summary>Temperature that the centre of the filament must reach so that it flows.</summary>
    public MeasuredTemperature SoftAt { get; }

    /// <summary>Temperature below which a printed bead holds its shape.</summary>
    public MeasuredTemperature SolidAt { get; }

    /// <summary>Heat of melting; null when none is counted.</summary>
    public Measured<SpecificEnergy>? LatentHeat { get; }

    /// <summary>Viscosity of the melt; null when not known.</summary>
    public MeltViscosity? Viscosity { get; }

    /// <summary>Where the constants come from.</summary>
    public IReadOnlyList<ConstantSource> Sources => _sources;

    /// <summary>A plastic with the caller's constants.</summary>
    /// <param name="name">Its name; not empty.</param>
    /// <param name="data">The constants.</param>
    /// <returns>The plastic.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A constant is not positive, or it would be solid above where it is soft.</exception>
    /// <exception cref="InvalidOperationException">A constant was never measured.</exception>
    public static MeltMaterial Of(string name, MeltMaterialData data)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Guard.NotNull(data);
        Guard.Positive(data.Density.SiValue, nameof(data.Density));
        Guard.Positive(data.SpecificHeat.SiValue, nameof(data.SpecificHeat));
        Guard.Positive(data.Conductivity.SiValue, nameof(data.Conductivity));
        Guard.NotNull(data.Sources, nameof(data.Sources));
        if (data.LatentHeat is { } latent)
        {
            Guard.Positive(latent.SiValue, nameof(data.LatentHeat));
        }

        return data.SolidAt.Value.Kelvins <= data.SoftAt.Value.Kelvins
            ? new MeltMaterial(name, data)
            : throw Guard.Out(nameof(data.SolidAt), data.SolidAt, "at most the temperature at which it is soft");
    }

    /// <summary>The same plastic with another viscosity, for example one from the maker's data.</summary>
    /// <param name="viscosity">The viscosity.</param>
    /// <param name="source">Where it comes from.</param>
    /// <returns>A new plastic.</returns>
    public MeltMaterial WithViscosity(MeltViscosity viscosity, ConstantSource source) => new(Name, new MeltMaterialData
    {
        Density = Density,
        SpecificHeat = SpecificHeat,
        Conductivity = Conductivity,
        SoftAt = SoftAt,
        SolidAt = SolidAt,
        LatentHeat = LatentHeat,
        Viscosity = Guard.NotNull(viscosity),
        Sources = [.. Sources.Where(known => known.Constant != MeltMaterialTable.ViscosityName), Guard.NotNull(source)],
    });

    /// <summary>Invariant text.</summary>
    /// <returns>The name and what heating takes.</returns>
    public override string ToString() => $"{Name}: {Density}, {SpecificHeat}, {Conductivity}, soft at {SoftAt}";
}
