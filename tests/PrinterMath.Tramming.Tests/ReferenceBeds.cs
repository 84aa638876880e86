using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Tramming.Tests;

/// <summary>Probe sets with answers from general-purpose statistics programs.</summary>
internal static class ReferenceBeds
{
    private static readonly double[] Heights25 =
    [
        .080, .148, .172, .240, .264,
        .067, .135, .159, .183, .251,
        .054, .078, .146, .170, .194,
        .041, .065, .089, .157, .181,
        -.016, .052, .076, .100, .168,
    ];

    /// <summary>25 points on a 50 mm grid, row by row along x.</summary>
    internal static List<ProbePoint> P25() => [.. Heights25.Select((z, k) => Bed.Point(50 * (k % 5), 50 * (k / 5), z))];

    /// <summary>9 points on a 90 mm grid.</summary>
    internal static List<ProbePoint> P9() =>
    [
        Bed.Point(20, 20, .02), Bed.Point(110, 20, .05), Bed.Point(200, 20, .11),
        Bed.Point(20, 110, -.03), Bed.Point(110, 110, .04), Bed.Point(200, 110, .06),
        Bed.Point(20, 200, -.09), Bed.Point(110, 200, -.02), Bed.Point(200, 200, .05),
    ];

    /// <summary>A ground plate of 42 mm read by its vendor, 800 points, source and licence in the file.</summary>
    internal static List<ProbePoint> Plate() =>
    [
        .. from line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "lsst_wfs_sn21844_points.csv"))
           where line.Length > 0 && char.IsAsciiDigit(line[0])
           let fields = line.Split(',').Select(field => double.Parse(field, CultureInfo.InvariantCulture)).ToArray()
           select Bed.Point(fields[0], fields[1], fields[2]),
    ];
}
