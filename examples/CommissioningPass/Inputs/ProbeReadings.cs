using PrinterMath.Measurement;

namespace CommissioningPass.Inputs;

/// <summary>probe.csv: heights of the bed seen from the plane the nozzle moves in, in millimetres, z positive upwards.</summary>
internal static class ProbeReadings
{
    internal const string File = "probe.csv";

    /// <summary>Column of the standard uncertainty of a height, which may be left out.</summary>
    internal const string Worth = "standard_uncertainty_mm";

    private const double Millimetre = 1e-3;

    internal static IReadOnlyList<ProbePoint> Read(string folder)
    {
        CsvTable table = CsvTable.Read(folder, File, ["x_mm", "y_mm", "z_mm"], Worth);
        ProbePoint[] points = [.. table.Rows.Select(Point)];
        Check(File, points);
        return points;
    }

    internal static ProbePoint Point(CsvRow row)
    {
        double x = row.Plausible("x_mm", row.Number("x_mm"), -2000, 2000, "mm");
        double y = row.Plausible("y_mm", row.Number("y_mm"), -2000, 2000, "mm");
        double z = row.Plausible("z_mm", row.Number("z_mm"), -500, 500, "mm");
        double worth = row.OptionalNumber(Worth) is { } u ? row.Plausible(Worth, u, 1e-5, 1, "mm") : 0;
        return ProbePoint.FromMeters(x * Millimetre, y * Millimetre, z * Millimetre, worth * Millimetre);
    }

    /// <summary>Whether the points of one pass make a plane, and look like millimetres.</summary>
    internal static void Check(string file, IReadOnlyList<ProbePoint> points)
    {
        if (points.Count < 3)
        {
            throw new InputException(file, null, FormattableString.Invariant($"there are {points.Count} points; a plane needs at least 3."));
        }

        double across = Math.Max(Extent(points, p => p.XMeters), Extent(points, p => p.YMeters)) / Millimetre;
        double rise = Extent(points, p => p.ZMeters) / Millimetre;
        if (across < 5)
        {
            throw new InputException(file, null, FormattableString.Invariant($"the points lie within {across:G3} mm of each other; at least 5 mm is expected. Are x_mm and y_mm in millimetres?"));
        }

        if (rise > across / 5)
        {
            throw new InputException(file, null, FormattableString.Invariant($"the heights differ by {rise:G4} mm over {across:G4} mm; at most a fifth is expected. Is z_mm in millimetres?"));
        }

        if (rise > 0 && rise < 2e-4)
        {
            throw new InputException(file, null, FormattableString.Invariant($"the heights differ by only {rise:G3} mm; no probe sees so little. Is z_mm in millimetres?"));
        }
    }

    private static double Extent(IReadOnlyList<ProbePoint> points, Func<ProbePoint, double> coordinate) => points.Max(coordinate) - points.Min(coordinate);
}
