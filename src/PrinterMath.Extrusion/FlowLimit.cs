using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>One of the flows that a <see cref="HotEnd"/> cannot exceed.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FlowLimit
{
    internal FlowLimit(LimitKind kind, UncertaintyBudget<VolumeFlow> budget)
    {
        Kind = kind;
        Budget = budget;
    }

    /// <summary>What would stop it.</summary>
    public LimitKind Kind { get; }

    /// <summary>The flow, with its budget.</summary>
    public UncertaintyBudget<VolumeFlow> Budget { get; }

    /// <summary>The flow.</summary>
    public Measured<VolumeFlow> Flow => Budget.Result;

    /// <summary>Invariant text.</summary>
    /// <returns>Kind and flow.</returns>
    public override string ToString() => $"{Kind}: {Flow}";
}
