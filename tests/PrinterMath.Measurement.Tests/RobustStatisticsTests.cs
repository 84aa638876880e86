namespace PrinterMath.Measurement.Tests;

public class RobustStatisticsTests
{
    [Theory]
    [InlineData(new[] { 4.0 }, 4.0)]
    [InlineData(new[] { 3.0, 1.0 }, 2.0)]
    [InlineData(new[] { 9.0, -1.0, 2.0 }, 2.0)]
    [InlineData(new[] { 1.7e308, 1.7e308 }, 1.7e308)]
    public void MedianIsTheMiddle(double[] readings, double expected) => Assert.Equal(expected, Median.Of(readings));

    [Fact]
    public void MedianLeavesTheReadingsInPlace()
    {
        double[] readings = [3, 1, 2];
        Median.Of(readings);
        Assert.Equal([3, 1, 2], readings);
    }

    // Symmetric, nothing limited: the M-estimate is the mean and its uncertainty that of the mean. S = 1.4826·1, limit 1.345·S = 1.99.
    // Tolerance: a few units of rounding.
    [Fact]
    public void HuberIsTheMeanWhenNothingIsFarOut()
    {
        double[] readings = [-1.5, -1, 0, 0.5, 2 - 0.0];
        double[] tight = [-1, -0.75, 0, 0.75, 1.5];
        RobustLocation centre = HuberLocation.Of(tight);
        SampleSummary plain = SampleSummary.Of(tight);
        Assert.Empty(centre.LimitedReadings);
        Assert.Equal(plain.Mean, centre.Location, 1e-12);
        Assert.Equal(plain.StandardDeviation / Math.Sqrt(5), centre.StandardUncertainty, 1e-12);
        Assert.NotEmpty(HuberLocation.Of([.. readings, 40]).LimitedReadings);
    }

    // By hand: 0, 1, 2, 3, 100: median 2, MAD 1, limit c = 1.345·1.482602... = 1.99410; with 100 alone limited Σ(xᵢ − m) over four + c = 0
    // needs 0 inside: m = (6 + c)/4 = 1.99853, and 0 lies m > c off, so it is limited too: (1 + 2 + 3 − 3m) − c + c = 0, m = 2, and
    // there 0 is 2 > c off: consistent. Tolerance: the search's own.
    [Fact]
    public void HuberLimitsBothTails()
    {
        RobustLocation centre = HuberLocation.Of([0, 1, 2, 3, 100]);
        Assert.Equal(2, centre.Location, 1e-11);
        Assert.Equal([0, 4], centre.LimitedReadings);
        Assert.Contains(centre.Findings, f => f.Code == "robust.readings.limited");

        // ψ in units of S: ±1.345 twice, ±1/S twice, 0; mean ψ' = 3/5.
        double c = 1.345 * MedianAbsoluteDeviation.NormalConsistency;
        Assert.Equal(Math.Sqrt(((2 * c * c) + 2) / 4 / 5) / 0.6, centre.StandardUncertainty, 1e-11);
    }

    [Fact]
    public void AlgorithmASolvesItsOwnEquations()
    {
        double[] readings = [0.1, 0.4, 0.2, 0.35, 0.9, 0.15, -0.6, 0.22];
        RobustLocation found = AlgorithmA.Of(readings);
        double low = found.Location - (1.5 * found.Spread), high = found.Location + (1.5 * found.Spread);
        double[] limited = [.. readings.Select(x => Math.Clamp(x, low, high))];
        double mean = limited.Average();
        double s = Math.Sqrt(limited.Sum(x => (x - mean) * (x - mean)) / 7);
        Assert.Equal(mean, found.Location, 1e-11);

        // 1/√β(1.5) is 1.134 as ISO 13528 prints it, rounded up from 1.1334: hence 1e-3.
        Assert.Equal(1.134 * s, found.Spread, 1e-3 * found.Spread);
    }

    [Fact]
    public void TooFewStepsAreSaid()
    {
        RobustLocation rough = AlgorithmA.Of([0.1, 0.4, 0.2, 0.35, 0.9, 0.15, -0.6, 0.22], new RobustLocationOptions { MaximumIterations = 2 });
        Assert.Contains(rough.Findings, f => f.Code == "robust.iterations" && f.Severity == FindingSeverity.Caution);
        Assert.Equal(2, rough.Iterations);
    }

    [Fact]
    public void CoarseReadingsHaveNoSpread()
    {
        double[] coarse = [0.1, 0.1, 0.1, 0.1, 0.2];
        RobustLocation centre = HuberLocation.Of(coarse);
        Assert.False(centre.TryGetLocation(out _, out _));
        Assert.Equal("robust.spread.zero", Assert.Throws<IndeterminateException>(() => centre.Location).Finding!.Code);
        Assert.False(AlgorithmA.Of(coarse).TryGetLocation(out _, out _));
        OutlierReport report = HampelIdentifier.Find(coarse);
        Assert.False(report.TryGetIndices(out _));
        Assert.Throws<IndeterminateException>(() => report.Scores);
        Assert.Equal([4], HampelIdentifier.Find(coarse, new HampelOptions { SmallestSpread = 0.1 / Math.Sqrt(12) }).Indices);
        Assert.Empty(HampelIdentifier.Find([7, 7, 7]).Indices);
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Median.Of([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Median.Of([1, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => MedianAbsoluteDeviation.Of([double.PositiveInfinity]));
        Assert.Throws<ArgumentOutOfRangeException>(() => MedianAbsoluteDeviation.Of([-1.7e308, 1.7e308]));
        Assert.Throws<ArgumentOutOfRangeException>(() => HampelIdentifier.Find([1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => HampelIdentifier.Find([1, 2, 3], new HampelOptions { Threshold = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => HuberLocation.Of([1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => HuberLocation.Of([1, 2, 3], new RobustLocationOptions { TuningConstant = 0.5 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => AlgorithmA.Of([1, 2, 3], new RobustLocationOptions { MaximumIterations = 0 }));
    }
}
