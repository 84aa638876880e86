using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>What to do to one belt of a pair.</summary>
/// <remarks>
/// Caution: power off and move the axes by hand slowly before you reach for a tensioner; a belt stores energy, slacken it before any work on it; too much
/// tension ruins motor bearings, and the motor maker's shaft-load limit comes first.
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class BeltChange
{
    internal BeltChange(string name, Measured<Force> change, Measured<Frequency> targetFrequency)
    {
        Name = name;
        Change = change;
        TargetFrequency = targetFrequency;
        IsNeeded = change.SiValue != 0 && !change.Interval().Contains(Force.Zero);
    }

    /// <summary>Which belt.</summary>
    public string Name { get; }

    /// <summary>Change of tension; positive tightens, negative slackens.</summary>
    public Measured<Force> Change { get; }

    /// <summary>Frequency that this span should sound at afterwards.</summary>
    public Measured<Frequency> TargetFrequency { get; }

    /// <summary>Whether the change is larger than the readings can be wrong by, at 95 %; if not, leave the belt alone.</summary>
    public bool IsNeeded { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>What to do.</returns>
    public override string ToString()
    {
        if (!IsNeeded)
        {
            return $"leave belt {Name}";
        }

        return $"{(Change.SiValue > 0 ? "tighten" : "slacken")} belt {Name} until it sounds at {TargetFrequency}";
    }
}
