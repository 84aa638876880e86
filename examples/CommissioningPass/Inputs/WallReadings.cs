using PrinterMath.Extrusion;
using PrinterMath.Measurement;
using UnitsNet;

namespace CommissioningPass.Inputs;

/// <summary>walls.csv, if it is there: caliper readings of a wall of one bead, in millimetres.</summary>
internal sealed class WallReadings
{
    internal const string File = "walls.csv";

    private static readonly string[] Settings = ["bead_width_mm", "layer_height_mm", "flow", "resolution_mm", "standard_uncertainty_mm"];

    private WallReadings(Bead target, double flow, Measured<Length> thickness)
    {
        Target = target;
        Flow = flow;
        Thickness = thickness;
    }

    internal Bead Target { get; }

    /// <summary>Flow the wall was printed at, a ratio.</summary>
    internal double Flow { get; }

    internal Measured<Length> Thickness { get; }

    internal static WallReadings? Read(string folder)
    {
        if (!System.IO.File.Exists(Path.Combine(folder, File)))
        {
            return null;
        }

        CsvTable table = CsvTable.Read(folder, File, ["thickness_mm", .. Settings]);
        CsvRow first = table.Rows[0];
        foreach ((CsvRow row, string column) in table.Rows.SelectMany(row => Settings.Select(column => (row, column))))
        {
            if (row.Number(column) != first.Number(column))
            {
                throw row.Fault($"{column} differs from line {first.Line}; all rows are readings of one wall.");
            }
        }

        double width = first.Plausible("bead_width_mm", first.Number("bead_width_mm"), 0.1, 5, "mm");
        double height = first.Plausible("layer_height_mm", first.Number("layer_height_mm"), 0.02, 2, "mm");
        if (height > width)
        {
            throw first.Fault("layer_height_mm is greater than bead_width_mm.");
        }

        double flow = first.Plausible("flow", first.Number("flow"), 0.3, 3, "as a ratio");
        double step = first.Plausible("resolution_mm", first.Number("resolution_mm"), 1e-4, 0.1, "mm");
        double instrument = first.Plausible("standard_uncertainty_mm", first.Number("standard_uncertainty_mm"), 1e-4, 0.2, "mm");
        Length[] readings = [.. table.Rows.Select(row => Length.FromMillimeters(row.Plausible("thickness_mm", row.Number("thickness_mm"), width / 2, 2 * width, "mm")))];
        return new WallReadings(
            Bead.FromWidthAndHeight(Length.FromMillimeters(width), Length.FromMillimeters(height)),
            flow,
            CaliperReadings.Combine(readings, Length.FromMillimeters(step), Length.FromMillimeters(instrument)).Result);
    }
}
