using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>One of the forces that a <see cref="FilamentDrive"/> cannot exceed.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class DriveLimit
{
    internal DriveLimit(LimitKind kind, UncertaintyBudget<Force> budget)
    {
        Kind = kind;
        Budget = budget;
    }

    /// <summary>What would give way.</summary>
    public LimitKind Kind { get; }

    /// <summary>The force on the filament at the wheel, with its budget.</summary>
    public UncertaintyBudget<Force> Budget { get; }

    /// <summary>The force on the filament at the wheel.</summary>
    public Measured<Force> Force => Budget.Result;

    /// <summary>Invariant text.</summary>
    /// <returns>Kind and force.</returns>
    public override string ToString() => $"{Kind}: {Force}";
}
