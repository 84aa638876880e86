using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.Measurement;

/// <summary>A measured temperature: the estimate is a <see cref="Temperature"/>, its standard uncertainty a <see cref="TemperatureDelta"/>.</summary>
/// <remarks>
/// Everything said of <see cref="Measured{T}"/> holds here; the type is apart because an uncertainty of 0.5 K is not a temperature.
/// The default value stands for "never measured".
/// Source: JCGM 100:2008 (GUM), 2.3.1.
/// </remarks>
/// <example><code>
/// MeasuredTemperature bed = Measured.Of(Temperature.FromDegreesCelsius(60), TemperatureDelta.FromKelvins(0.8));
/// bed.ToString();   // 60.0(8) °C
/// </code></example>
[DebuggerDisplay("{DebuggerText,nq}")]
public readonly struct MeasuredTemperature : IEquatable<MeasuredTemperature>, IFormattable
{
    private readonly double _kelvins;
    private readonly double _standardUncertainty;
    private readonly double _degreesOfFreedom;

    private MeasuredTemperature(double kelvins, double standardUncertainty, double degreesOfFreedom)
    {
        _kelvins = kelvins;
        _standardUncertainty = standardUncertainty;
        _degreesOfFreedom = degreesOfFreedom;
    }

    /// <summary>The estimate.</summary>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public Temperature Value => Temperature.FromKelvins(Set(_kelvins));

    /// <summary>The standard uncertainty u, a difference of temperature.</summary>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public TemperatureDelta StandardUncertainty => TemperatureDelta.FromKelvins(Set(_standardUncertainty));

    /// <summary>Degrees of freedom ν of the standard uncertainty: 1 or more, or infinite.</summary>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public double DegreesOfFreedom => Set(_degreesOfFreedom);

    /// <summary>Whether this holds a value; false only for the default.</summary>
    public bool HasValue => _degreesOfFreedom > 0;

    private string DebuggerText => HasValue ? ToString() : "not measured";

    /// <summary>A measured temperature from numbers in kelvin: for estimators that compute in <see cref="double"/>.</summary>
    /// <param name="kelvins">The estimate in kelvin, zero or more.</param>
    /// <param name="standardUncertainty">Standard uncertainty in kelvin, zero or more.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, 1 or more, or infinite.</param>
    /// <returns>The measured temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or out of range.</exception>
    public static MeasuredTemperature FromKelvins(double kelvins, double standardUncertainty, double degreesOfFreedom = double.PositiveInfinity) =>
        new(Guard.NonNegative(kelvins), Guard.NonNegative(standardUncertainty), Guard.DegreesOfFreedom(degreesOfFreedom));

    /// <summary>The difference of this temperature from an exact reference, for propagation.</summary>
    /// <param name="reference">The reference temperature.</param>
    /// <returns>This minus the reference; positive is warmer.</returns>
    /// <exception cref="InvalidOperationException">This is the default value: nothing was measured.</exception>
    public Measured<TemperatureDelta> Above(Temperature reference) =>
        Measured<TemperatureDelta>.FromSi(Set(_kelvins) - reference.Kelvins, _standardUncertainty, _degreesOfFreedom);

    /// <inheritdoc/>
    public bool Equals(MeasuredTemperature other) =>
        _kelvins.Equals(other._kelvins)
        && _standardUncertainty.Equals(other._standardUncertainty)
        && _degreesOfFreedom.Equals(other._degreesOfFreedom);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is MeasuredTemperature other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_kelvins, _standardUncertainty, _degreesOfFreedom);

    /// <summary>Value with its standard uncertainty in the last digits, invariant: <c>60.0(8) °C</c>.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => ToString(null, CultureInfo.InvariantCulture);

    /// <summary>Text in one of the styles of <see cref="Measured{T}.ToString(string, IFormatProvider)"/>; units °C and K.</summary>
    /// <param name="format">The style; null for S in °C.</param>
    /// <param name="formatProvider">Where the decimal separator comes from; null for invariant.</param>
    /// <returns>The text, or <c>not measured</c> for the default value.</returns>
    /// <exception cref="FormatException">The style or the unit is not known.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null) =>
        HasValue
            ? MeasuredText.Write(_kelvins, _standardUncertainty, _degreesOfFreedom, DisplayUnit.Temperatures, format, formatProvider)
            : "not measured";

    /// <summary>Equality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether both hold the same numbers.</returns>
    public static bool operator ==(MeasuredTemperature left, MeasuredTemperature right) => left.Equals(right);

    /// <summary>Inequality by value.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>Whether they differ.</returns>
    public static bool operator !=(MeasuredTemperature left, MeasuredTemperature right) => !left.Equals(right);

    private double Set(double number) =>
        HasValue ? number : throw new InvalidOperationException("This MeasuredTemperature is the default: nothing was measured.");
}
