using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>The findings about a probe and its trials, in one place so that codes stay unique.</summary>
internal static class RepeatabilityFindings
{
    internal static Finding Alike(int count) => new(
        "repeatability.alike",
        FindingSeverity.Blocking,
        Text($"The {count} readings are all alike: the scatter hides behind the resolution. Its standard uncertainty is a step over the square root of 12."),
        new FindingNumber("readings", count, "1"));

    internal static Finding AlikeAboutDrift(int count, double slope) => new(
        "repeatability.alike",
        FindingSeverity.Blocking,
        Text($"The {count} readings change by {slope * 1e6:0.###} µm each without any scatter about that line: they drift, and the scatter hides behind the resolution."),
        new FindingNumber("readings", count, "1"),
        new FindingNumber("driftPerReading", slope, "m"));

    /// <summary>A scatter that no probe has: more than a millimetre, or less than a nanometre. The limits are this library's own, no source.</summary>
    internal static Finding? Units(string code, double scatter) => scatter is >= 1e-9 and <= 1e-3
        ? null
        : new Finding(
            code,
            FindingSeverity.Caution,
            Text($"One reading scatters by {scatter * 1e6:G3} µm, which no probe does: are the readings in the unit that was said?"),
            new FindingNumber("standardDeviation", scatter, "m"));

    internal static Finding OneOperator() => new(
        "gauge.operators.one",
        FindingSeverity.Note,
        "There is one operator (or probe): what others would read differently is not seen, and the gauge counts for its repeatability alone.");

    internal static Finding WarmUp(int count) => new(
        "repeatability.warmUp",
        FindingSeverity.Caution,
        count == 1
            ? "The first reading differs from what follows; trigger once before the readings that count."
            : Text($"The first {count} readings differ from what follows; let the probe warm up, or trigger {count} times before the readings that count."),
        new FindingNumber("readings", count, "1"));

    internal static Finding Outliers(int[] indices, double[] z) => new(
        "repeatability.outlier",
        FindingSeverity.Caution,
        $"These readings stand out from the others, by index: {string.Join(", ", indices.Select(i => Text($"{i} ({z[i] * 1e3:0.####} mm)")))}.",
        [.. indices.Select(i => new FindingNumber("index", i, "1"))]);

    internal static Finding Drift(double slope, double u) => new(
        "repeatability.drift",
        FindingSeverity.Caution,
        Text($"The readings drift by {slope * 1e6:0.###} ± {u * 1e6:0.###} µm each, more than chance explains: wait for a steady temperature, or look for what is loose. The scatter is given about the drift."),
        new FindingNumber("driftPerReading", slope, "m"),
        new FindingNumber("standardUncertainty", u, "m"));

    internal static Finding Few(int count) => new(
        "repeatability.few",
        FindingSeverity.Note,
        Text($"With {count} readings warm-up is not looked for, and drift or outliers are seen only when large; take eight or more."),
        new FindingNumber("readings", count, "1"));

    internal static Finding NoScatter() => new(
        "comparison.alike",
        FindingSeverity.Blocking,
        "The readings of one side are all alike: its scatter hides behind the resolution and cannot be compared.");

    internal static Finding Pooled(double probability) => new(
        "gauge.interaction.pooled",
        FindingSeverity.Note,
        Text($"Operators and places do not act together (p = {probability:0.##}): that sum of squares was pooled with the repeatability."),
        new FindingNumber("probability", probability, "1"));

    internal static Finding Negative(string component) => new(
        "gauge.variance.negative",
        FindingSeverity.Note,
        $"The variance of the {component} came out below zero and is given as zero: it cannot be told from the other scatter.");

    internal static Finding FewCategories(int categories) => new(
        "gauge.categories.few",
        FindingSeverity.Caution,
        Text($"The gauge tells {categories} categories of places apart; five are asked for in common practice. It is too coarse for what varies here."),
        new FindingNumber("categories", categories, "1"));

    internal static Finding Degenerate() => new(
        "gauge.alike",
        FindingSeverity.Blocking,
        "Repeated readings are all alike: the repeatability hides behind the resolution.");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
