using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>The sentences of the findings about grids and height models.</summary>
internal static class GridFindings
{
    internal static readonly Finding UncertaintyUnknown = new(
        SurfaceFindings.UncertaintyUnknown,
        FindingSeverity.Blocking,
        "Nothing is known of the probe's repeatability: state it, or probe some places more than once.");

    internal static Finding Repeated(int places, int readings) => new(
        SurfaceFindings.Repeated,
        FindingSeverity.Note,
        Text($"{places} places were probed more than once, {readings} readings in all; their heights are averaged."),
        new FindingNumber("places", places, "1"),
        new FindingNumber("readings", readings, "1"));

    internal static Finding RepeatsDisagree(double ratio, int freedom) => new(
        SurfaceFindings.RepeatsDisagree,
        FindingSeverity.Caution,
        Text($"Repeated heights of one place scatter {ratio:0.0} times as much as their uncertainty says: the probe repeats worse, or something moved."),
        new FindingNumber("scatterRatio", ratio, "1"),
        new FindingNumber("degreesOfFreedom", freedom, "1"));

    internal static Finding Missing(int missing, int nodes) => new(
        SurfaceFindings.Missing,
        FindingSeverity.Caution,
        Text($"{missing} of {nodes} nodes were not probed."),
        new FindingNumber("missing", missing, "1"),
        new FindingNumber("nodes", nodes, "1"));

    internal static Finding Bridged(int nodes, double largestError) => new(
        SurfaceFindings.Bridged,
        FindingSeverity.Caution,
        Text($"{nodes} nodes that were not probed are bridged from the others; the bridge may be off by {largestError * 1e6:G2} µm (standard uncertainty, at the worst node)."),
        new FindingNumber("nodes", nodes, "1"),
        new FindingNumber("largestStandardUncertainty", largestError, "m"));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
