using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>A span and the frequency it was heard at: one side of a comparison.</summary>
[DebuggerDisplay("{Name,nq}: {Frequency}")]
public sealed class HeardSpan
{
    /// <summary>A span and its frequency.</summary>
    /// <param name="name">What the person calls this belt; not empty.</param>
    /// <param name="span">The span that was plucked.</param>
    /// <param name="frequency">Frequency of its fundamental, greater than zero.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive.</exception>
    /// <exception cref="InvalidOperationException">The frequency was never measured.</exception>
    public HeardSpan(string name, BeltSpan span, Measured<Frequency> frequency)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
        Span = Guard.NotNull(span);
        Guard.Positive(frequency.SiValue, nameof(frequency));
        Frequency = frequency;
    }

    /// <summary>What the person calls this belt.</summary>
    public string Name { get; }

    /// <summary>The span that was plucked.</summary>
    public BeltSpan Span { get; }

    /// <summary>Frequency of its fundamental.</summary>
    public Measured<Frequency> Frequency { get; }
}
