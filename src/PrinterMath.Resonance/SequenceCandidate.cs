using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Resonance;

/// <summary>A sequence that was tried: what it leaves in the worst case and what it costs.</summary>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class SequenceCandidate
{
    internal SequenceCandidate(SequenceFamily family, double designHertz, bool eachMode, ImpulseSequence sequence, double worstResidual)
    {
        Family = family;
        DesignFrequency = Frequency.FromHertz(designHertz);
        IsForEachMode = eachMode;
        Sequence = sequence;
        WorstResidual = worstResidual;
        VarianceSquareSeconds = sequence.VarianceSquareSeconds;
    }

    /// <summary>Family of the sequence.</summary>
    public SequenceFamily Family { get; }

    /// <summary>Frequency that it is designed for; of the dominant mode when each mode has its own.</summary>
    public Frequency DesignFrequency { get; }

    /// <summary>Whether it is the convolution of one sequence for each mode.</summary>
    public bool IsForEachMode { get; }

    /// <summary>The sequence.</summary>
    public ImpulseSequence Sequence { get; }

    /// <summary>Largest residual vibration over the boxes of all modes, a ratio.</summary>
    public double WorstResidual { get; }

    /// <summary>Time that every move takes longer.</summary>
    public Duration Duration => Sequence.Duration;

    /// <summary>Variance in s², from which <see cref="AllowedAcceleration"/> follows.</summary>
    public double VarianceSquareSeconds { get; }

    /// <summary>Invariant text.</summary>
    /// <returns>Family, frequency, residual and duration.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Family} {(IsForEachMode ? "for each mode" : $"at {DesignFrequency.Hertz:G4} Hz")}: {WorstResidual * 100:0.0} % left at worst, {Duration.Milliseconds:0.0} ms");
}
