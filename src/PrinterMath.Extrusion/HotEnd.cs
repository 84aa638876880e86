using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>A hot end: how fast it can melt a plastic, how hot it has to be for a flow, and what limits it.</summary>
/// <remarks>
/// <para>Filament moves as a plug through the heated length and is heated by conduction (<see cref="CylinderHeating"/>): Fo = π·α·L/Q, so that in this limit the largest flow depends on the
/// length of the hot end and not on the diameter. Viscous heating and mixing are left out; melt that is squeezed thin near the wall melts faster than a plug.</para>
/// <para>Source: Carslaw, Jaeger 1959, 7.6; J. Go et al. 2017, Additive Manufacturing 16, 1 to 11 (abstract) for force, heat transfer and motion as the three limits; Luo et al. 2020, Additive
/// Manufacturing 32, 101019 (abstract) for the bound by the Péclet number.</para>
/// <para>Caution: hot end and melt burn. The maker's temperature limits of hot end, liner and filament come first; fumes need ventilation; no calculation replaces the machine's own thermal
/// protection.</para>
/// </remarks>
/// <example><code>
/// HotEnd hotEnd = HotEnd.Of(new HotEndData { HeatedLength = length, FilamentDiameter = d, Path = path, Drive = drive });
/// MeltLimit limit = hotEnd.LargestFlow(MeltMaterial.Pla, temperature);   // value, and which limit binds
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class HotEnd
{
    private readonly HotEndData _data;

    private HotEnd(HotEndData data) => _data = data;

    /// <summary>Length over which the filament is heated.</summary>
    public Measured<Length> HeatedLength => _data.HeatedLength;

    /// <summary>Diameter of the filament.</summary>
    public Measured<Length> FilamentDiameter => _data.FilamentDiameter;

    /// <summary>A hot end.</summary>
    /// <param name="data">What is known of it.</param>
    /// <returns>The hot end.</returns>
    /// <exception cref="ArgumentException">A drive is stated without a path of the melt: its force then limits nothing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    /// <exception cref="InvalidOperationException">A number was never measured.</exception>
    public static HotEnd Of(HotEndData data)
    {
        Guard.NotNull(data);
        Guard.Positive(data.HeatedLength.SiValue, nameof(data.HeatedLength));
        Guard.Positive(data.FilamentDiameter.SiValue, nameof(data.FilamentDiameter));
        Guard.Positive(data.Inlet.Value.Kelvins, nameof(data.Inlet));
        if (data.Contact is { } contact)
        {
            Guard.Positive(contact.SiValue, nameof(data.Contact));
        }

        if (data.Power is { } power)
        {
            Guard.Positive(power.SiValue, nameof(data.Power));
        }

        return data.Drive is null || data.Path is not null
            ? new HotEnd(data)
            : throw Guard.Refused(nameof(data.Path), "A drive needs the path of the melt, or its force limits nothing.");
    }

    /// <summary>The largest flow of a plastic at a temperature of the block, and which limit binds.</summary>
    /// <param name="material">The plastic.</param>
    /// <param name="temperature">Temperature of the block, above that of the inlet.</param>
    /// <returns>The limit; when the block is too cold for the plastic, its findings say so.</returns>
    /// <remarks>
    /// Melt: Fo at which the centre has (T_w − T_soft)/(T_w − T_in) left. Heater: Q·ρ·(c_p·(T_mean − T_in) + latent heat) = P. Forces: pressure through the path, at the mean temperature of the melt at
    /// the exit, times the section of the filament, plus friction.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The block is not above the inlet, or the plastic is soft there already.</exception>
    /// <exception cref="InvalidOperationException">The temperature was never measured.</exception>
    public MeltLimit LargestFlow(MeltMaterial material, MeasuredTemperature temperature) =>
        new HotEndAnalysis(_data, Guard.NotNull(material), temperature).LargestFlow();

    /// <summary>Temperature that the block needs so that the centre of the filament gets soft at a flow, T_in + (T_soft − T_in)/(1 − θ_c(Fo)).</summary>
    /// <param name="flow">Flow Q, greater than zero.</param>
    /// <param name="material">The plastic.</param>
    /// <returns>The temperature; it rises with the flow. When the flow is so large that the centre stays cold, a finding says so.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is not positive, or the plastic is soft at the inlet already.</exception>
    /// <exception cref="InvalidOperationException">The flow was never measured.</exception>
    public TemperatureNeed TemperatureFor(Measured<VolumeFlow> flow, MeltMaterial material)
    {
        Guard.Positive(flow.SiValue, nameof(flow));
        return HotEndAnalysis.TemperatureFor(_data, flow, Guard.NotNull(material));
    }

    /// <summary>Temperature at the centre of the filament where it leaves the heated length.</summary>
    /// <param name="flow">Flow Q, greater than zero.</param>
    /// <param name="material">The plastic.</param>
    /// <param name="temperature">Temperature of the block, above that of the inlet.</param>
    /// <returns>The temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is not positive, or the block is not above the inlet.</exception>
    /// <exception cref="InvalidOperationException">A number was never measured.</exception>
    public MeasuredTemperature CenterTemperature(Measured<VolumeFlow> flow, MeltMaterial material, MeasuredTemperature temperature) =>
        Kelvins(flow, material, temperature, (state, q) => state.Block - ((state.Block - state.Inlet) * state.CenterMissing(q)));

    /// <summary>Mean temperature over the section of the filament where it leaves the heated length.</summary>
    /// <param name="flow">Flow Q, greater than zero.</param>
    /// <param name="material">The plastic.</param>
    /// <param name="temperature">Temperature of the block, above that of the inlet.</param>
    /// <returns>The temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is not positive, or the block is not above the inlet.</exception>
    /// <exception cref="InvalidOperationException">A number was never measured.</exception>
    public MeasuredTemperature MeanTemperature(Measured<VolumeFlow> flow, MeltMaterial material, MeasuredTemperature temperature) =>
        Kelvins(flow, material, temperature, (state, q) => state.MeanTemperature(q));

    /// <summary>Power that goes into the plastic, Q·ρ·(c_p·(T_mean − T_in) + latent heat).</summary>
    /// <param name="flow">Flow Q, greater than zero.</param>
    /// <param name="material">The plastic; without a heat of melting a crystalline one takes more than this.</param>
    /// <param name="temperature">Temperature of the block, above that of the inlet.</param>
    /// <returns>The power and its budget. Losses to the room and to fans come on top.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is not positive, or the block is not above the inlet.</exception>
    /// <exception cref="InvalidOperationException">A number was never measured.</exception>
    public UncertaintyBudget<Power> PowerFor(Measured<VolumeFlow> flow, MeltMaterial material, MeasuredTemperature temperature) =>
        At<Power>(flow, material, temperature, (state, q) => state.Power(q));

    /// <summary>Time that the plastic spends in the heated length, π·d²/4·L/Q.</summary>
    /// <param name="flow">Flow Q, greater than zero.</param>
    /// <returns>The time and its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is not positive.</exception>
    /// <exception cref="InvalidOperationException">The flow was never measured.</exception>
    public UncertaintyBudget<Duration> ResidenceTime(Measured<VolumeFlow> flow)
    {
        Guard.Positive(flow.SiValue, nameof(flow));
        return Propagation.FirstOrder<Duration>(
            x => Math.PI / 4 * x[0] * x[0] * x[1] / x[2],
            [BudgetInput.Of("filament diameter", FilamentDiameter), BudgetInput.Of("heated length", HeatedLength), BudgetInput.Of("flow", flow)]);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Heated length and filament.</returns>
    public override string ToString() => $"hot end, heated over {HeatedLength}, filament {FilamentDiameter}";

    private UncertaintyBudget<T> At<T>(Measured<VolumeFlow> flow, MeltMaterial material, MeasuredTemperature temperature, Func<HotEndState, double, double> value)
        where T : struct
    {
        Guard.Positive(flow.SiValue, nameof(flow));
        BudgetInput[] inputs = [.. new HotEndAnalysis(_data, Guard.NotNull(material), temperature).Inputs, BudgetInput.Of("flow", flow)];
        return Propagation.FirstOrder<T>(x => value(HotEndState.From(x), x[HotEndState.Count]), inputs);
    }

    private MeasuredTemperature Kelvins(Measured<VolumeFlow> flow, MeltMaterial material, MeasuredTemperature temperature, Func<HotEndState, double, double> value)
    {
        Measured<double> kelvins = At<double>(flow, material, temperature, value).Result;
        return MeasuredTemperature.FromKelvins(kelvins.SiValue, kelvins.SiStandardUncertainty, kelvins.DegreesOfFreedom);
    }
}
