using PrinterMath.Extrusion;

namespace CommissioningPass.Inputs;

/// <summary>fit.csv, if it is there: whether two pieces printed at a flow went together.</summary>
internal static class FitReadings
{
    internal const string File = "fit.csv";

    internal static FitSeries? Read(string folder, Limits limits)
    {
        if (!System.IO.File.Exists(Path.Combine(folder, File)))
        {
            return null;
        }

        CsvTable table = CsvTable.Read(folder, File, ["flow", "outcome"]);
        (double lower, double upper) = limits.FitFlow;
        double margin = (upper - lower) / 4;
        FitSeries series = FitSeries.Between(lower, upper);
        foreach (CsvRow row in table.Rows)
        {
            double flow = row.Number("flow");
            if (flow < lower - margin || flow > upper + margin)
            {
                throw row.Fault(FormattableString.Invariant(
                    $"flow is {flow:G6}; from {lower - margin:G4} to {upper + margin:G4}, fit_flow and a quarter more, is expected. Is it a ratio?"));
            }

            series = series.With(flow, row.Text("outcome") switch
            {
                "fits" => FitOutcome.Fits,
                "does not fit" => FitOutcome.DoesNotFit,
                string other => throw row.Fault($"outcome is '{other}'; it is one of fits, does not fit."),
            });
        }

        return series;
    }
}
