namespace CommissioningPass.Inputs;

/// <summary>A bed screw as screws.csv states it, in millimetres.</summary>
internal sealed record BedScrew(string Name, double XMillimetres, double YMillimetres, string Thread, bool LeftHanded, bool TurnedFromAbove)
{
    private const string File = "screws.csv";

    internal static IReadOnlyList<BedScrew> Read(string folder)
    {
        CsvTable table = CsvTable.Read(folder, File, ["name", "x_mm", "y_mm", "thread", "hand", "turned_from"]);
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
                OneOf(row, "thread", "M2", "M2.5", "M3", "M4", "M5", "M6", "M8"),
                OneOf(row, "hand", "right", "left") == "left",
                OneOf(row, "turned_from", "above", "below") == "above"));
        }

        CheckPlaces(screws);
        return screws;
    }

    private static string OneOf(CsvRow row, string column, params string[] allowed)
    {
        string text = row.Text(column);
        return allowed.Contains(text, StringComparer.Ordinal)
            ? text
            : throw row.Fault($"{column} is '{text}'; it is one of {string.Join(", ", allowed)}.");
    }

    private static void CheckPlaces(List<BedScrew> screws)
    {
        double across = Math.Max(
            screws.Max(s => s.XMillimetres) - screws.Min(s => s.XMillimetres),
            screws.Max(s => s.YMillimetres) - screws.Min(s => s.YMillimetres));
        if (screws.Count < 2)
        {
            throw new InputException(File, null, "there is one screw; a bed is turned level by at least 2.");
        }

        if (across < 5)
        {
            throw new InputException(File, null, FormattableString.Invariant($"the screws lie within {across:G3} mm of each other; at least 5 mm is expected. Are x_mm and y_mm in millimetres?"));
        }
    }
}
