using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>The sentences of the findings about maps and the planning of them.</summary>
internal static class MapFindings
{
    internal static Finding Outlier(MapOutlier outlier) => new(
        SurfaceFindings.MapOutlier,
        FindingSeverity.Caution,
        Text($"The height at {outlier.Place} lies {outlier.Deviation.Micrometers:G3} µm off what its neighbours lead to expect, {outlier.Score:0.0} times what is usual: probe it again."),
        new FindingNumber("x", outlier.Place.XMeters, "m"),
        new FindingNumber("y", outlier.Place.YMeters, "m"),
        new FindingNumber("deviation", outlier.Deviation.Meters, "m"),
        new FindingNumber("score", outlier.Score, "1"));

    internal static Finding TooSmall(int nodes) => new(
        SurfaceFindings.MapTooSmall,
        FindingSeverity.Caution,
        Text($"{nodes} probed nodes are too few to compare each with its neighbours: nine are needed, in three columns and three rows or more."),
        new FindingNumber("nodes", nodes, "1"));

    internal static Finding CurvatureWithinNoise(string axis, double curvature, double noise) => new(
        SurfaceFindings.CurvatureWithinNoise,
        FindingSeverity.Caution,
        Text($"The largest curvature along {axis}, {curvature:G3} 1/m, may be noise alone, which reaches {noise:G3} 1/m: probe farther apart, or more often."),
        new FindingNumber("curvature", curvature, "m-1"),
        new FindingNumber("noise", noise, "m-1"));

    internal static Finding PlanOutOfReach(ProbePlanOptions options) => new(
        SurfaceFindings.PlanOutOfReach,
        FindingSeverity.Blocking,
        Text($"No grid of up to {options.MostPlaces} places with up to {options.MostReadings} readings each is good to {options.Tolerance.Micrometers:G3} µm: allow more, or a probe that repeats better."),
        new FindingNumber("tolerance", options.Tolerance.Meters, "m"),
        new FindingNumber("repeatability", options.Repeatability.Meters, "m"),
        new FindingNumber("places", options.MostPlaces, "1"),
        new FindingNumber("readings", options.MostReadings, "1"));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
