namespace PrinterMath.Measurement.Tests;

public class LinearFitTests
{
    // By hand: y = 1, 2, 4 at x = 0, 1, 2: slope 3/2, intercept 5/6, residuals 1/6, −1/3, 1/6, S = 1/6, ν = 1.
    [Fact]
    public void LineThroughThreeReadings()
    {
        LinearFit fit = LinearLeastSquares.Fit([0, 1, 2], 1, [1, 2, 4]);
        Assert.Equal(5.0 / 6, fit.Coefficients[0], 1e-15);
        Assert.Equal(1.5, fit.Coefficients[1], 1e-15);
        Assert.Equal(Math.Sqrt(1.0 / 6), fit.ResidualStandardDeviation, 1e-15);
        Assert.Equal(Math.Sqrt(1.0 / 6 / 2), fit.StandardErrors[1], 1e-15);
        Assert.Equal(Math.Sqrt(5.0 / 36), fit.StandardErrors[0], 1e-15);
        Assert.Equal(-1.0 / 12, fit.Covariance(0, 1), 1e-15);
        Assert.Equal(27.0 / 28, fit.RSquared, 1e-15);
        Assert.Equal(5.0 / 6, fit.Readings[0].Leverage, 1e-15);
        Assert.Equal(-1.0 / 2, fit.Readings[1].LeaveOneOutResidual!.Value, 1e-15);
        Assert.Null(fit.Readings[0].StudentizedResidual);
        Assert.Null(fit.ChiSquare);
        Assert.Equal(1, fit.ConditionNumber, 1e-14);
    }

    // Weighted mean: readings 10 ± 1 and 13 ± 2 give (10/1 + 13/4)/(1 + 1/4) = 10.6, u = 1/√1.25, χ² = 9/5.
    [Fact]
    public void WeightedMeanOfTwoReadings()
    {
        LinearFit known = LinearLeastSquares.Fit([], 0, [10, 13], [1, 2]);
        Assert.Equal(10.6, known.Coefficients[0], 1e-14);
        Assert.Equal(1 / Math.Sqrt(1.25), known.StandardErrors[0], 1e-15);
        Assert.Equal(1.8, known.ChiSquare!.Value, 1e-14);
        Assert.Equal(double.PositiveInfinity, known.UncertaintyDegreesOfFreedom);

        LinearFit relative = LinearLeastSquares.Fit([], 0, [10, 13], [100, 200], new LinearFitOptions { Uncertainty = ResponseUncertainty.Relative });
        Assert.Equal(10.6, relative.Coefficients[0], 1e-14);
        Assert.Equal(Math.Sqrt(1.8 / 1.25), relative.StandardErrors[0], 1e-14);
        Assert.Null(relative.ChiSquare);
        Assert.Equal(1, relative.UncertaintyDegreesOfFreedom);
    }

    [Fact]
    public void EqualUncertaintiesChangeNothingButTheScale()
    {
        double[] x = [0, 1, 2, 4], y = [1, 2, 4, 6], u = [0.3, 0.3, 0.3, 0.3];
        LinearFit plain = LinearLeastSquares.Fit(x, 1, y);
        LinearFit known = LinearLeastSquares.Fit(x, 1, y, u);
        Assert.Equal(plain.Coefficients[1], known.Coefficients[1], 1e-14);
        Assert.Equal(plain.StandardErrors[1] / plain.ResidualStandardDeviation * 0.3, known.StandardErrors[1], 1e-14);
        Assert.Equal(plain.PredictionSumOfSquares!.Value / 0.09, known.PredictionSumOfSquares!.Value, 1e-10);
        Assert.Equal(plain.Readings[2].Residual, known.Readings[2].Residual, 1e-14);
        Assert.Equal(plain.Readings[2].Residual / (0.3 * Math.Sqrt(1 - plain.Readings[2].Leverage)), known.Readings[2].StandardizedResidual!.Value, 1e-12);
        Assert.Equal(plain.Readings[2].StudentizedResidual!.Value, known.Readings[2].StudentizedResidual!.Value, 1e-12);
    }

