using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>One trial of the feed: the length of filament that was commanded and the length that was measured. Equality by value in SI.</summary>
/// <remarks>The default holds two lengths of zero and is refused by <see cref="FeedCalibration.Fit"/>.</remarks>
/// <example><code>FeedTrial trial = FeedTrial.Of(commanded: Length.FromMillimeters(100), measured: Length.FromMillimeters(97.3));</code></example>
public readonly record struct FeedTrial
{
    private FeedTrial(double commanded, double measured)
    {
        CommandedMeters = commanded;
        MeasuredMeters = measured;
    }

    /// <summary>Commanded length.</summary>
    public Length Commanded => Length.FromMeters(CommandedMeters);

    /// <summary>Measured length.</summary>
    public Length Measured => Length.FromMeters(MeasuredMeters);

    internal double CommandedMeters { get; }

    internal double MeasuredMeters { get; }

    /// <summary>A trial.</summary>
    /// <param name="commanded">Commanded length, greater than zero.</param>
    /// <param name="measured">Measured length, greater than zero.</param>
    /// <returns>The trial.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length is not positive.</exception>
    public static FeedTrial Of(Length commanded, Length measured) =>
        new(Guard.Positive(commanded.Meters, nameof(commanded)), Guard.Positive(measured.Meters, nameof(measured)));

    /// <summary>Invariant text.</summary>
    /// <returns>Both lengths.</returns>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{CommandedMeters * 1e3:G6} mm commanded, {MeasuredMeters * 1e3:G6} mm measured");
}
