using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Two diameters of the filament at one place, measured at right angles. Equality by value in SI.</summary>
/// <remarks>The default holds two diameters of zero and is refused by <see cref="FilamentDiameter.From"/>.</remarks>
/// <example><code>FilamentPlace place = FilamentPlace.Of(Length.FromMillimeters(1.74), Length.FromMillimeters(1.76));</code></example>
public readonly record struct FilamentPlace
{
    private FilamentPlace(double first, double second)
    {
        FirstMeters = first;
        SecondMeters = second;
    }

    /// <summary>Diameter in one direction.</summary>
    public Length First => Length.FromMeters(FirstMeters);

    /// <summary>Diameter at right angles to it.</summary>
    public Length Second => Length.FromMeters(SecondMeters);

    internal double FirstMeters { get; }

    internal double SecondMeters { get; }

    /// <summary>Two diameters at one place.</summary>
    /// <param name="first">Diameter in one direction, greater than zero.</param>
    /// <param name="second">Diameter at right angles to it, greater than zero.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A diameter is not positive.</exception>
    public static FilamentPlace Of(Length first, Length second) =>
        new(Guard.Positive(first.Meters, nameof(first)), Guard.Positive(second.Meters, nameof(second)));

    /// <summary>Invariant text.</summary>
    /// <returns>Both diameters in millimetres.</returns>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{FirstMeters * 1e3:G5} mm x {SecondMeters * 1e3:G5} mm");
}