    [Fact]
    public void AsManyReadingsAsCoefficientsLeaveNoScatter()
    {
        LinearFit fit = LinearLeastSquares.Fit([1, 3], 1, [2, 8]);
        Assert.Equal(3, fit.Coefficients[1], 1e-15);
        Assert.False(fit.TryGetStandardErrors(out _));
        Assert.False(fit.TryGetResidualStandardDeviation(out _));
        Assert.Equal("fit.freedom.none", Assert.Throws<IndeterminateException>(() => fit.StandardErrors).Finding!.Code);
        LinearPrediction middle = fit.Predict([2]);
        Assert.Equal(5, middle.Value, 1e-14);
        Assert.False(middle.TryGetStandardUncertainty(out _));
        Assert.Throws<IndeterminateException>(() => middle.StandardUncertainty);
        Assert.Null(fit.PredictionSumOfSquares);

        LinearFit known = LinearLeastSquares.Fit([1, 3], 1, [2, 8], [0.1, 0.1]);
        Assert.Equal(0.1 / Math.Sqrt(2), known.StandardErrors[1], 1e-15);
        Assert.Equal(0.1 / Math.Sqrt(2), known.Predict([2]).StandardUncertainty, 1e-15);
    }

    [Fact]
    public void DataThatHoldNoAnswerAreSaidInWords()
    {
        AssertBlocked("fit.readings.few", LinearLeastSquares.Fit([1, 2], 2, [1]));
        AssertBlocked("fit.column.zero", LinearLeastSquares.Fit([0, 0, 0], 1, [1, 2, 3]));
        AssertBlocked("fit.column.constant", LinearLeastSquares.Fit([0.1, 0.1, 0.1], 1, [1, 2, 3]));
        AssertBlocked("fit.column.constant", LinearLeastSquares.Fit([0.1, 0.1, 0.1], 1, [1, 2, 3], [1, 2, 3]));
        AssertBlocked("fit.columns.dependent", LinearLeastSquares.Fit([1, 1, 2, 2, 4, 4, 3, 3], 2, [1, 2, 3, 4]));
        AssertBlocked("fit.places.few", PolynomialFit.Fit([1, 1, 2, 2], [1, 2, 3, 4], 2).Terms);

        // 0.1 x + 0.7 rounded: dependent up to the last digit only.
        double[] x = [1, 2, 3, 5, 8, 13];
        Finding finding = AssertBlocked(
            "fit.columns.dependent", LinearLeastSquares.Fit([.. x.SelectMany(v => new[] { v, Math.Sqrt(v), (0.1 * v) + 0.7 })], 3, [1, 2, 3, 4, 5, 7]));
        Assert.Equal([0.0, 2.0], finding.Numbers.Select(number => number.Value).Order());
    }

    [Fact]
    public void AReadingThatNothingChecksIsNamed()
    {
        LinearFit fit = LinearLeastSquares.Fit([0, 0, 0, 5], 1, [1, 2, 3, 7]);
        Finding finding = Assert.Single(fit.Findings, f => f.Code == "fit.reading.unchecked");
        Assert.Equal(3, finding.Numbers[0].Value);
        Assert.Equal(1, fit.Readings[3].Leverage);
        Assert.Null(fit.Readings[3].LeaveOneOutResidual);
        Assert.Null(fit.PredictionSumOfSquares);
        Assert.Equal(2, fit.Coefficients[0], 1e-14);
        Assert.Equal(1, fit.Coefficients[1], 1e-14);
    }

    [Fact]
    public void FlatReadingsHaveNothingToExplain()
    {
        LinearFit fit = LinearLeastSquares.Fit([1, 2, 3], 1, [0.7, 0.7, 0.7]);
        Assert.Equal(0, fit.Coefficients[1], 1e-16);
        Assert.False(fit.TryGetRSquared(out _));
        Assert.Throws<IndeterminateException>(() => fit.RSquared);
    }

    [Fact]
    public void ExtremeUnitsAreHarmlessOrRefused()
    {
        LinearFit small = LinearLeastSquares.Fit([0, 1e-160, 2e-160], 1, [1e-160, 2e-160, 4e-160]);
        Assert.Equal(1.5, small.Coefficients[1], 1e-14);
        AssertBlocked("fit.range", LinearLeastSquares.Fit([0, 1e-300, 2e-300], 1, [1e300, 2e300, 4e300]));
    }

