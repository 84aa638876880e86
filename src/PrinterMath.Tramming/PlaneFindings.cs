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

    internal static Finding KeptCollinear(int kept, int count, double farthest, double limit) => new(
        "plane.agreement.collinear",
        FindingSeverity.Blocking,
        Text($"Of the {count} readings those that agree best ({kept}) lie within {farthest * 1e3:0.###} mm of one line, so they say nothing about the tilt across it. Fit by least squares, or probe more places."),
        new FindingNumber("kept", kept, "1"),
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

    internal static Finding UnitOfPlaces(double extent) => new(
        "plane.unit.suspect",
        FindingSeverity.Caution,
        Text($"The points span {extent * 1e3:G3} mm, which is no bed of a printer: are x and y in the unit that was said?"),
        new FindingNumber("extent", extent, "m"));

    internal static Finding UnitOfHeights(double spread, double extent) => new(
        "plane.unit.suspect",
        FindingSeverity.Caution,
        Text($"The heights spread over {spread * 1e3:G3} mm across {extent * 1e3:G3} mm of bed, which no screw takes up and no probe resolves: is z in the unit that was said?"),
        new FindingNumber("heightSpread", spread, "m"),
        new FindingNumber("extent", extent, "m"));

    internal static Finding Upright() => new(
        "plane.upright",
        FindingSeverity.Blocking,
        "The points scatter in z more than they spread along the bed: the plane nearest to them stands upright and has no height at a place.");

    internal static Finding RepeatabilityUnknown() => new(
        "flatness.repeatability.unknown",
        FindingSeverity.Blocking,
        "Noise and shape cannot be told apart in one set of readings; state the probe's repeatability to correct flatness for noise.");

    internal static Finding FewerTrials(int trials, int wanted, int points) => new(
        "flatness.trials.fewer",
        FindingSeverity.Note,
        Text($"For {points} points {trials} probings were simulated instead of {wanted}, to bound the work: limits of flatness are somewhat less sharp. Allow more simulated readings for sharper ones."),
        new FindingNumber("trials", trials, "1"),
        new FindingNumber("wanted", wanted, "1"),
        new FindingNumber("points", points, "1"));

    internal static Finding WithinNoise(double chance) => new(
        "flatness.withinNoise",
        FindingSeverity.Note,
        Text($"A perfect plane would show as much peak-to-valley in {chance * 100:0} of 100 probings: no departure from a plane is proved."),
        new FindingNumber("chanceIfFlat", chance, "1"));

    internal static Finding Level() => new(
        "plane.level",
        FindingSeverity.Note,
        "The tilt cannot be told from none at 95 %; its direction is not known.");

    internal static Finding Outliers(IReadOnlyList<ProbePoint> points, PlaneResidual[] table)
    {
        int[] indices = [.. table.Where(r => r.IsOutlier).Select(r => r.Index)];
        string who = string.Join(", ", indices.Select(i => Text($"({points[i].XMeters * 1e3:0.##}, {points[i].YMeters * 1e3:0.##}) mm by {table[i].SiValue * 1e3:0.###} mm")));
        return new Finding(
            "plane.outlier",
            FindingSeverity.Caution,
            $"These points stand out from the plane more than the scatter of the others allows: {who}. Probe them again: dirt, a bad reading, or a bed that bends there.",
            [.. indices.Select(i => new FindingNumber("index", i, "1"))]);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
