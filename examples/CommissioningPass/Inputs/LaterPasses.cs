using PrinterMath.Measurement;
using PrinterMath.Tramming;
using UnitsNet;

namespace CommissioningPass.Inputs;

/// <summary>again.csv, if it is there: the bed probed again, pass by pass, and what turned.csv says was turned before each.</summary>
internal sealed class LaterPasses
{
    internal const string File = "again.csv";

    private const string TurnsFile = "turned.csv";
    private const int MostPasses = 20;

    private LaterPasses(IReadOnlyList<TrammingPass> passes) => Passes = passes;

    /// <summary>The passes after the first, in order.</summary>
    internal IReadOnlyList<TrammingPass> Passes { get; }

    /// <summary>The bed as last probed.</summary>
    internal IReadOnlyList<ProbePoint> Newest => Passes[^1].Points;

    internal static LaterPasses? Read(string folder, IReadOnlyList<BedScrew> screws)
    {
        bool turned = System.IO.File.Exists(Path.Combine(folder, TurnsFile));
        if (!System.IO.File.Exists(Path.Combine(folder, File)))
        {
            return turned ? throw new InputException(TurnsFile, null, $"it says what was turned, but {File}, the bed probed after it, is missing.") : null;
        }

        CsvTable table = CsvTable.Read(folder, File, ["pass", "x_mm", "y_mm", "z_mm"], ProbeReadings.Worth);
        List<List<ProbePoint>> points = Points(table);
        points.ForEach(pass => ProbeReadings.Check(File, pass));
        List<AppliedTurn>[] turns = turned ? Turns(folder, screws, points.Count) : [.. points.Select(_ => new List<AppliedTurn>())];
        return new LaterPasses([.. points.Select((pass, i) => TrammingPass.After(turns[i], pass))]);
    }

    private static List<List<ProbePoint>> Points(CsvTable table)
    {
        var passes = new List<List<ProbePoint>>();
        foreach (CsvRow row in table.Rows)
        {
            int pass = Number(row, "pass", MostPasses);
            int last = passes.Count + 1;
            if (pass < last || pass > last + 1)
            {
                throw row.Fault(FormattableString.Invariant($"pass is {pass} where {(passes.Count == 0 ? "2" : $"{last} or {last + 1}")} is expected: probe.csv is pass 1, the others follow in order."));
            }

            if (pass == last + 1)
            {
                passes.Add([]);
            }

            passes[^1].Add(ProbeReadings.Point(row));
        }

        return passes;
    }

    private static List<AppliedTurn>[] Turns(string folder, IReadOnlyList<BedScrew> screws, int passes)
    {
        var turns = new List<AppliedTurn>[passes];
        for (int i = 0; i < passes; i++)
        {
            turns[i] = [];
        }

        foreach (CsvRow row in CsvTable.Read(folder, TurnsFile, ["before_pass", "screw", "sense", "degrees"]).Rows)
        {
            List<AppliedTurn> before = turns[Number(row, "before_pass", passes + 1) - 2];
            string name = row.Text("screw");
            if (!screws.Any(screw => screw.Name == name))
            {
                throw row.Fault($"the screw '{name}' does not stand in {BedScrew.File}.");
            }

            if (before.Exists(turn => turn.Screw == name))
            {
                throw row.Fault($"the screw '{name}' stands twice before one pass; add its turns up.");
            }

            var rotation = Angle.FromDegrees(row.Plausible("degrees", row.Number("degrees"), 0, 3600, "degrees"));
            before.Add(row.OneOf("sense", "clockwise", "counterclockwise") == "clockwise"
                ? AppliedTurn.Clockwise(name, rotation)
                : AppliedTurn.Counterclockwise(name, rotation));
        }

        return turns;
    }

    private static int Number(CsvRow row, string column, int most)
    {
        double number = row.Number(column);
        return number >= 2 && number <= most && number == Math.Floor(number)
            ? (int)number
            : throw row.Fault(FormattableString.Invariant($"{column} is {number:G6}; it is a whole number from 2 to {most}."));
    }
}
