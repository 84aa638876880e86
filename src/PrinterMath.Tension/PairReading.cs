using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Both belts of a pair plucked at one setting of their tensioners.</summary>
/// <example><code>var second = new PairReading(Measured.Of(0.5, 0.02), Measured.Exact(0.0), heardA, heardB);   // half a turn on A since the first reading</code></example>
[DebuggerDisplay("A {FrequencyA} at {TurnsA}, B {FrequencyB} at {TurnsB}")]
public sealed class PairReading
{
    /// <summary>A reading.</summary>
    /// <param name="turnsA">Turns of tensioner A since the first reading, tightening positive.</param>
    /// <param name="turnsB">Turns of tensioner B since the first reading, tightening positive.</param>
    /// <param name="frequencyA">Frequency of belt A, greater than zero.</param>
    /// <param name="frequencyB">Frequency of belt B, greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is not positive.</exception>
    /// <exception cref="InvalidOperationException">A number was never measured.</exception>
    public PairReading(Measured<double> turnsA, Measured<double> turnsB, Measured<Frequency> frequencyA, Measured<Frequency> frequencyB)
    {
        Guard.Finite(turnsA.SiValue, nameof(turnsA));
        Guard.Finite(turnsB.SiValue, nameof(turnsB));
        Guard.Positive(frequencyA.SiValue, nameof(frequencyA));
        Guard.Positive(frequencyB.SiValue, nameof(frequencyB));
        TurnsA = turnsA;
        TurnsB = turnsB;
        FrequencyA = frequencyA;
        FrequencyB = frequencyB;
    }

    /// <summary>Turns of tensioner A since the first reading.</summary>
    public Measured<double> TurnsA { get; }

    /// <summary>Turns of tensioner B since the first reading.</summary>
    public Measured<double> TurnsB { get; }

    /// <summary>Frequency of belt A.</summary>
    public Measured<Frequency> FrequencyA { get; }

    /// <summary>Frequency of belt B.</summary>
    public Measured<Frequency> FrequencyB { get; }
}
