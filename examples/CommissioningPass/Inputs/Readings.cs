using PrinterMath.Measurement;

namespace CommissioningPass.Inputs;

/// <summary>readings.csv: what ruler and scale said, each with its standard uncertainty and the step of its scale.</summary>
internal sealed class Readings
{
    private const string File = "readings.csv";

    /// <summary>Least and largest linear density, kg/m, that a belt or a string may come to.</summary>
    private const double LightestBelt = 5e-4;
    private const double HeaviestBelt = 0.2;

    private readonly Dictionary<string, (CsvRow Row, double Si, double StandardUncertainty)> _found;

    private Readings(Dictionary<string, (CsvRow Row, double Si, double StandardUncertainty)> found) => _found = found;

    internal static Readings Read(string folder)
    {
        CsvTable table = CsvTable.Read(folder, File, ["quantity", "value", "unit", "standard_uncertainty", "resolution"]);
        var found = new Dictionary<string, (CsvRow Row, double Si, double StandardUncertainty)>(StringComparer.Ordinal);
        foreach (CsvRow row in table.Rows)
        {
            string quantity = row.Text("quantity");
            ReadingKind kind = Array.Find(ReadingKind.All, k => k.Quantity == quantity)
                ?? throw row.Fault($"'{quantity}' is not known; the quantities are {string.Join(", ", ReadingKind.All.Select(k => k.Quantity))}.");
            if (!found.TryAdd(quantity, (row, Value(row, kind), StandardUncertainty(row, kind))))
            {
                throw row.Fault(FormattableString.Invariant($"{quantity} stands twice; the first is in line {found[quantity].Row.Line}."));
            }
        }

        ReadingKind? missing = Array.Find(ReadingKind.All, k => k.Needed && !found.ContainsKey(k.Quantity));
        if (missing is not null)
        {
            throw new InputException(File, null, $"there is no row for {missing.Quantity}.");
        }

        (CsvRow massRow, double mass, _) = found[ReadingKind.SampleMass.Quantity];
        massRow.Plausible("the sample's mass per length", mass / found[ReadingKind.SampleLength.Quantity].Si * 1e3, LightestBelt * 1e3, HeaviestBelt * 1e3, "g/m");
        return new Readings(found);
    }

    internal Measured<T> Of<T>(ReadingKind kind)
        where T : struct =>
        Measured<T>.FromSi(_found[kind.Quantity].Si, _found[kind.Quantity].StandardUncertainty);

    internal bool Holds(ReadingKind kind) => _found.ContainsKey(kind.Quantity);

    private static double Value(CsvRow row, ReadingKind kind)
    {
        double size = kind.Units.SizeOf(row);
        return size * row.Plausible(kind.Quantity, row.Number("value"), kind.Lowest / size, kind.Highest / size, row.Text("unit"));
    }

    /// <summary>The stated standard uncertainty and the rectangular step of the scale (JCGM 100:2008, 4.3.7), added in quadrature.</summary>
    private static double StandardUncertainty(CsvRow row, ReadingKind kind)
    {
        double stated = row.OptionalNumber("standard_uncertainty") ?? 0;
        double step = row.OptionalNumber("resolution") ?? 0;
        if (stated < 0 || step < 0 || stated + step == 0)
        {
            throw row.Fault("a standard uncertainty or a resolution greater than zero is needed, and neither may be negative.");
        }

        double both = Math.Sqrt((stated * stated) + (step * step / 12));
        return both < Math.Abs(row.Number("value"))
            ? both * kind.Units.SizeOf(row)
            : throw row.Fault(FormattableString.Invariant($"the uncertainty, {both:G3} {row.Text("unit")}, is larger than the value. Is its unit that of the value?"));
    }
}
