namespace PrinterMath.Tramming;

/// <summary>What carries a bed at one place, or along one line: an <see cref="AdjustingScrew"/>, a <see cref="PoweredScrew"/>, a <see cref="FixedSupport"/> or a <see cref="BedHinge"/>.</summary>
/// <remarks>Positions are in the frame of the probe points.</remarks>
public abstract class BedSupport
{
    private protected BedSupport(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
    }

    /// <summary>What the person calls it; unique among the supports of a bed.</summary>
    public string Name { get; }

    /// <summary>Places at which the bed is held, each with weight one.</summary>
    internal abstract ReadOnlySpan<Place> Places { get; }
}
