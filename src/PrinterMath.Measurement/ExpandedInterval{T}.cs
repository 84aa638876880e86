using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>A coverage interval: value ± U with U = k·u, and the probability with which it holds the true value.</summary>
/// <typeparam name="T">The quantity.</typeparam>
/// <remarks>Equality by value. Source: JCGM 100:2008 (GUM), 6.2 and G.3.</remarks>
/// <example><code>ExpandedInterval&lt;Force&gt; interval = tension.Interval(0.95);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public readonly struct ExpandedInterval<T> : IEquatable<ExpandedInterval<T>>, IFormattable
    where T : struct
{
    private readonly double _si;
    private readonly double _standardUncertainty;

    internal ExpandedInterval(double si, double standardUncertainty, double coverageFactor, double coverage)
    {
        _si = si;
        _standardUncertainty = standardUncertainty;
        CoverageFactor = coverageFactor;
        Coverage = coverage;
    }

    /// <summary>Lower end, value − U.</summary>
    public T Lower => QuantityUnits<T>.Known.FromSi(_si - (CoverageFactor * _standardUncertainty));

    /// <summary>Upper end, value + U.</summary>
    public T Upper => QuantityUnits<T>.Known.FromSi(_si + (CoverageFactor * _standardUncertainty));

    /// <summary>The expanded uncertainty U = k·u.</summary>
    public T ExpandedUncertainty => QuantityUnits<T>.Known.FromSi(CoverageFactor * _standardUncertainty);

    /// <summary>Coverage factor k.</summary>
    public double CoverageFactor { get; }

    /// <summary>Coverage probability, a ratio between 0 and 1.</summary>
    public double Coverage { get; }

    /// <summary>Whether a value lies in the closed interval.</summary>
    /// <param name="value">The value.</param>
    /// <returns>True from the lower to the upper end, both included.</returns>
    public bool Contains(T value) =>
        Math.Abs(QuantityUnits<T>.Known.ToSi(value) - _si) <= CoverageFactor * _standardUncertainty;

    /// <inheritdoc/>
    public bool Equals(ExpandedInterval<T> other) =>
        _si.Equals(other._si)
        && _standardUncertainty.Equals(other._standardUncertainty)
        && CoverageFactor.Equals(other.CoverageFactor)
        && Coverage.Equals(other.Coverage);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ExpandedInterval<T> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_si, _standardUncertainty, CoverageFactor, Coverage);

    /// <summary>Invariant text: <c>(12.34 ± 0.10) N, k = 2.1, 95 %</c>.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => ToString(null, CultureInfo.InvariantCulture);

    /// <summary>Text in a chosen unit.</summary>
    /// <param name="format">A unit of the quantity such as <c>mm</c>; null for its usual unit.</param>
    /// <param name="formatProvider">Where the decimal separator comes from; null for invariant.</param>
    /// <returns>The text.</returns>
    /// <exception cref="FormatException">The unit is not known.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null) =>
        MeasuredText.WriteExpanded(_si, _standardUncertainty, CoverageFactor, Coverage, QuantityUnits<T>.Known.Display, format, formatProvider);

    /// <summary>Equality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether both are the same interval.</returns>
    public static bool operator ==(ExpandedInterval<T> left, ExpandedInterval<T> right) => left.Equals(right);

    /// <summary>Inequality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether they differ.</returns>
    public static bool operator !=(ExpandedInterval<T> left, ExpandedInterval<T> right) => !left.Equals(right);
}
