using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A map of a bed at one temperature of that bed.</summary>
/// <example><code>HeatedMap warm = HeatedMap.At(Temperature.FromDegreesCelsius(60), grid);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class HeatedMap
{
    private HeatedMap(double kelvins, ProbedGrid grid) => (Kelvins, Grid) = (kelvins, grid);

    /// <summary>Temperature of the bed, soaked.</summary>
    public Temperature Temperature => Temperature.FromKelvins(Kelvins);

    /// <summary>The map.</summary>
    public ProbedGrid Grid { get; }

    internal double Kelvins { get; }

    /// <summary>A map.</summary>
    /// <param name="temperature">Temperature of the bed, above absolute zero; give it time to soak.</param>
    /// <param name="grid">The map.</param>
    /// <returns>The map at its temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is not above absolute zero.</exception>
    public static HeatedMap At(Temperature temperature, ProbedGrid grid) =>
        new(Guard.Positive(temperature.Kelvins, nameof(temperature)), Guard.NotNull(grid));

    /// <summary>Invariant text.</summary>
    /// <returns>Temperature and grid.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kelvins - 273.15:0.#} °C: {Grid}");
}
