using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>One length read with two instruments, each reading with its uncertainty.</summary>
/// <remarks>Equality by value; the default was never measured.</remarks>
public readonly record struct PairedReading
{
    private PairedReading(Measured<Length> first, Measured<Length> second) => (First, Second) = (first, second);

    /// <summary>Reading of the first instrument.</summary>
    public Measured<Length> First { get; }

    /// <summary>Reading of the second instrument.</summary>
    public Measured<Length> Second { get; }

    /// <summary>A pair.</summary>
    /// <param name="first">Reading of the first instrument, its standard uncertainty greater than zero.</param>
    /// <param name="second">Reading of the second, likewise; the two errors are independent.</param>
    /// <returns>The pair.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An uncertainty is zero.</exception>
    /// <exception cref="InvalidOperationException">A reading was never measured.</exception>
    public static PairedReading Of(Measured<Length> first, Measured<Length> second)
    {
        Guard.Positive(first.SiStandardUncertainty, nameof(first));
        Guard.Positive(second.SiStandardUncertainty, nameof(second));
        return new PairedReading(first, second);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Both readings.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{First} and {Second}");
}
