using PrinterMath.Measurement;
using PrinterMath.Resonance;

namespace CommissioningPass.Inputs;

/// <summary>acceleration.csv, if it is there: the head tapped once askew, so that x and y ring down.</summary>
internal static class TapRecording
{
    internal const string File = "acceleration.csv";

    private const int FewestRows = 200;

    /// <summary>Findings that would falsify every result; others are shown and the step goes on.</summary>
    private static readonly string[] Refused = [RecordFindings.NoClock, RecordFindings.TimeUnit, RecordFindings.AccelerationUnit];

    internal static AccelerationRecord? Read(string folder)
    {
        if (!System.IO.File.Exists(Path.Combine(folder, File)))
        {
            return null;
        }

        CsvTable table = CsvTable.Read(folder, File, ["time_s", "x_m_s2", "y_m_s2", "z_m_s2"]);
        if (table.Rows.Count < FewestRows)
        {
            throw new InputException(File, null, FormattableString.Invariant($"there are {table.Rows.Count} samples; at least {FewestRows} are needed."));
        }

        var record = AccelerationRecord.FromSamples(
            [.. table.Rows.Select(row => row.Number("time_s"))], Axis(table, "x_m_s2"), Axis(table, "y_m_s2"), Axis(table, "z_m_s2"));
        Finding? refused = record.Findings.FirstOrDefault(finding => Refused.Contains(finding.Code) || IsDeadAcross(finding));
        return refused is null ? record : throw new InputException(File, null, refused.Message);
    }

    private static double[] Axis(CsvTable table, string column) =>
        [.. table.Rows.Select(row => row.Plausible(column, row.Number(column), -2e4, 2e4, "m/s2"))];

    /// <summary>Whether x or y never changes; z is not read for modes.</summary>
    private static bool IsDeadAcross(Finding finding) =>
        finding.Code == RecordFindings.DeadAxis && finding.Numbers.Any(number => number is { Name: "axis", Value: < 2 });
}
