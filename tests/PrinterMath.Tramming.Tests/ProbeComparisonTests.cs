using PrinterMath.Measurement;
using PrinterMath.Tramming.Tests.Simulation;
using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Tramming.Tests;

public class ProbeComparisonTests(ITestOutputHelper output)
{
    private static Length[] Mm(params double[] values) => [.. values.Select(v => Length.FromMillimeters(v))];

    // Source: Student 1908, The probable error of a mean, Biometrika 6, 1: hours of sleep gained with two drugs, ten patients each (data set "sleep" of R). R's Welch test prints t = -1.8608,
    // df = 17.776, p-value = 0.07939, interval -3.3654832 to 0.2054832 (data and values from memory).
    [Fact]
    public void WelchsTestAgreesWithRForStudentsData()
    {
        ProbeComparison c = ProbeComparison.Of(
            Mm(.7, -1.6, -.2, -1.2, -.1, 3.4, 3.7, .8, 0, 2),
            Mm(1.9, .8, 1.1, .1, -.1, 4.4, 5.5, 1.6, 4.6, 3.4));

        Assert.Equal(-1.8608, c.StudentT, 5e-5);
        Assert.Equal(17.776, c.Difference.DegreesOfFreedom, 5e-4);
        Assert.Equal(.07939, c.DifferenceProbability, 5e-6);
        Assert.False(c.ReadsDifferently);
    }

    [Fact]
    public void EqualSeriesHaveRatioOneAndDifferenceZero()
    {
        ProbeComparison c = ProbeComparison.Of(Mm(1, 2, 3, 5), Mm(1, 2, 3, 5));

        Assert.Equal(0, c.Difference.SiValue);
        Assert.Equal(1, c.VarianceRatio, 1e-15);
        Assert.Equal(1, c.VarianceRatioProbability, 1e-12);
        Assert.Equal(1, c.VarianceRatioLower * c.VarianceRatioUpper, 1e-9); // F and 1/F have the same distribution here
    }

    [Fact]
    public void TheFTestHasItsClosedForm()
    {
        // 2 and 2 degrees of freedom: P(F > f) = 1/(1 + f)
        ProbeComparison c = ProbeComparison.Of(Mm(-3, 0, 3), Mm(-1, 0, 1));

        Assert.Equal(9, c.VarianceRatio, 1e-12);
        Assert.Equal(2 / 10.0, c.VarianceRatioProbability, 1e-9);
    }

    [Fact]
    public void ExchangeTurnsTheSigns()
    {
        Length[] a = Mm(1, 2.5, 2, 4), b = Mm(3, 3.1, 2.9);
        ProbeComparison one = ProbeComparison.Of(a, b), other = ProbeComparison.Of(b, a);

        Assert.Equal(one.Difference.SiValue, -other.Difference.SiValue, 1e-18);
        Assert.Equal(1, one.VarianceRatio * other.VarianceRatio, 1e-12);
        Assert.Equal(one.VarianceRatioProbability, other.VarianceRatioProbability, 1e-9);
    }

    [Fact]
    public void NoScatterAndMistakesAreTold()
    {
        ProbeComparison c = ProbeComparison.Of(Mm(1, 1, 1), Mm(1, 2, 3));

        Assert.False(c.TryGetDifference(out _));
        Assert.Equal("comparison.alike", Assert.Throws<IndeterminateException>(() => c.VarianceRatio).Finding!.Code);
        Assert.Throws<ArgumentOutOfRangeException>(() => ProbeComparison.Of(Mm(1), Mm(1, 2)));
        Assert.Throws<ArgumentNullException>(() => ProbeComparison.Of(null!, Mm(1, 2)));
    }

    [Theory]
    [InlineData(10, 10, 1)]
    [InlineData(8, 20, 3)]
    public void IntervalsHoldTheTruthAndTestsKeepTheirRisk(int first, int second, double ratio)
    {
        var difference = new CoverageCheck("difference");
        var variance = new CoverageCheck("variance ratio");
        for (int seed = 1; seed <= CoverageCheck.Cases; seed++)
        {
            var noise = new Noise(seed, NoiseKind.Normal, 1);
            ProbeComparison c = ProbeComparison.Of(
                Mm([.. Enumerable.Range(0, first).Select(_ => 5 + (ratio * noise.Next()))]),
                Mm([.. Enumerable.Range(0, second).Select(_ => 3 + noise.Next())]));
            difference.Add(c.Difference.Interval().Contains(Length.FromMillimeters(2)), c.Difference.SiStandardUncertainty);
            variance.Add(c.VarianceRatioLower <= ratio * ratio && c.VarianceRatioUpper >= ratio * ratio, 0);
        }

        output.WriteLine($"{difference.Report}; {variance.Report}");
        difference.Assert(.93, .97);
        variance.Assert(.93, .97);
    }

    [Fact]
    public void RoundingIsNoScatterAndTwoReadingsAreEnough()
    {
        Assert.False(ProbeComparison.Of([Length.FromMeters(.3), Length.FromMeters(.1 + .2)], Mm(1, 2)).IsDeterminate);

        // two and two: difference of means 1, u = sqrt(2 * 0.5 / 2) for deviations of 1/sqrt(2), two degrees of freedom
        ProbeComparison c = ProbeComparison.Of(Mm(1, 2), Mm(0, 1));
        Assert.Equal(1, c.Difference.Millimeters(), 1e-12);
        Assert.Equal(Math.Sqrt(.5), c.Difference.UncertaintyMillimeters(), 1e-12);
        Assert.Equal(2, c.Difference.DegreesOfFreedom, 1e-12);
        Assert.Equal(1, c.VarianceRatioProbability, 1e-9);
    }
}
