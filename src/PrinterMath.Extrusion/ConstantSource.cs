using System.Diagnostics;

namespace PrinterMath.Extrusion;

/// <summary>Where a constant of a <see cref="MeltMaterial"/> comes from.</summary>
/// <example><code>ConstantSource.Of("density", "data sheet of the filament", fromMemory: false)</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ConstantSource
{
    private ConstantSource(string constant, string source, bool fromMemory)
    {
        Constant = constant;
        Source = source;
        FromMemory = fromMemory;
    }

    /// <summary>Which constant.</summary>
    public string Constant { get; }

    /// <summary>Its sources, and what they say where they differ.</summary>
    public string Source { get; }

    /// <summary>Whether at least one of the sources is quoted from memory, so that it should be looked up before it is relied on.</summary>
    public bool FromMemory { get; }

    /// <summary>A source.</summary>
    /// <param name="constant">Which constant; not empty.</param>
    /// <param name="source">Where it is from; not empty.</param>
    /// <param name="fromMemory">Whether it is quoted from memory.</param>
    /// <returns>The source.</returns>
    /// <exception cref="ArgumentException">A text is empty.</exception>
    public static ConstantSource Of(string constant, string source, bool fromMemory)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(constant);
        ArgumentException.ThrowIfNullOrWhiteSpace(source);
        return new ConstantSource(constant, source, fromMemory);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Constant and source.</returns>
    public override string ToString() => $"{Constant}: {Source}{(FromMemory ? " (from memory)" : string.Empty)}";
}
