using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>
/// A measured number: an estimate of a quantity, its standard uncertainty, and the degrees of freedom behind that uncertainty.
/// </summary>
/// <typeparam name="T">A quantity the kernel knows (see <see cref="Measured"/>), or <see cref="double"/> for a plain ratio.</typeparam>
/// <remarks>
/// <para>There are no arithmetic operators on purpose: x − x must not become 0 with an uncertainty of 1.4 u. Combine measured
/// numbers by <see cref="Propagation"/>, which knows which inputs are the same or correlated.</para>
/// <para>Equality is by value of all three numbers, in SI: 100 mm and 10 cm are equal. The default value stands for "never
/// measured": every member but equality throws <see cref="InvalidOperationException"/>.</para>
/// <para>Source: JCGM 100:2008 (GUM), 2.3.1 standard uncertainty, C.2.31 degrees of freedom.</para>
/// </remarks>
/// <example><code>
/// Measured&lt;Force&gt; tension = Measured.Of(Force.FromNewtons(12.34), Force.FromNewtons(0.05));
/// tension.ToString();        // 12.34(5) N
/// tension.ToString("U");     // (12.34 ± 0.10) N, k = 2
/// </code></example>
[DebuggerDisplay("{DebuggerText,nq}")]
public readonly struct Measured<T> : IEquatable<Measured<T>>, IFormattable
    where T : struct
{
    private readonly double _si;
    private readonly double _standardUncertainty;
    private readonly double _degreesOfFreedom;

    private Measured(double si, double standardUncertainty, double degreesOfFreedom)
    {
        _si = si;
        _standardUncertainty = standardUncertainty;
        _degreesOfFreedom = degreesOfFreedom;
    }

    /// <summary>The estimate.</summary>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public T Value => QuantityUnits<T>.Known.FromSi(SiValue);

    /// <summary>The standard uncertainty u, a standard deviation; zero only for values made by <see cref="Measured.Exact{T}"/>.</summary>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public T StandardUncertainty => QuantityUnits<T>.Known.FromSi(SiStandardUncertainty);

    /// <summary>Degrees of freedom ν of the standard uncertainty: 1 or more, infinite for a type B evaluation taken as known.</summary>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public double DegreesOfFreedom => HasValue ? _degreesOfFreedom : throw Unset();

    /// <summary>The estimate in the coherent SI unit named by <see cref="UcumUnit"/>.</summary>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public double SiValue => HasValue ? _si : throw Unset();

    /// <summary>The standard uncertainty in the coherent SI unit named by <see cref="UcumUnit"/>.</summary>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public double SiStandardUncertainty => HasValue ? _standardUncertainty : throw Unset();

    /// <summary>u/|value|, the relative standard uncertainty as a ratio; infinite when the value is zero and the uncertainty is not.</summary>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public double RelativeStandardUncertainty =>
        SiStandardUncertainty == 0 ? 0 : _standardUncertainty / Math.Abs(_si);

    /// <summary>Whether this holds a value; false only for the default.</summary>
    public bool HasValue => _degreesOfFreedom > 0;

    /// <summary>The coherent SI unit of <see cref="SiValue"/> in the Unified Code for Units of Measure, for records that machines read.</summary>
    public static string UcumUnit => QuantityUnits<T>.Known.Ucum;

    private string DebuggerText => HasValue ? ToString() : "not measured";

    /// <summary>A measured number from SI numbers: for estimators that compute in <see cref="double"/>.</summary>
    /// <param name="value">The estimate in the unit named by <see cref="UcumUnit"/>.</param>
    /// <param name="standardUncertainty">Standard uncertainty in the same unit, zero or more.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, 1 or more, or infinite.</param>
    /// <returns>The measured number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or out of range.</exception>
    public static Measured<T> FromSi(double value, double standardUncertainty, double degreesOfFreedom = double.PositiveInfinity) =>
        new(Guard.Finite(value), Guard.NonNegative(standardUncertainty), Guard.DegreesOfFreedom(degreesOfFreedom));

    /// <summary>The interval that holds the true value with the given probability, by Student's t.</summary>
    /// <param name="coverage">Coverage probability, greater than 0 and less than 1.</param>
    /// <returns>The interval and its coverage factor.</returns>
    /// <remarks>k = t_p(ν) with ν truncated to the next lower integer. Source: JCGM 100:2008, G.3.2 and G.4.1.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The coverage is out of range.</exception>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public ExpandedInterval<T> Interval(double coverage = 0.95) =>
        new(SiValue, _standardUncertainty, StudentDistribution.CoverageFactor(coverage, _degreesOfFreedom), coverage);

    /// <inheritdoc/>
    public bool Equals(Measured<T> other) =>
        _si.Equals(other._si)
        && _standardUncertainty.Equals(other._standardUncertainty)
        && _degreesOfFreedom.Equals(other._degreesOfFreedom);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Measured<T> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_si, _standardUncertainty, _degreesOfFreedom);

    /// <summary>Value with its standard uncertainty in the last digits, invariant: <c>12.34(5) N</c>.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => ToString(null, CultureInfo.InvariantCulture);

    /// <summary>
    /// Text in a chosen style, rounded by the uncertainty: <c>S</c> standard, <c>12.34(5) N</c>; <c>U</c> expanded with k = 2,
    /// <c>(12.34 ± 0.10) N, k = 2</c>; <c>U95</c> expanded at 95 % by Student's t; <c>V</c> value alone. A number after S or V
    /// sets the digits of the uncertainty; a unit after a blank chooses the unit, <c>S mm</c>.
    /// </summary>
    /// <param name="format">The style; null for S in the quantity's usual unit.</param>
    /// <param name="formatProvider">Where the decimal separator comes from; null for invariant.</param>
    /// <returns>The text, or <c>not measured</c> for the default value.</returns>
    /// <remarks>Two digits of uncertainty when the first is 1 or 2, else one. Source: JCGM 100:2008, 7.2.2 and 7.2.6.</remarks>
    /// <exception cref="FormatException">The style or the unit is not known.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null) =>
        HasValue
            ? MeasuredText.Write(_si, _standardUncertainty, _degreesOfFreedom, QuantityUnits<T>.Known.Display, format, formatProvider)
            : "not measured";

    /// <summary>Equality by value, see <see cref="Equals(Measured{T})"/>.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether both hold the same numbers.</returns>
    public static bool operator ==(Measured<T> left, Measured<T> right) => left.Equals(right);

    /// <summary>Inequality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether they differ.</returns>
    public static bool operator !=(Measured<T> left, Measured<T> right) => !left.Equals(right);

    private static InvalidOperationException Unset() => new($"This Measured<{typeof(T).Name}> is the default: nothing was measured.");
}
