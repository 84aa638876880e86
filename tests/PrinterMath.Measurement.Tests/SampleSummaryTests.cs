namespace PrinterMath.Measurement.Tests;

public class SampleSummaryTests
{
    // By hand: 1, 2, 4, 5 has mean 3, Σd² = 10, Σdᵢdᵢ₊₁ = 2 − 1 + 2 = 3.
    [Fact]
    public void FourReadings()
    {
        SampleSummary summary = SampleSummary.Of([1, 2, 4, 5]);
        Assert.Equal(4, summary.Count);
        Assert.Equal(3, summary.Mean);
        Assert.Equal(Math.Sqrt(10.0 / 3), summary.StandardDeviation, 1e-15);
        Assert.Equal(0.3, summary.Lag1Autocorrelation, 1e-16);
    }

    [Fact]
    public void ReadingsAllAlikeHaveNoSpread()
    {
        SampleSummary summary = SampleSummary.Of([0.1, 0.1, 0.1]);
        Assert.Equal(0.1, summary.Mean);
        Assert.Equal(0, summary.StandardDeviation);
        Assert.Equal(0, summary.Lag1Autocorrelation);
    }

    [Theory]
    [InlineData(1e300)]
    [InlineData(1e-300)]
    public void ExtremeUnitsAreHarmless(double unit)
    {
        SampleSummary summary = SampleSummary.Of([unit, 3 * unit]);
        Assert.Equal(2, summary.Mean / unit, 1e-14);
        Assert.Equal(Math.Sqrt(2), summary.StandardDeviation / unit, 1e-14);
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleSummary.Of([1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleSummary.Of([1, double.NaN]));
    }
}
