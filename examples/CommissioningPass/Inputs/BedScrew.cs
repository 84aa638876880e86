namespace CommissioningPass.Inputs;

/// <summary>A bed screw as screws.csv states it, in millimetres.</summary>
internal sealed record BedScrew(string Name, double XMillimetres, double YMillimetres, string Thread, bool TurnedFromAbove, bool ClockwiseRaises)
{
    internal const string File = "screws.csv";

    internal static IReadOnlyList<BedScrew> Read(string folder)
    {
        CsvTable table = CsvTable.Read(folder, File, ["name", "x_mm", "y_mm", "thread", "turned_from", "clockwise"]);
        var screws = new List<BedScrew>(table.Rows.Count);
        foreach (CsvRow row in table.Rows)
        {
            string name = row.Text("name");
            if (screws.Exists(screw => screw.Name == name))
            {
                throw row.Fault($"the name '{name}' stands twice.");
            }

            screws.Add(new BedScrew(
                name,
                row.Plausible("x_mm", row.Number("x_mm"), -2000, 2000, "mm"),
                row.Plausible("y_mm", row.Number("y_mm"), -2000, 2000, "mm"),
                row.OneOf("thread", "M2", "M2.5", "M3", "M4", "M5", "M6", "M8"),
                row.OneOf("turned_from", "above", "below") == "above",
                row.OneOf("clockwise", "raises", "lowers") == "raises"));
        }

        CheckPlaces(screws);
        return screws;
    }

    private static void CheckPlaces(List<BedScrew> screws)
    {
        if (screws.Count is < 3 or > 4)
        {
            throw new InputException(File, null, FormattableString.Invariant($"there are {screws.Count} screws; a bed stands on 3 or 4."));
        }

        double across = Math.Max(
            screws.Max(s => s.XMillimetres) - screws.Min(s => s.XMillimetres),
            screws.Max(s => s.YMillimetres) - screws.Min(s => s.YMillimetres));
        if (across < 5)
        {
            throw new InputException(File, null, FormattableString.Invariant($"the screws lie within {across:G3} mm of each other; at least 5 mm is expected. Are x_mm and y_mm in millimetres?"));
        }
    }
}
