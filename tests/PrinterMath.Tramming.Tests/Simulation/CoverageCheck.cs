using System.Globalization;
using MathNet.Numerics.Distributions;

namespace PrinterMath.Tramming.Tests.Simulation;

/// <summary>
/// Counts how often a 95 % interval holds the truth. The quick form, 300 cases with seeds 1 to 300, fails only if the 99.9 % binomial
/// limits of the count miss the accepted band. The environment variable PRINTERMATH_COVERAGE_CASES sets another number of cases.
/// </summary>
internal sealed class CoverageCheck(string what)
{
    private int _held;
    private int _cases;
    private double _uncertainties;

    internal static int Cases =>
        int.TryParse(Environment.GetEnvironmentVariable("PRINTERMATH_COVERAGE_CASES"), NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 300;

    internal void Add(bool held, double standardUncertainty)
    {
        _cases++;
        _held += held ? 1 : 0;
        _uncertainties += standardUncertainty;
    }

    internal string Report => string.Create(
        CultureInfo.InvariantCulture, $"{what}: {100.0 * _held / _cases:0.0} % of {_cases}, mean u {_uncertainties / _cases * 1e6:0.00} um");

    internal void Assert(double lowest, double highest)
    {
        const double Tail = 0.0005;
        double lower = _held == 0 ? 0 : Beta.InvCDF(_held, _cases - _held + 1, Tail);
        double upper = _held == _cases ? 1 : Beta.InvCDF(_held + 1, _cases - _held, 1 - Tail);
        Xunit.Assert.True(upper >= lowest && lower <= highest, Report);
    }
}
