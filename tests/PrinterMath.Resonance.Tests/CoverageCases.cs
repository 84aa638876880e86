using System.Globalization;

namespace PrinterMath.Resonance.Tests;

/// <summary>How many cases a coverage test simulates: 300, or what PRINTERMATH_COVERAGE_CASES says (the long form is 2000).</summary>
internal static class CoverageCases
{
    internal static int Count { get; } =
        int.TryParse(Environment.GetEnvironmentVariable("PRINTERMATH_COVERAGE_CASES"), NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 300;

    /// <summary>Fewest intervals of so many that may hold the truth: 93 % less 3.29 standard deviations, the 99.9 % binomial limit.</summary>
    internal static double Fewest(int of) => (0.93 * of) - (3.29 * Math.Sqrt(0.93 * 0.07 * of));

    /// <summary>Most that may hold it: 97 % and 3.29 standard deviations; at 300 cases no limit at all.</summary>
    internal static double Most(int of) => Math.Min(of, (0.97 * of) + (3.29 * Math.Sqrt(0.97 * 0.03 * of)));
}
