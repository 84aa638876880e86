using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>A rise of the spectrum that was fitted and not reported as a mode, with the reason.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class RejectedPole
{
    private readonly double _hertz;

    internal RejectedPole(double hertz, double dampingRatio, RejectionReason reason, double significance)
    {
        _hertz = hertz;
        DampingRatio = dampingRatio;
        Reason = reason;
        Significance = significance;
    }

    /// <summary>Natural frequency of the fit.</summary>
    public Frequency Frequency => Frequency.FromHertz(_hertz);

    /// <summary>Damping ratio of the fit, a ratio; not a measurement of anything.</summary>
    public double DampingRatio { get; }

    /// <summary>Why it is not a mode.</summary>
    public RejectionReason Reason { get; }

    /// <summary>Twice the gain in log-likelihood over what was needed, a ratio: 1 is just significant.</summary>
    public double Significance { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>Frequency and reason.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{_hertz:G5} Hz: {Reason}");
}
