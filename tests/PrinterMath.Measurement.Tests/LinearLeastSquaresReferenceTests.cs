using System.Globalization;

namespace PrinterMath.Measurement.Tests;

[Trait("Evidence", "Published")]
public class LinearLeastSquaresReferenceTests
{
    // NIST StRD, linear regression, lower and average difficulty: certified values to 15 digits, printed in the files.
    // 13 digits: the certified values are printed to 15, the fit carries 30, and the data are doubles of short decimals.
    [Theory]
    [InlineData("Norris", true)]
    [InlineData("NoInt1", false)]
    public void ReachesTheCertifiedDigits(string name, bool intercept)
    {
        StatisticalReferenceDataset set = StatisticalReferenceDataset.Read(name);
        LinearFit fit = LinearLeastSquares.Fit(set.Predictor, 1, set.Response, new LinearFitOptions { Intercept = intercept });
        AssertDigits(set, fit, 13);
    }

    // NIST StRD Filip, higher difficulty: 82 readings, degree 10, κ of the raw powers near 2e15. The powers carry 30 digits here, so what
    // remains is the rounding of x itself (10 decimals, sixteenth digit), magnified by the problem's own sensitivity.
    [Fact]
    public void PolynomialReachesTheCertifiedDigitsOfFilip()
    {
        StatisticalReferenceDataset set = StatisticalReferenceDataset.Read("Filip");
        AssertDigits(set, PolynomialFit.Fit(set.Predictor, set.Response, 10).Terms, 9);
    }

    // The same through a design of doubles: the rounding of each power in its sixteenth digit alone costs eight to nine digits, which the
    // fit says. Seven digits is what the best factorisation of such a design reaches (Householder QR gives −1467.489655 for B0).
    [Fact]
    public void RoundedPowersOfFilipAreSaidToBeIllConditioned()
    {
        StatisticalReferenceDataset set = StatisticalReferenceDataset.Read("Filip");
        double[] design = [.. set.Predictor.SelectMany(x => Enumerable.Range(1, 10).Select(k => Math.Pow(x, k)))];
        LinearFit fit = LinearLeastSquares.Fit(design, 10, set.Response);
        Assert.Contains(fit.Findings, f => f.Code == "fit.condition.poor");
        AssertDigits(set, fit, 7);
    }

    // NIST StRD Wampler1 and Wampler2, degree 5 on x = 0..20, exact polynomials: certified residuals are zero.
    // Wampler1 has integers alone. Wampler2 has y rounded to 5 decimals, exact in decimal and rounded to doubles here.
    // The certified zeros are held to 1e-8 (not a count of digits); the coefficients to 9 digits.
    [Theory]
    [InlineData("Wampler1")]
    [InlineData("Wampler2")]
    public void RecoversWampler(string name)
    {
        StatisticalReferenceDataset set = StatisticalReferenceDataset.Read(name);
        LinearFit fit = PolynomialFit.Fit(set.Predictor, set.Response, 5).Terms;
        AssertWampler(set, fit);
        double[] design = [.. set.Predictor.SelectMany(x => Enumerable.Range(1, 5).Select(k => Math.Pow(x, k)))];
        AssertWampler(set, LinearLeastSquares.Fit(design, 5, set.Response));
    }

    // JCGM 100:2008, H.3, table H.6 and H.3.3: printed values; tolerance half a unit of the last printed digit.
    [Fact]
    public void CalibratesTheThermometerOfTheGum()
    {
        double[][] rows = Csv.Read("gum_h3_thermometer.csv");
        Assert.Equal(11, rows.Length);
        LinearFit fit = LinearLeastSquares.Fit([.. rows.Select(r => r[1] - 20)], 1, [.. rows.Select(r => r[2])]);
        LinearPrediction at30 = fit.Predict([10]);
        Assert.Equal(-0.1712, fit.Coefficients[0], 0.00005);
        Assert.Equal(0.0029, fit.StandardErrors[0], 0.00005);
        Assert.Equal(0.00218, fit.Coefficients[1], 0.000005);
        Assert.Equal(0.00067, fit.StandardErrors[1], 0.000005);
        Assert.Equal(-0.930, fit.Correlation(0, 1), 0.0005);
        Assert.Equal(0.0035, fit.ResidualStandardDeviation, 0.00005);
        Assert.Equal(-0.1494, at30.Value, 0.00005);
        Assert.Equal(0.0041, at30.StandardUncertainty, 0.00005);
        Assert.Equal(9, at30.DegreesOfFreedom);

        // The same by an independent computation in SciPy, 8 digits.
        Assert.Equal(-0.1712037901, fit.Coefficients[0], 1e-9);
        Assert.Equal(0.002877598, fit.StandardErrors[0], 1e-9);
        Assert.Equal(0.0021826977, fit.Coefficients[1], 1e-10);
        Assert.Equal(0.00066793877, fit.StandardErrors[1], 1e-11);
        Assert.Equal(-0.9304296, fit.Correlation(0, 1), 1e-7);
        Assert.Equal(0.0034975640, fit.ResidualStandardDeviation, 1e-10);
        Assert.Equal(-0.1493768, at30.Value, 1e-7);
        Assert.Equal(0.0041385958, at30.StandardUncertainty, 1e-10);
    }

