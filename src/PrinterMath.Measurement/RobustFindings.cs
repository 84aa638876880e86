using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>What a robust estimate may say about its readings.</summary>
internal static class RobustFindings
{
    internal static Finding NoSpread(int alike, int readings) => new(
        "robust.spread.zero",
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"{alike} of {readings} readings are the same as the median: their spread is hidden by the resolution."),
        new FindingNumber("alike", alike, "1"),
        new FindingNumber("readings", readings, "1"));

    internal static Finding NotConverged(int iterations, double change) => new(
        "robust.iterations",
        FindingSeverity.Caution,
        string.Create(CultureInfo.InvariantCulture, $"The estimate still moved by {change:G2} of its spread after {iterations} steps."),
        new FindingNumber("iterations", iterations, "1"),
        new FindingNumber("change", change, "1"));

    internal static Finding SetAside(int readings, double limit) => new(
        "robust.readings.limited",
        FindingSeverity.Note,
        string.Create(CultureInfo.InvariantCulture, $"{readings} readings lie beyond {limit:G3} spreads and count only up to there."),
        new FindingNumber("readings", readings, "1"),
        new FindingNumber("limit", limit, "1"));
}
