using PrinterMath.Measurement;
using PrinterMath.Resonance;

namespace CommissioningPass.Inputs;

/// <summary>acceleration.csv, if it is there: the head tapped once, so that the axes recorded ring down.</summary>
internal sealed class TapRecording
{
    internal const string File = "acceleration.csv";

    private const int FewestRows = 200;

    private static readonly string[] Whole = ["x_m_s2", "y_m_s2", "z_m_s2"];

    /// <summary>One axis alone, in a unit that is not known: modes need none, gravity cannot be checked.</summary>
    private static readonly string[] Alone = ["x_relative", "y_relative"];

    /// <summary>Findings that would falsify every result; others are shown and the step goes on.</summary>
    private static readonly string[] Refused = [RecordFindings.NoClock, RecordFindings.TimeUnit, RecordFindings.AccelerationUnit];

    /// <summary>Findings that rest on the size of the numbers.</summary>
    private static readonly string[] NeedUnit = [RecordFindings.NoGravity, RecordFindings.AccelerationUnit];

    private TapRecording(IReadOnlyList<TapAxis> axes, bool unitKnown, double relativeRateUncertainty, IReadOnlyList<Finding> findings)
    {
        Axes = axes;
        UnitKnown = unitKnown;
        RelativeRateUncertainty = relativeRateUncertainty;
        Findings = findings;
    }

    /// <summary>The axes that are read for modes: x and y, or the one recorded.</summary>
    internal IReadOnlyList<TapAxis> Axes { get; }

    /// <summary>Whether the numbers are m/s².</summary>
    internal bool UnitKnown { get; }

    internal double RelativeRateUncertainty { get; }

    internal IReadOnlyList<Finding> Findings { get; }

    internal static TapRecording? Read(string folder)
    {
        if (!System.IO.File.Exists(Path.Combine(folder, File)))
        {
            return null;
        }

        CsvTable table = CsvTable.Read(folder, File, ["time_s"], [.. Whole, .. Alone]);
        string? alone = Array.Find(Alone, table.Has);
        CheckColumns(table, alone);
        if (table.Rows.Count < FewestRows)
        {
            throw new InputException(File, null, FormattableString.Invariant($"there are {table.Rows.Count} samples; at least {FewestRows} are needed."));
        }

        TapRecording recording = alone is null ? ReadWhole(table) : ReadAlone(table, alone);
        Finding? refused = recording.Findings.FirstOrDefault(finding => Refused.Contains(finding.Code) || DeadAxis(finding) is 0 or 1);
        return refused is null ? recording : throw new InputException(File, null, refused.Message);
    }

    private static void CheckColumns(CsvTable table, string? alone)
    {
        string? missing = alone is null ? Array.Find(Whole, column => !table.Has(column)) : null;
        if (missing is not null)
        {
            throw new InputException(File, 1, $"the column {missing} is missing; beside time_s stand {string.Join(',', Whole)}, or one of {string.Join(',', Alone)} alone.");
        }

        string? beside = alone is null ? null : Whole.Concat(Alone).FirstOrDefault(column => column != alone && table.Has(column));
        if (beside is not null)
        {
            throw new InputException(File, 1, $"the columns {alone} and {beside} stand side by side; {alone} stands alone beside time_s.");
        }
    }

    private static TapRecording ReadWhole(CsvTable table)
    {
        var record = AccelerationRecord.FromSamples(Times(table), Axis(table, Whole[0]), Axis(table, Whole[1]), Axis(table, Whole[2]));
        return record.TryGetSignals(out SampledSignal? x, out SampledSignal? y, out _)
            ? new TapRecording([new TapAxis("x", x), new TapAxis("y", y)], true, record.RelativeRateUncertainty, record.Findings)
            : new TapRecording([], true, 0, record.Findings);
    }

    /// <summary>The clock is checked as for three axes; the empty places of the other two, and what is said of them, go no further.</summary>
    private static TapRecording ReadAlone(CsvTable table, string column)
    {
        double[] values = [.. table.Rows.Select(row => row.Plausible(column, row.Number(column), -1e9, 1e9, "in its own unit"))];
        double[] empty = new double[values.Length];
        var record = AccelerationRecord.FromSamples(Times(table), values, empty, empty);
        Finding[] findings = [.. record.Findings.Where(finding => !NeedUnit.Contains(finding.Code) && DeadAxis(finding) is null or 0)];
        return record.TryGetSignals(out SampledSignal? signal, out _, out _)
            ? new TapRecording([new TapAxis(column[..1], signal)], false, record.RelativeRateUncertainty, findings)
            : new TapRecording([], false, 0, findings);
    }

    private static double[] Times(CsvTable table) => [.. table.Rows.Select(row => row.Number("time_s"))];

    private static double[] Axis(CsvTable table, string column) =>
        [.. table.Rows.Select(row => row.Plausible(column, row.Number(column), -2e4, 2e4, "m/s2"))];

    /// <summary>Which axis never changes, if that is the finding; z is not read for modes.</summary>
    private static int? DeadAxis(Finding finding) =>
        finding.Code == RecordFindings.DeadAxis ? (int)finding.Numbers.First(number => number.Name == "axis").Value : null;
}