    // Brownlee 1965, p. 454, stack loss; influence values by R 4.2.2 (lm, hatvalues, cooks.distance, rstudent), all digits it printed.
    // Tolerance: half a unit of the last digit quoted.
    [Fact]
    public void FindsTheInfluentialDaysOfTheStackLoss()
    {
        double[][] rows = Csv.Read("stackloss.csv");
        Assert.Equal(21, rows.Length);
        LinearFit fit = LinearLeastSquares.Fit([.. rows.SelectMany(r => r.Take(3))], 3, [.. rows.Select(r => r[3])]);
        Assert.Equal(-39.91967442, fit.Coefficients[0], 5e-9);
        Assert.Equal(0.7156402, fit.Coefficients[1], 5e-8);
        Assert.Equal(1.29528612, fit.Coefficients[2], 5e-9);
        Assert.Equal(-0.15212252, fit.Coefficients[3], 5e-9);
        Assert.Equal(3.24336392, fit.ResidualStandardDeviation, 5e-9);
        Assert.Equal(178.829961598, fit.Readings.Sum(r => r.Residual * r.Residual), 5e-10);
        Assert.Equal(291.86893173, fit.PredictionSumOfSquares!.Value, 5e-9);
        Assert.Equal(0.412123498, fit.Readings.Max(r => r.Leverage), 5e-10);
        Assert.Equal(16, Largest(fit, r => r.Leverage));
        Assert.Equal(20, Largest(fit, r => r.CookDistance!.Value));
        Assert.Equal(0.69199992, fit.Readings[20].CookDistance!.Value, 1e-8);
        Assert.Equal(-3.3304933, fit.Readings[20].StudentizedResidual!.Value, 5e-8);
    }

    private static int Largest(LinearFit fit, Func<FittedReading, double> what) =>
        Enumerable.Range(0, fit.Readings.Count).MaxBy(i => what(fit.Readings[i]));

    private static void AssertDigits(StatisticalReferenceDataset set, LinearFit fit, double digits)
    {
        Assert.Equal(set.Coefficients.Length, fit.CoefficientCount);
        List<(string Name, double Digits)> reached = [];
        for (int i = 0; i < fit.CoefficientCount; i++)
        {
            reached.Add(($"B{i}", StatisticalReferenceDataset.Digits(fit.Coefficients[i], set.Coefficients[i].Value)));
            reached.Add(($"sd B{i}", StatisticalReferenceDataset.Digits(fit.StandardErrors[i], set.Coefficients[i].StandardDeviation)));
        }

        reached.Add(("s", StatisticalReferenceDataset.Digits(fit.ResidualStandardDeviation, set.ResidualStandardDeviation)));
        reached.Add(("R²", StatisticalReferenceDataset.Digits(fit.RSquared, set.RSquared)));
        (string name, double least) = reached.MinBy(r => r.Digits);
        Assert.True(least >= digits, string.Create(CultureInfo.InvariantCulture, $"{name}: {least:F2} digits"));
    }

    private static void AssertWampler(StatisticalReferenceDataset set, LinearFit fit)
    {
        Assert.Equal(6, set.Coefficients.Length);
        for (int i = 0; i < 6; i++)
        {
            double digits = StatisticalReferenceDataset.Digits(fit.Coefficients[i], set.Coefficients[i].Value);
            Assert.True(digits >= 9, string.Create(CultureInfo.InvariantCulture, $"B{i}: {digits:F2} digits"));
            Assert.Equal(0, set.Coefficients[i].StandardDeviation);
            Assert.InRange(fit.StandardErrors[i], 0, 1e-8);
        }

        Assert.InRange(fit.ResidualStandardDeviation, 0, 1e-8);
        Assert.Equal(1, fit.RSquared, 1e-8);
    }
}
