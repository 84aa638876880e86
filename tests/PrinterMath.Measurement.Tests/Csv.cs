using System.Globalization;

namespace PrinterMath.Measurement.Tests;

/// <summary>Rows of numbers of a file of data/metrology; comments and the heading are skipped.</summary>
internal static class Csv
{
    public static double[][] Read(string name) =>
        [.. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "data", "metrology", name))
            .Where(line => line.Length > 0 && !line.StartsWith('#'))
            .Skip(1)
            .Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray())];
}
