using PrinterMath.Measurement;
using PrinterMath.Tramming;
using UnitsNet;

namespace CommissioningPass.Inputs;

/// <summary>warming.csv, if it is there: what grows between nozzle and bed from measuring to printing.</summary>
/// <param name="Nozzle">Growth of the nozzle and what holds it; null when not stated.</param>
/// <param name="Bed">Growth of the bed and what carries it; null when not stated.</param>
internal sealed record Warming(ThermalGrowth? Nozzle, ThermalGrowth? Bed)
{
    private const string File = "warming.csv";

    private static readonly string[] Columns =
        ["part", "length_mm", "u_length_mm", "expansion_um_m_k", "u_expansion_um_m_k", "measured_degc", "printing_degc", "u_degc"];

    internal static Warming Read(string folder)
    {
        if (!System.IO.File.Exists(Path.Combine(folder, File)))
        {
            return new Warming(null, null);
        }

        var growths = new Dictionary<string, ThermalGrowth>(StringComparer.Ordinal);
        foreach (CsvRow row in CsvTable.Read(folder, File, Columns).Rows)
        {
            string part = row.OneOf("part", "nozzle", "bed");
            if (!growths.TryAdd(part, Growth(row)))
            {
                throw row.Fault($"the part '{part}' stands twice.");
            }
        }

        return new Warming(growths.GetValueOrDefault("nozzle"), growths.GetValueOrDefault("bed"));
    }

    private static ThermalGrowth Growth(CsvRow row) => ThermalGrowth.Of(
        Measured.Of(CoefficientOfThermalExpansion.FromPerKelvin(Within(row, "expansion_um_m_k", 0.5, 200, "µm/(m·K)") * 1e-6), CoefficientOfThermalExpansion.FromPerKelvin(Within(row, "u_expansion_um_m_k", 0, 50, "µm/(m·K)") * 1e-6)),
        Measured.Of(Length.FromMillimeters(Within(row, "length_mm", 0.5, 500, "mm")), Length.FromMillimeters(Within(row, "u_length_mm", 0, 50, "mm"))),
        Celsius(row, "measured_degc"),
        Celsius(row, "printing_degc"));

    private static MeasuredTemperature Celsius(CsvRow row, string column) =>
        MeasuredTemperature.FromKelvins(Within(row, column, -20, 500, "°C") + 273.15, Within(row, "u_degc", 0, 50, "K"));

    private static double Within(CsvRow row, string column, double lowest, double highest, string unit) =>
        row.Plausible(column, row.Number(column), lowest, highest, unit);
}
