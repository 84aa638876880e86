using System.Globalization;
using System.Text.RegularExpressions;

namespace PrinterMath.Measurement.Tests;

/// <summary>One file of the NIST Statistical Reference Datasets: the numbers and the certified values.</summary>
internal sealed partial class StatisticalReferenceDataset
{
    private StatisticalReferenceDataset(string[] lines)
    {
        All = lines;
        (int first, int last) = Range(lines, "Data") ?? (Array.FindLastIndex(lines, line => line.StartsWith("---", StringComparison.Ordinal)) + 2, lines.Length);
        Rows = [.. lines[(first - 1)..last].Select(Numbers).Where(row => row.Length > 0)];
        Certified = Range(lines, "Certified Values") is (int from, int to) ? lines[(from - 1)..to] : [];
    }

    public double[][] Rows { get; }

    public double[] Response => [.. Rows.Select(row => row[0])];

    public double[] Predictor => [.. Rows.Select(row => row[1])];

    public (double Value, double StandardDeviation)[] Coefficients =>
        [.. Certified.Where(line => CoefficientName().IsMatch(line)).Select(Numbers).Select(v => (v[0], v[1]))];

    public double ResidualStandardDeviation => Numbers(Certified[Array.FindIndex(Certified, line => line.Trim() == "Residual") + 1]).Single();

    public double RSquared => Numbers(Certified.First(line => line.Trim().StartsWith("R-Squared", StringComparison.Ordinal))).Single();

    public double Mean => After("ybar:");

    public double StandardDeviation => After(" s:");

    public double Autocorrelation => After("r(1):");

    private string[] Certified { get; }

    private string[] All { get; }

    public static StatisticalReferenceDataset Read(string name) =>
        new(File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "data", "nist_strd", name + ".dat")));

    /// <summary>Number of correct digits; the 15 or so that are printed at most.</summary>
    public static double Digits(double computed, double certified) =>
        computed == certified ? 15 : Math.Min(15, -Math.Log10(Math.Abs(computed - certified) / (certified == 0 ? 1 : Math.Abs(certified))));

    private static (int First, int Last)? Range(string[] lines, string what)
    {
        Match? match = lines.Select(line => LineRange().Match(line)).FirstOrDefault(m => m.Success && m.Groups[1].Value.Trim() == what);
        return match is null ? null : (int.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture), int.Parse(match.Groups[3].Value, CultureInfo.InvariantCulture));
    }

    private static double[] Numbers(string line) =>
        [.. line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            .Select(word => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double x) ? x : (double?)null)
            .Where(x => x is not null)
            .Select(x => x!.Value)];

    private double After(string label)
    {
        string line = All.First(l => l.Contains(label, StringComparison.Ordinal) && l.Contains("Sample", StringComparison.Ordinal));
        string text = line[(line.IndexOf(label, StringComparison.Ordinal) + label.Length)..];
        return Numbers(text)[0];
    }

    [GeneratedRegex(@"^\s*(?:File Format:\s+ASCII)?\s*([A-Za-z ]+?)\s*:?\s*\(lines?\s+(\d+)\s+to\s+(\d+)\)")]
    private static partial Regex LineRange();

    [GeneratedRegex(@"^\s*B\d+\s")]
    private static partial Regex CoefficientName();
}
