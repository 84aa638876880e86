using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>A line in a spectrum that is no wider than the spectrum's window: mains, a fan, a motor.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SteadyTone
{
    private readonly JointEstimate _joint;

    internal SteadyTone(JointEstimate joint) => _joint = joint;

    /// <summary>Frequency.</summary>
    public Measured<Frequency> Frequency => _joint.Estimate<Frequency>(0);

    /// <summary>Root mean square in the unit of the signal.</summary>
    public Measured<double> Amplitude => _joint.Estimate<double>(1);

    /// <summary>Invariant text.</summary>
    /// <returns>Frequency and amplitude.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"tone at {Frequency}, rms {Amplitude}");
}
