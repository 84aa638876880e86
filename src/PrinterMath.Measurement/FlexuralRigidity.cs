using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>Flexural rigidity EI of a beam or belt: Young's modulus times second moment of area, in N·m².</summary>
/// <remarks>Zero or more. Equality by value; the default is zero, a perfectly limp string. Not to be confused with a spring stiffness in N/m.</remarks>
/// <example><code>FlexuralRigidity belt = FlexuralRigidity.FromNewtonSquareMeters(2e-5);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public readonly struct FlexuralRigidity : IEquatable<FlexuralRigidity>, IFormattable
{
    private FlexuralRigidity(double newtonSquareMeters) => NewtonSquareMeters = newtonSquareMeters;

    /// <summary>EI in N·m².</summary>
    public double NewtonSquareMeters { get; }

    /// <summary>A rigidity from its value in N·m².</summary>
    /// <param name="value">EI, zero or more.</param>
    /// <returns>The rigidity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or is negative.</exception>
    public static FlexuralRigidity FromNewtonSquareMeters(double value) => new(Guard.NonNegative(value));

    /// <inheritdoc/>
    public bool Equals(FlexuralRigidity other) => NewtonSquareMeters.Equals(other.NewtonSquareMeters);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is FlexuralRigidity other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => NewtonSquareMeters.GetHashCode();

    /// <summary>Invariant text in N·m².</summary>
    /// <returns>The text.</returns>
    public override string ToString() => ToString(null, CultureInfo.InvariantCulture);

    /// <summary>Text in N·m² with a numeric format.</summary>
    /// <param name="format">A standard numeric format; null for general.</param>
    /// <param name="formatProvider">Where the separators come from; null for invariant.</param>
    /// <returns>The text.</returns>
    public string ToString(string? format, IFormatProvider? formatProvider = null) =>
        NewtonSquareMeters.ToString(format ?? "G6", formatProvider ?? CultureInfo.InvariantCulture) + " N·m²";

    /// <summary>Equality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether both are the same rigidity.</returns>
    public static bool operator ==(FlexuralRigidity left, FlexuralRigidity right) => left.Equals(right);

    /// <summary>Inequality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether they differ.</returns>
    public static bool operator !=(FlexuralRigidity left, FlexuralRigidity right) => !left.Equals(right);
}
