using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>A length of a printed part: what it should be, exactly, and what was measured.</summary>
/// <example><code>
/// PrintedFeature slot = PrintedFeature.Of(FeatureKind.Inner, PrintAxis.X, Length.FromMillimeters(20), measured);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PrintedFeature
{
    private PrintedFeature(FeatureKind kind, PrintAxis axis, double nominal, Measured<Length> measured)
    {
        Kind = kind;
        Axis = axis;
        NominalMeters = nominal;
        Measured = measured;
    }

    /// <summary>What the length lies between.</summary>
    public FeatureKind Kind { get; }

    /// <summary>Direction of the machine.</summary>
    public PrintAxis Axis { get; }

    /// <summary>Nominal length L of the drawing, exact.</summary>
    public Length Nominal => Length.FromMeters(NominalMeters);

    /// <summary>Measured length.</summary>
    public Measured<Length> Measured { get; }

    internal double NominalMeters { get; }

    /// <summary>Measured minus nominal in metres.</summary>
    internal double Deviation => Measured.SiValue - NominalMeters;

    /// <summary>A feature.</summary>
    /// <param name="kind">What the length lies between.</param>
    /// <param name="axis">Direction of the machine.</param>
    /// <param name="nominal">Nominal length, greater than zero.</param>
    /// <param name="measured">Measured length with an uncertainty, both greater than zero; see <see cref="CaliperReadings"/>.</param>
    /// <returns>The feature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive, or kind or axis is not one of those named.</exception>
    /// <exception cref="InvalidOperationException">The length was never measured.</exception>
    public static PrintedFeature Of(FeatureKind kind, PrintAxis axis, Length nominal, Measured<Length> measured)
    {
        Guard.Positive(measured.SiValue, nameof(measured));
        Guard.Positive(measured.SiStandardUncertainty, nameof(measured));
        return new PrintedFeature(
            Enum.IsDefined(kind) ? kind : throw Guard.Out(nameof(kind), kind, "one of the named kinds"),
            Enum.IsDefined(axis) ? axis : throw Guard.Out(nameof(axis), axis, "one of the named axes"),
            Guard.Positive(nominal.Meters, nameof(nominal)),
            measured);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Kind, axis, nominal and measured length.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Kind} {Axis} {NominalMeters * 1e3:G6} mm: {Measured}");
}
