using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>The way of the melt from barrel to orifice, piece by piece, and the pressure it takes.</summary>
/// <remarks>
/// <para>Each piece: fully developed, isothermal, no slip: ΔP = ∫ 2·τ_w/R dz with the true rate at the wall (<see cref="MeltViscosity.WallShearRate"/>). For a power law in a capillary that is
/// ΔP = (2·K·L/R)·[(3n + 1)/(4n)·4Q/(π·R³)]ⁿ. What stretching costs at a contraction is left out, so that pressure is rather understated.</para>
/// <para>Source: Bird, Armstrong, Hassager 1987, Dynamics of Polymeric Liquids 1, 2nd ed., ch. 4 (from memory); Rabinowitsch 1929 as cited at <see cref="MeltViscosity.WallShearRate"/>.</para>
/// <para>Caution: hot end and melt burn, a blocked nozzle under pressure spits. Stay within the maker's temperatures; fumes need ventilation.</para>
/// </remarks>
/// <example><code>
/// MeltPath path = MeltPath.Of(barrel, taper, land);
/// PressureDrop drop = path.DropAt(Measured.Exact(flow), temperature, material.Viscosity!);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MeltPath
{
    /// <summary>Half angle above which the flow of a slender channel understates a taper noticeably (from memory, common practice).</summary>
    private const double Blunt = 30;
    private readonly ReadOnlyCollection<MeltPassage> _passages;

    private MeltPath(MeltPassage[] passages) => _passages = Array.AsReadOnly(passages);

    /// <summary>The pieces in the order of the flow.</summary>
    public IReadOnlyList<MeltPassage> Passages => _passages;

    /// <summary>A way through pieces.</summary>
    /// <param name="passages">At least one, in the order of the flow, names unique.</param>
    /// <returns>The path.</returns>
    /// <exception cref="ArgumentException">A name stands twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No pieces.</exception>
    public static MeltPath Of(params MeltPassage[] passages)
    {
        Guard.AtLeast(Guard.NotNull(passages).Length, 1, nameof(passages));
        return passages.Select(passage => Guard.NotNull(passage, nameof(passages)).Name).Distinct(StringComparer.Ordinal).Count() == passages.Length
            ? new MeltPath((MeltPassage[])passages.Clone())
            : throw Guard.Refused(nameof(passages), "Each piece needs a name of its own.");
    }

    /// <summary>Pressure that a flow takes.</summary>
    /// <param name="flow">Flow Q, greater than zero.</param>
    /// <param name="temperature">Temperature of the melt, where the viscosity is defined. The melt is colder than the block at high flow.</param>
    /// <param name="viscosity">Viscosity of the melt.</param>
    /// <returns>The pressure, its budget and what each piece takes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is not positive, or the viscosity is not defined at the temperature.</exception>
    /// <exception cref="InvalidOperationException">Flow or temperature was never measured.</exception>
    public PressureDrop DropAt(Measured<VolumeFlow> flow, MeasuredTemperature temperature, MeltViscosity viscosity)
    {
        double q = Guard.Positive(flow.SiValue, nameof(flow));
        double kelvins = Guard.NotNull(viscosity).Defined(temperature.Value);
        List<BudgetInput> inputs =
        [
            BudgetInput.Of("flow", flow),
            BudgetInput.Of("melt temperature", temperature),
            BudgetInput.Of("viscosity", Measured<double>.FromSi(1, viscosity.RelativeStandardUncertainty)),
            .. GeometryInputs(),
        ];
        UncertaintyBudget<Pressure> budget = Propagation.FirstOrder<Pressure>(x => Pascals(viscosity, x[0], x[1], x[3..]) * x[2], inputs);
        PassageDrop[] drops = [.. _passages.Select(passage => Drop(passage, viscosity, q, kelvins))];
        List<Finding> findings = viscosity.Outside(drops.Min(drop => drop.WallShearRate.PerSecond), drops.Max(drop => drop.WallShearRate.PerSecond), kelvins);
        findings.AddRange(BluntTapers());
        return new PressureDrop(budget, drops, findings);
    }

    /// <summary>Temperature of the melt at which a flow takes a given pressure: how much hotter it has to be when the flow rises.</summary>
    /// <param name="flow">Flow Q, greater than zero.</param>
    /// <param name="pressure">Pressure to hold, greater than zero.</param>
    /// <param name="viscosity">Viscosity of the melt.</param>
    /// <returns>The temperature; sought up to 50 K beyond the measured ones, and flagged there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    /// <exception cref="InvalidOperationException">Flow or pressure was never measured.</exception>
    public TemperatureNeed TemperatureFor(Measured<VolumeFlow> flow, Measured<Pressure> pressure, MeltViscosity viscosity)
    {
        Guard.Positive(flow.SiValue, nameof(flow));
        Guard.Positive(pressure.SiValue, nameof(pressure));
        return TemperatureSearch.Find(this, flow, pressure, Guard.NotNull(viscosity));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The pieces.</returns>
    public override string ToString() => string.Join("; ", _passages);

    /// <summary>Diameters and lengths, in the order that <see cref="Pascals"/> reads.</summary>
    internal IEnumerable<BudgetInput> GeometryInputs()
    {
        foreach (MeltPassage passage in _passages)
        {
            if (passage.IsTaper)
            {
                yield return BudgetInput.Of($"{passage.Name}, diameter at inlet", passage.Inlet);
                yield return BudgetInput.Of($"{passage.Name}, diameter at outlet", passage.Outlet);
            }
            else
            {
                yield return BudgetInput.Of($"{passage.Name}, diameter", passage.Inlet);
            }

            yield return BudgetInput.Of($"{passage.Name}, length", passage.Length);
        }
    }

    internal double Pascals(MeltViscosity viscosity, double flow, double kelvins, ReadOnlySpan<double> geometry)
    {
        double sum = 0;
        int next = 0;
        foreach (MeltPassage passage in _passages)
        {
            double inlet = geometry[next++], outlet = passage.IsTaper ? geometry[next++] : inlet;
            sum += PassageModel.Pascals(viscosity, flow, kelvins, inlet, outlet, geometry[next++]);
        }

        return sum;
    }

    internal List<Finding> BluntTapers() =>
    [
        .. _passages.Where(passage => passage.HalfAngle.Degrees > Blunt).Select(passage => new Finding(
            MeltFindings.BluntTaper,
            FindingSeverity.Caution,
            string.Create(CultureInfo.InvariantCulture, $"The half angle of '{passage.Name}' is {passage.HalfAngle.Degrees:0.#}°; above {Blunt}° the pressure is a lower bound."),
            new FindingNumber("halfAngle", passage.HalfAngle.Radians, "rad"),
            new FindingNumber("limit", Blunt * Math.PI / 180, "rad"))),
    ];

    private static PassageDrop Drop(MeltPassage passage, MeltViscosity viscosity, double flow, double kelvins) => new(
        passage.Name,
        PassageModel.Pascals(viscosity, flow, kelvins, passage.Inlet.SiValue, passage.Outlet.SiValue, passage.Length.SiValue),
        PassageModel.WallRate(viscosity, flow, kelvins, Math.Min(passage.Inlet.SiValue, passage.Outlet.SiValue) / 2));
}
