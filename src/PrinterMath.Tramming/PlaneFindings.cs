using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>The findings of a plane fit, in one place so that codes stay unique.</summary>
internal static class PlaneFindings
{
    internal static Finding Collinear(int count, double farthest, double limit) => new(
        "plane.collinear",
        FindingSeverity.Blocking,
        Text($"The {count} probe points lie within {farthest * 1e3:0.###} mm of one line; across it they say nothing about the tilt. Probe at least one point well off that line."),
        new FindingNumber("points", count, "1"),
        new FindingNumber("farthestFromLine", farthest, "m"),
        new FindingNumber("leastDistance", limit, "m"));

    internal static Finding UncertaintyUnknown(int count) => new(
        "plane.uncertainty.unknown",
        FindingSeverity.Blocking,
        count == 3
            ? "A plane always passes through 3 points, so they say nothing about the scatter; state the probe's repeatability or probe more points."
            : Text($"The {count} readings lie on a plane without any scatter: it is hidden by the probe's resolution. State the probe's repeatability or the points' uncertainties."),
        new FindingNumber("points", count, "1"));

    internal static Finding Misfit(double ratio, int degreesOfFreedom) => new(
        "plane.misfit",
        FindingSeverity.Caution,
        Text($"The readings scatter about the plane {ratio:0.##} times as much as their stated uncertainties explain: the surface is not a plane, or the uncertainties are too small."),
        new FindingNumber("scatterRatio", ratio, "1"),
        new FindingNumber("degreesOfFreedom", degreesOfFreedom, "1"));

    internal static Finding Mixed(int with, int count) => new(
        "plane.uncertainties.mixed",
        FindingSeverity.Note,
        Text($"Only {with} of {count} points carry an uncertainty; it was set aside and the scatter judged from the residuals."),
        new FindingNumber("withUncertainty", with, "1"),
        new FindingNumber("points", count, "1"));

    internal static Finding Level() => new(
        "plane.level",
        FindingSeverity.Note,
        "The tilt cannot be told from none at 95 %; its direction is not known.");

    internal static Finding Outliers(PlaneResidual[] table)
    {
        int[] indices = [.. table.Where(r => r.IsOutlier).Select(r => r.Index)];
        string who = string.Join(", ", indices.Select(i => Text($"{i} ({table[i].SiValue * 1e3:0.###} mm)")));
        return new Finding(
            "plane.outlier",
            FindingSeverity.Caution,
            $"These points stand out from the plane more than the scatter of the others allows, by index: {who}. Probe them again: dirt, a bad reading, or a bed that bends there.",
            [.. indices.Select(i => new FindingNumber("index", i, "1"))]);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
