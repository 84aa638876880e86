using System.Globalization;

namespace PrinterMath.Tension.Tests;

/// <summary>Rows of data/audio/manifest.csv.</summary>
internal static class RecordedPlucks
{
    public static TheoryData<string, double, double> Pitched
    {
        get
        {
            TheoryData<string, double, double> rows = [];
            foreach (string[] cells in Rows().Where(c => c[9].Length > 0))
            {
                rows.Add(cells[0], Number(cells[9]), Number(cells[10]));
            }

            return rows;
        }
    }

    public static TheoryData<string> Unpitched
    {
        get
        {
            TheoryData<string> rows = [];
            foreach (string[] cells in Rows().Where(c => c[9].Length == 0))
            {
                rows.Add(cells[0]);
            }

            return rows;
        }
    }

    private static IEnumerable<string[]> Rows() =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "data", "audio", "manifest.csv")).Skip(1).Select(line => line.Split(','));

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
