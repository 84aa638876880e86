using System.Collections.ObjectModel;
using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Pressure that a flow takes through a <see cref="MeltPath"/>, with its budget.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PressureDrop
{
    private readonly ReadOnlyCollection<PassageDrop> _passages;
    private readonly ReadOnlyCollection<Finding> _findings;

    internal PressureDrop(UncertaintyBudget<Pressure> budget, PassageDrop[] passages, List<Finding> findings)
    {
        Budget = budget;
        _passages = Array.AsReadOnly(passages);
        _findings = findings.AsReadOnly();
    }

    /// <summary>The pressure and where its uncertainty comes from: mostly viscosity and the diameter of the orifice.</summary>
    public UncertaintyBudget<Pressure> Budget { get; }

    /// <summary>The pressure over the whole path.</summary>
    public Measured<Pressure> Total => Budget.Result;

    /// <summary>What each piece takes, in the order of the flow.</summary>
    public IReadOnlyList<PassageDrop> Passages => _passages;

    /// <summary>What was noticed, see <see cref="MeltFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Force on the filament that makes this pressure, F = P·π·d²/4, with no friction.</summary>
    /// <param name="filamentDiameter">Diameter d of the filament, greater than zero.</param>
    /// <returns>The force and its budget.</returns>
    /// <remarks>Source: definition of pressure. Melt that creeps back along the filament and friction of its guide add to it.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not positive.</exception>
    /// <exception cref="InvalidOperationException">The diameter was never measured.</exception>
    public UncertaintyBudget<Force> ForceOn(Measured<Length> filamentDiameter)
    {
        double d = Guard.Positive(filamentDiameter.SiValue, nameof(filamentDiameter)), p = Total.SiValue;
        return Propagation.FirstOrder<Force>(
            Math.PI / 4 * d * d * p,
            [BudgetInput.Of("pressure", Total), BudgetInput.Of("filament diameter", filamentDiameter)],
            [Math.PI / 4 * d * d, Math.PI / 2 * d * p]);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The pressure.</returns>
    public override string ToString() => $"pressure {Total}";
}
