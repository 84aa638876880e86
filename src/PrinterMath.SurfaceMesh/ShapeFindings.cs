using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>The sentences of the findings about shape and flatness.</summary>
internal static class ShapeFindings
{
    internal static readonly Finding FlatnessUndetermined = new(
        SurfaceFindings.FlatnessUndetermined,
        FindingSeverity.Blocking,
        "The points lie on one line or are fewer than four: no plane can be told from their shape.");

    internal static readonly Finding RepeatabilityUnknown = new(
        SurfaceFindings.RepeatabilityUnknown,
        FindingSeverity.Blocking,
        "Without the probe's repeatability the peak-to-valley cannot be corrected for noise: state it, or give the points their uncertainty.");

    internal static Finding Undetermined(int points) => new(
        SurfaceFindings.ShapeUndetermined,
        FindingSeverity.Blocking,
        Text($"{points} points cannot tell offset, tilts, bows and twist apart: six are needed, at three or more places along x and along y, and not all on one curve of second degree."),
        new FindingNumber("points", points, "1"));

    internal static Finding LeftOver(double ratio, double chance) => new(
        SurfaceFindings.ShapeLeftOver,
        FindingSeverity.Caution,
        Text($"What the terms leave over is {ratio:0.0} times the probe's repeatability: there is shape of higher order, or a reading is wrong."),
        new FindingNumber("ratioToNoise", ratio, "1"),
        new FindingNumber("chanceProbability", chance, "1"));

    internal static Finding NoiseOverstated(double ratio, double chance) => new(
        SurfaceFindings.NoiseOverstated,
        FindingSeverity.Caution,
        Text($"What the terms leave over is only {ratio:0.00} times the stated repeatability: the probe repeats better than stated."),
        new FindingNumber("ratioToNoise", ratio, "1"),
        new FindingNumber("chanceProbability", chance, "1"));

    internal static Finding FlatWithinNoise(double chance) => new(
        SurfaceFindings.FlatWithinNoise,
        FindingSeverity.Note,
        Text($"A flat surface would give readings that scatter this much with a probability of {chance:P0}."),
        new FindingNumber("chanceProbability", chance, "1"));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
