namespace PrinterMath.Measurement.Tests;

[Trait("Evidence", "Published")]
public class SampleSummaryReferenceTests
{
    // NIST StRD, univariate summary statistics. Nine digits everywhere, except that the readings of NumAcc4 (10000000.1, ...) are not exact
    // in doubles: the nearest doubles differ from the decimals by up to 9e-10, which is 9e-9 of s = 0.1.
    [Theory]
    [InlineData("Lottery", 218, 9)]
    [InlineData("Mavro", 50, 9)]
    [InlineData("NumAcc1", 3, 9)]
    [InlineData("NumAcc4", 1001, 8)]
    public void ReachesTheCertifiedDigits(string name, int count, double digits)
    {
        StatisticalReferenceDataset set = StatisticalReferenceDataset.Read(name);
        Assert.Equal(count, set.Rows.Length);
        SampleSummary summary = SampleSummary.Of(set.Response);
        Assert.True(StatisticalReferenceDataset.Digits(summary.Mean, set.Mean) >= 9);
        double s = StatisticalReferenceDataset.Digits(summary.StandardDeviation, set.StandardDeviation);
        Assert.True(s >= digits, $"s: {s}");
        double r = StatisticalReferenceDataset.Digits(summary.Lag1Autocorrelation, set.Autocorrelation);
        Assert.True(r >= digits, $"r: {r}");
    }
}
