using PrinterMath.Measurement;
using UnitsNet;

namespace CommissioningPass.Inputs;

/// <summary>limits.csv: what the machine's owner allows.</summary>
internal sealed class Limits
{
    private const string File = "limits.csv";

    private static readonly (string Quantity, UnitTable Units, double Lowest, double Highest, bool Needed)[] Kinds =
    [
        ("belt_tension", UnitTable.Force, 1, 1000, true),
        ("belt_tension_difference", UnitTable.Ratio, 1e-3, 1, true),
        ("first_layer_spread", UnitTable.Length, 1e-6, 5e-3, true),
        ("surface_flatness", UnitTable.Length, 1e-6, 5e-3, false),
        ("ringing_residual", UnitTable.Ratio, 5e-3, 0.5, false),
        ("path_deviation", UnitTable.Length, 1e-6, 5e-3, false),
        ("fit_flow", UnitTable.Ratio, 0.5, 2, false),
    ];

    private readonly Dictionary<string, (CsvRow Row, double? Lower, double? Upper)> _found;

    private Limits(Dictionary<string, (CsvRow Row, double? Lower, double? Upper)> found) => _found = found;

    internal Tolerance<Force> BeltTension => Between<Force>("belt_tension");

    internal Tolerance<double> BeltTensionDifference => Between<double>("belt_tension_difference");

    internal Tolerance<Length> FirstLayerSpread => Between<Length>("first_layer_spread");

    /// <summary>Null when the owner states none.</summary>
    internal Tolerance<Length>? SurfaceFlatness => AtMost<Length>("surface_flatness");

    /// <summary>Vibration that a sequence may leave, a ratio; null when the owner states none.</summary>
    internal double? RingingResidual => AtMost<double>("ringing_residual")?.Upper;

    /// <summary>How far a sequence may round the path; null when the owner states nothing.</summary>
    internal Length? PathDeviation => AtMost<Length>("path_deviation")?.Upper;

    /// <summary>Between which flows a fit is sought, ratios.</summary>
    internal (double Lower, double Upper) FitFlow => _found.TryGetValue("fit_flow", out (CsvRow Row, double? Lower, double? Upper) limit)
        ? limit is { Lower: { } lower, Upper: { } upper } && lower > 0
            ? (lower, upper)
            : throw limit.Row.Fault("fit_flow needs a lower and an upper limit, greater than zero.")
        : throw new InputException(File, null, $"there is no row for fit_flow, which {FitReadings.File} needs.");

    internal static Limits Read(string folder)
    {
        CsvTable table = CsvTable.Read(folder, File, ["quantity", "lower", "upper", "unit"]);
        var found = new Dictionary<string, (CsvRow Row, double? Lower, double? Upper)>(StringComparer.Ordinal);
        foreach (CsvRow row in table.Rows)
        {
            string quantity = row.Text("quantity");
            int kind = Array.FindIndex(Kinds, k => k.Quantity == quantity);
            if (kind < 0)
            {
                throw row.Fault($"'{quantity}' is not known; the limited quantities are {string.Join(", ", Kinds.Select(k => k.Quantity))}.");
            }

            if (!found.TryAdd(quantity, Bounds(row, Kinds[kind].Units, Kinds[kind].Lowest, Kinds[kind].Highest)))
            {
                throw row.Fault(FormattableString.Invariant($"{quantity} stands twice; the first is in line {found[quantity].Row.Line}."));
            }
        }

        int missing = Array.FindIndex(Kinds, k => k.Needed && !found.ContainsKey(k.Quantity));
        if (missing >= 0)
        {
            throw new InputException(File, null, $"there is no row for {Kinds[missing].Quantity}.");
        }

        foreach (string quantity in Kinds.Where(k => !k.Needed && k.Quantity != "fit_flow").Select(k => k.Quantity))
        {
            CheckUpperAlone(quantity, found);
        }

        return new Limits(found);
    }

    private static (CsvRow Row, double? Lower, double? Upper) Bounds(CsvRow row, UnitTable units, double lowest, double highest)
    {
        double size = units.SizeOf(row);
        double? lower = row.OptionalNumber("lower");
        double? upper = row.OptionalNumber("upper");
        foreach (double limit in new[] { lower, upper }.Where(limit => limit is not null and not 0).Select(limit => Math.Abs(limit!.Value)))
        {
            row.Plausible("the size of a limit of " + row.Text("quantity"), limit, lowest / size, highest / size, row.Text("unit"));
        }

        return (lower, upper) switch
        {
            (null, null) => throw row.Fault("a lower or an upper limit is needed."),
            ({ } low, { } high) when low >= high => throw row.Fault("the lower limit must be below the upper one."),
            _ => (row, lower * size, upper * size),
        };
    }

    private static void CheckUpperAlone(string quantity, Dictionary<string, (CsvRow Row, double? Lower, double? Upper)> found)
    {
        if (found.TryGetValue(quantity, out (CsvRow Row, double? Lower, double? Upper) limit) && (limit.Lower is not null || limit.Upper is not > 0))
        {
            throw limit.Row.Fault($"{quantity} has an upper limit alone, greater than zero.");
        }
    }

    private Tolerance<T>? AtMost<T>(string quantity)
        where T : struct =>
        _found.ContainsKey(quantity) ? Between<T>(quantity) : null;

    private Tolerance<T> Between<T>(string quantity)
        where T : struct =>
        (_found[quantity].Lower, _found[quantity].Upper) switch
        {
            ({ } lower, { } upper) => Tolerance.Between(FromSi<T>(lower), FromSi<T>(upper)),
            ({ } lower, null) => Tolerance.AtLeast(FromSi<T>(lower)),
            (_, { } upper) => Tolerance.AtMost(FromSi<T>(upper)),
            _ => throw new InvalidOperationException("A row without limits is refused when it is read."),
        };

    private static T FromSi<T>(double si)
        where T : struct =>
        Measured<T>.FromSi(si, 0).Value;
}
