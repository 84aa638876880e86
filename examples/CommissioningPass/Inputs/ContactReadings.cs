using PrinterMath.Tramming;
using UnitsNet;

namespace CommissioningPass.Inputs;

/// <summary>contact.csv, if it is there: heights of the axis at one place and whether the nozzle, or the gauge under it, touched.</summary>
internal static class ContactReadings
{
    internal const string File = "contact.csv";

    internal static IReadOnlyList<ContactTrial>? Read(string folder) => System.IO.File.Exists(Path.Combine(folder, File))
        ?
        [
            .. CsvTable.Read(folder, File, ["height_mm", "outcome"]).Rows.Select(row => ContactTrial.At(
                Length.FromMillimeters(row.Plausible("height_mm", row.Number("height_mm"), -100, 1000, "mm")),
                row.OneOf("outcome", "clear", "touching") == "touching" ? ContactOutcome.Touching : ContactOutcome.Clear)),
        ]
        : null;
}
