using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Filament measured at several places in two directions: mean diameter, ovality, and the area that flow is computed from.</summary>
/// <remarks>
/// Area of a place π/4·d₁·d₂, as of an ellipse with these axes; mean and scatter over the places, which count as independent, so take them a metre apart or
/// more. Ovality is the mean of |d₁ − d₂|: it is not less than the noise of reading, and not more than the true difference of the axes when the two directions
/// do not meet them. Source: JCGM 100:2008, 4.2.3 and F.2.2.1; plane geometry.
/// </remarks>
/// <example><code>
/// FilamentDiameter spool = FilamentDiameter.From(places, new FilamentDiameterOptions { Resolution = Length.FromMillimeters(0.01) });
/// Measured&lt;Area&gt; area = spool.Area.Result;
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FilamentDiameter
{
    private readonly Results? _results;
    private readonly ReadOnlyCollection<Finding> _findings;

    private FilamentDiameter(Results? results, int places, Tolerance<Length>? limit, List<Finding> findings)
    {
        _results = results;
        PlaceCount = places;
        _findings = findings.AsReadOnly();
        Verdict = results is null ? null : limit?.Judge(results.Mean);
    }

    /// <summary>What was noticed, see <see cref="ExtrusionFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Number of places.</summary>
    public int PlaceCount { get; }

    /// <summary>Mean diameter with its budget.</summary>
    /// <exception cref="IndeterminateException">All readings are alike and no resolution was stated.</exception>
    public UncertaintyBudget<Length> Mean => Known.Mean;

    /// <summary>Ovality, the mean of |d₁ − d₂|, zero or more.</summary>
    /// <exception cref="IndeterminateException">All readings are alike and no resolution was stated.</exception>
    public Measured<Length> Ovality => Known.Ovality;

    /// <summary>Mean area of the section with its budget.</summary>
    /// <exception cref="IndeterminateException">All readings are alike and no resolution was stated.</exception>
    public UncertaintyBudget<Area> Area => Known.Area;

    /// <summary>The mean diameter against the limit; null when no limit was given or the readings hold no answer.</summary>
    public Verdict<Length>? Verdict { get; }

    private Results Known => _results ?? throw new IndeterminateException(_findings.First(f => f.Severity == FindingSeverity.Blocking));

    /// <summary>Diameter, ovality and area from several places.</summary>
    /// <param name="places">At least two places along the filament.</param>
    /// <param name="options">Instrument and limit; null for the defaults.</param>
    /// <returns>The result.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two places, a place without diameters, or an option out of range.</exception>
    public static FilamentDiameter From(IReadOnlyList<FilamentPlace> places, FilamentDiameterOptions? options = null)
    {
        options ??= new FilamentDiameterOptions();
        Guard.AtLeast(Guard.NotNull(places).Count, 2, nameof(places));
        double[] first = [.. places.Select(place => Guard.Positive(place.FirstMeters, nameof(places)))];
        double[] second = [.. places.Select(place => place.SecondMeters)];
        double step = options.Resolution is { } resolution ? Guard.Positive(resolution.Meters, nameof(options.Resolution)) / Math.Sqrt(12) : 0;
        double instrument = options.InstrumentUncertainty is { } u ? Guard.Positive(u.Meters, nameof(options.InstrumentUncertainty)) : 0;
        double[] all = [.. first, .. second];
        List<Finding> findings = [.. Plausibility(all)];
        if (step == 0 && all.AsSpan().IndexOfAnyExcept(all[0]) < 0)
        {
            findings.Add(new Finding(
                ExtrusionFindings.FilamentResolutionMissing,
                FindingSeverity.Blocking,
                string.Create(CultureInfo.InvariantCulture, $"All {all.Length} readings are {all[0] * 1e3:G5} mm: state the step of the scale."),
                new FindingNumber("reading", all[0], "m")));
            return new FilamentDiameter(null, places.Count, options.Limit, findings);
        }

        return new FilamentDiameter(Results.Of(first, second, step, instrument), places.Count, options.Limit, findings);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Mean and ovality, or the finding that stands in their place.</returns>
    public override string ToString() => _results is null ? _findings[^1].ToString() : $"diameter {Mean.Result}, ovality {Ovality}";

    private static IEnumerable<Finding> Plausibility(double[] readings)
    {
        double middle = Median.Of(readings);
        if (middle is < 1e-3 or > 4e-3)
        {
            yield return new Finding(
                ExtrusionFindings.FilamentImplausible,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"A diameter of {middle * 1e3:G4} mm is far from any filament: check the unit."),
                new FindingNumber("diameter", middle, "m"));
        }

        double farthest = readings.MaxBy(reading => Math.Abs(Math.Log(reading / middle)));
        if (Math.Abs((farthest / middle) - 1) > 0.25)
        {
            yield return new Finding(
                ExtrusionFindings.FilamentMixedUnits,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"One reading is {farthest * 1e3:G4} mm and the middle one {middle * 1e3:G4} mm: check its unit, or read it again."),
                new FindingNumber("reading", farthest, "m"),
                new FindingNumber("median", middle, "m"));
        }
    }

    private sealed record Results(UncertaintyBudget<Length> Mean, Measured<Length> Ovality, UncertaintyBudget<Area> Area)
    {
        internal static Results Of(double[] first, double[] second, double step, double instrument)
        {
            double[] means = [.. first.Select((d, i) => (d + second[i]) / 2)];
            double[] areas = [.. first.Select((d, i) => Math.PI / 4 * d * second[i])];
            double[] differences = [.. first.Select((d, i) => Math.Abs(d - second[i]))];
            double slope = Math.PI / 2 * means.Average();

            // A difference of two readings on one instrument has two independent steps in it and nothing of the instrument.
            return new Results(
                Combine<Length>(means, step, instrument, 1),
                Combine<Length>(differences, step * Math.Sqrt(2), 0, 1).Result,
                Combine<Area>(areas, step, instrument, slope));
        }

        private static UncertaintyBudget<T> Combine<T>(double[] values, double step, double instrument, double slope)
            where T : struct =>
            CaliperReadings.Combine<T>(values, step * slope, instrument * slope);
    }
}