    [Fact]
    public void PredictionKeepsItsDigitsFarFromTheOrigin()
    {
        // The same line read at x and at x + 1e9: both predictions must agree; integers, so nothing is rounded on entry.
        double[] y = [3, 5, 8, 9, 12];
        LinearFit near = LinearLeastSquares.Fit([0, 1, 2, 3, 4], 1, y);
        LinearFit far = LinearLeastSquares.Fit([1e9, 1e9 + 1, 1e9 + 2, 1e9 + 3, 1e9 + 4], 1, y);
        Assert.Equal(near.Predict([2.5]).Value, far.Predict([1e9 + 2.5]).Value, 1e-13);
        Assert.Equal(near.Predict([2.5]).StandardUncertainty, far.Predict([1e9 + 2.5]).StandardUncertainty, 1e-13);
    }

    [Fact]
    public void JointEstimateCarriesTheCovariance()
    {
        LinearFit fit = LinearLeastSquares.Fit([0, 1, 2, 4], 1, [1, 2, 4, 6]);
        JointEstimate joint = fit.ToJointEstimate(["offset", "slope"], ["m", "1"]);
        Assert.Equal(fit.Covariance(0, 1), joint.Covariance(0, 1), 1e-15);
        Assert.Equal(2, joint.DegreesOfFreedom);
    }

    [Fact]
    public void PolynomialAboutItsMiddleIsTheSameCurve()
    {
        double[] x = [100, 101, 102, 103, 104, 105], y = [3, 4, 8, 9, 7, 2];
        PolynomialFit raw = PolynomialFit.Fit(x, y, 3);
        PolynomialFit middle = PolynomialFit.Fit(x, y, 3, origin: 102.5);
        Assert.Equal(middle.ValueAt(103.7).Value, raw.ValueAt(103.7).Value, 1e-12);
        Assert.Equal(middle.ValueAt(103.7).StandardUncertainty, raw.ValueAt(103.7).StandardUncertainty, 1e-12);
        Assert.True(raw.Terms.ConditionNumber > 1e3 * middle.Terms.ConditionNumber);

        PolynomialFit held = PolynomialFit.Fit(x, y, 2, origin: 99, options: new LinearFitOptions { Intercept = false });
        Assert.Equal(0, held.ValueAt(99).Value);
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearLeastSquares.Fit([1, double.NaN], 1, [1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearLeastSquares.Fit([1, 2], 1, [1, double.PositiveInfinity]));
        Assert.Throws<ArgumentException>(() => LinearLeastSquares.Fit([1, 2, 3], 2, [1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearLeastSquares.Fit([], 0, [1, 2], new LinearFitOptions { Intercept = false }));
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearLeastSquares.Fit([], 1, []));
        Assert.Throws<ArgumentException>(() => LinearLeastSquares.Fit([1, 2], 1, [1, 2], [1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearLeastSquares.Fit([1, 2], 1, [1, 2], [1, 0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearLeastSquares.Fit([1, 2], 1, [1, 2], [1e-200, 1e200]));
        Assert.Throws<ArgumentException>(() => LinearLeastSquares.Fit([1, 2, 4], 1, [1, 2, 3]).Predict([1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearLeastSquares.Fit([1, 2, 4], 1, [1, 2, 3]).Correlation(0, 2));
        Assert.Throws<ArgumentException>(() => PolynomialFit.Fit([1, 2], [1, 2, 3], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PolynomialFit.Fit([1, 2], [1, 2], 0));
    }

    private static Finding AssertBlocked(string code, LinearFit fit)
    {
        Assert.False(fit.TryGetCoefficients(out _));
        Finding finding = Assert.Throws<IndeterminateException>(() => fit.Coefficients).Finding!;
        Assert.Equal(code, finding.Code);
        Assert.Throws<IndeterminateException>(() => fit.Predict(new double[fit.CoefficientCount - 1]));
        return finding;
    }
}
