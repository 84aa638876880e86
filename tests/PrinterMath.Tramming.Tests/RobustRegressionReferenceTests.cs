using System.Globalization;

namespace PrinterMath.Tramming.Tests;

/// <summary>
/// Robust regressions on the stack loss data of Brownlee 1965, p. 454: three regressors and a constant, answers of R 4.2.2 (packages MASS, robustbase).
/// </summary>
public class RobustRegressionReferenceTests
{
    // Source: MASS rlm, psi.huber with k = 1.345, scale MAD. MASS writes 0.6745 for the quantile 0.67448975 (1.5e-5 of the scale) and stops at steps of 1e-4.
    [Fact]
    public void HubersEstimateAgreesWithMass()
    {
        (double[] design, double[] response) = Stackloss();
        RobustWeights fit = HuberRegression.Fit(design, 4, response, 1.345)!;

        double[] expected = [-41.026485373, .829385770, .926059416, -.127846318];
        double[] tolerance = [1e-3, 1e-4, 2e-4, 1e-5]; // the change of scale by 1.5e-5 moves the coefficients by less than 1e-4 of themselves
        for (int j = 0; j < 4; j++)
        {
            Assert.Equal(expected[j], Original(fit.Coefficients)[j], tolerance[j]);
        }

        Assert.Equal(2.4404890, fit.Scale, 5e-4);
    }

    // Source: robustbase ltsReg, h = 13, exhaustive: raw coefficients to 7 decimals, best observations 5 to 12 and 15 to 19 (from one).
    [Fact]
    public void RawTrimmedSquaresAgreeWithAnExhaustiveSearch()
    {
        (double[] design, double[] response) = Stackloss();
        RobustWeights fit = TrimmedRegression.Raw(design, 4, response, seed: 1)!;

        double[] expected = [-37.3233265, .7409211, .3915267, .0111345];
        for (int j = 0; j < 4; j++)
        {
            Assert.Equal(expected[j], Original(fit.Coefficients)[j], j == 0 ? 5e-7 : 5e-8);
        }

        Assert.Equal([5, 6, 7, 8, 9, 10, 11, 12, 15, 16, 17, 18, 19], Enumerable.Range(0, 21).Where(i => fit.Weights[i] == 1).Select(i => i + 1));
    }

    // Source: robustbase ltsReg, reweighted coefficients to 7 decimals: least squares without days 1, 3, 4 and 21, the days that the literature names.
    [Fact]
    public void ReweightedTrimmedSquaresAgreeWithR()
    {
        (double[] design, double[] response) = Stackloss();
        RobustWeights fit = TrimmedRegression.Fit(design, 4, response, seed: 1)!;

        double[] expected = [-37.6524589, .7976856, .5773405, -.0670602];
        for (int j = 0; j < 4; j++)
        {
            Assert.Equal(expected[j], Original(fit.Coefficients)[j], j == 0 ? 5e-7 : 5e-8);
        }

        Assert.Equal([1, 3, 4, 21], Enumerable.Range(0, 21).Where(i => fit.Weights[i] == 0).Select(i => i + 1));
    }

    /// <summary>Columns centred at 60, 21, 86 and over 10, 4, 5: the estimates do not depend on it.</summary>
    private static (double[] Design, double[] Response) Stackloss()
    {
        double[][] rows =
        [
            .. from line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "stackloss.csv"))
               where line.Length > 0 && char.IsAsciiDigit(line[0])
               select line.Split(',').Select(field => double.Parse(field, CultureInfo.InvariantCulture)).ToArray(),
        ];
        return ([.. rows.SelectMany(r => new[] { 1, (r[0] - 60) / 10, (r[1] - 21) / 4, (r[2] - 86) / 5 })], [.. rows.Select(r => r[3])]);
    }

    private static double[] Original(double[] b) =>
        [b[0] - (6 * b[1]) - (5.25 * b[2]) - (17.2 * b[3]), b[1] / 10, b[2] / 4, b[3] / 5];
}
