using PrinterMath.Measurement;
using PrinterMath.Tramming.Tests.Simulation;
using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Tramming.Tests;

public class GaugeStudyTests(ITestOutputHelper output)
{
    // 10 places, 3 operators, 3 trials, rows of places: AIAG 2010, Measurement Systems Analysis, 4th ed., chapter III, section B; taken as millimetres.
    private static readonly double[] Handbook =
    [
        .29, -.56, 1.34, .47, -.80, .02, .59, -.31, 2.26, -1.36,
        .41, -.68, 1.17, .50, -.92, -.11, .75, -.20, 1.99, -1.25,
        .64, -.58, 1.27, .64, -.84, -.21, .66, -.17, 2.01, -1.31,
        .08, -.47, 1.19, .01, -.56, -.20, .47, -.63, 1.80, -1.68,
        .25, -1.22, .94, 1.03, -1.20, .22, .55, .08, 2.12, -1.62,
        .07, -.68, 1.34, .20, -1.28, .06, .83, -.34, 2.19, -1.50,
        .04, -1.38, .88, .14, -1.46, -.29, .02, -.46, 1.77, -1.49,
        -.11, -1.13, 1.09, .20, -1.07, -.67, .01, -.56, 1.45, -1.77,
        -.15, -.96, .67, .11, -1.45, -.49, .21, -.49, 1.87, -2.16,
    ];

    private static GaugeStudy Study => GaugeStudy.OfMeters([.. Handbook.Select(z => z * 1e-3)], places: 10, operators: 3, trials: 3);

    // Source: AIAG 2010, data sheet and report: EV .20188, AV .22963, GRR .30575, PV 1.10456, TV 1.14610; 17.62 %, 20.04 %, 26.68 %, 96.38 %; 5 categories. The sheet rounds means to 4 digits and
    // K to 4 digits: up to 2e-4 of a value, so 4e-5 of .2 and 1.5e-4 of 1.1; shares to 2 decimals.
    [Fact]
    [Trait("Evidence", "Published")]
    public void TheRangeMethodAgreesWithTheHandbook()
    {
        GaugeResult r = Study.ByRange();

        Assert.Equal(.20188, r.Repeatability.StandardDeviation.Millimeters, 4e-5);
        Assert.Equal(.22963, r.Reproducibility.StandardDeviation.Millimeters, 6e-5);
        Assert.Equal(.30575, r.Gauge.StandardDeviation.Millimeters, 6e-5);
        Assert.Equal(1.10456, r.PlaceToPlace.StandardDeviation.Millimeters, 1.5e-4);
        Assert.Equal(1.14610, r.Total.StandardDeviation.Millimeters, 1.5e-4);
        Assert.Equal(17.62, 100 * r.Repeatability.ShareOfVariation, 1e-2);
        Assert.Equal(20.04, 100 * r.Reproducibility.ShareOfVariation, 1e-2);
        Assert.Equal(26.68, 100 * r.Gauge.ShareOfVariation, 1e-2);
        Assert.Equal(96.38, 100 * r.PlaceToPlace.ShareOfVariation, 1e-2);
        Assert.Equal(5, r.DistinctCategories);
        Assert.Equal(GaugeMethod.Range, r.Method);
        Assert.False(r.Gauge.TryGetLimits(out _, out _));
    }

    // Source: the same data by R 4.2.2 (aov): F of the interaction .43372, pooled on 78 degrees of freedom; variances of repeatability .0399733, reproducibility .0514553, parts 1.0864466; GRR .3023715,
    // total 1.0852996, 27.8607 %, ratio 4.86. Seven digits printed.
    [Fact]
    public void TheAnalysisOfVarianceAgreesWithR()
    {
        GaugeResult r = Study.ByAnova();

        Assert.Equal(.43372, r.InteractionF!.Value, 5e-6);
        Assert.Equal(Math.Sqrt(.0399733), r.Repeatability.StandardDeviation.Millimeters, 2e-7);
        Assert.Equal(Math.Sqrt(.0514553), r.Reproducibility.StandardDeviation.Millimeters, 2e-7);
        Assert.Equal(Math.Sqrt(1.0864466), r.PlaceToPlace.StandardDeviation.Millimeters, 1e-7);
        Assert.Equal(.3023715, r.Gauge.StandardDeviation.Millimeters, 1e-7);
        Assert.Equal(1.0852996, r.Total.StandardDeviation.Millimeters, 1e-7);
        Assert.Equal(27.8607, 100 * r.Gauge.ShareOfVariation, 1e-4);
        Assert.Equal(4.86, r.CategoryRatio, 5e-3);
        Assert.Equal(4, r.DistinctCategories);
        Assert.Contains(r.Findings, f => f.Code == "gauge.interaction.pooled");
        Assert.Contains(r.Findings, f => f.Code == "gauge.categories.few");
    }

    [Fact]
    public void SharesAddUpAndToleranceIsSixSigma()
    {
        GaugeResult r = Study.ByAnova();

        Assert.Equal(1, r.Gauge.ShareOfVariance + r.PlaceToPlace.ShareOfVariance, 1e-12);
        Assert.Equal(r.Gauge.ShareOfVariance, r.Repeatability.ShareOfVariance + r.Reproducibility.ShareOfVariance, 1e-12);
        Assert.Equal(6 * .3023715 / 8, r.Gauge.ShareOfTolerance(Length.FromMillimeters(8)), 1e-6);
        foreach (GaugeComponent c in new[] { r.Repeatability, r.Reproducibility, r.Gauge, r.PlaceToPlace, r.Total })
        {
            Assert.True(c.TryGetLimits(out Length low, out Length high));
            Assert.True(low <= c.StandardDeviation && c.StandardDeviation <= high, c.Name);
        }
    }

    [Fact]
    public void OperatorsThatAgreeAddNothing()
    {
        // the same readings by every operator: the variance between them comes out below zero
        double[] one = [1, 2, 4, 7, 1.1, 2.2, 3.9, 7.1];
        GaugeStudy study = GaugeStudy.OfMeters([.. one, .. one], places: 4, operators: 2, trials: 2);

        Assert.Equal(0, study.ByAnova().Reproducibility.ShareOfVariance);
        Assert.Equal(0, study.ByRange().Reproducibility.ShareOfVariance);
        Assert.Contains(study.ByRange().Findings, f => f.Code == "gauge.variance.negative");
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => GaugeStudy.OfMeters([1, 2, 3], 2, 2, 2));
        Assert.Throws<ArgumentException>(() => GaugeStudy.OfMeters(new double[8], 2, 2, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => GaugeStudy.OfMeters([], 2, 0, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Study.ByAnova().Gauge.ShareOfTolerance(Length.Zero));
    }

    // Limits at 95 %: at least 93 % with and without an interaction, and with operators that do not differ.
    [Theory]
    [InlineData(1, .5, 3, 0)]
    [InlineData(1, 2, 3, 0)]
    [InlineData(1, 1, 3, 1)]
    [InlineData(1, 0, 3, 0)]
    public void LimitsHoldTheTruth(double repeat, double operators, double places, double together)
    {
        const int P = 10, O = 3, T = 3;
        var checks = new[] { new CoverageCheck("repeatability"), new CoverageCheck("reproducibility"), new CoverageCheck("gauge"), new CoverageCheck("places"), new CoverageCheck("total") };
        double reproducibility = (operators * operators) + (together * together);
        double[] truth = [repeat * repeat, reproducibility, (repeat * repeat) + reproducibility, places * places, (repeat * repeat) + reproducibility + (places * places)];
        for (int seed = 1; seed <= CoverageCheck.Cases; seed++)
        {
            var noise = new Noise(seed, NoiseKind.Normal, 1);
            double[] place = [.. Enumerable.Range(0, P).Select(_ => places * noise.Next())];
            double[] z = new double[P * O * T];
            for (int o = 0; o < O; o++)
            {
                double shift = operators * noise.Next();
                double[] own = [.. Enumerable.Range(0, P).Select(_ => together * noise.Next())];
                for (int k = 0; k < T * P; k++)
                {
                    z[(o * T * P) + k] = place[k % P] + shift + own[k % P] + (repeat * noise.Next());
                }
            }

            GaugeResult r = GaugeStudy.OfMeters(z, P, O, T).ByAnova();
            GaugeComponent[] components = [r.Repeatability, r.Reproducibility, r.Gauge, r.PlaceToPlace, r.Total];
            for (int c = 0; c < components.Length; c++)
            {
                components[c].TryGetLimits(out Length low, out Length high);
                checks[c].Add(low.Meters * low.Meters <= truth[c] * (1 + 1e-12) && high.Meters * high.Meters >= truth[c], (high - low).Meters / 4);
            }
        }

        foreach (CoverageCheck check in checks)
        {
            output.WriteLine(check.Report);
            check.Assert(.93, 1);
        }
    }

    // One factor by hand: places (1, 3), (5, 7), (9, 11) um: MS(repetitions) 2, MS(places) 32, so variances 2 and (32 - 2)/2 = 15.
    [Fact]
    public void OneOperatorShowsRepeatabilityAlone()
    {
        GaugeStudy study = GaugeStudy.OfMeters([1e-6, 5e-6, 9e-6, 3e-6, 7e-6, 11e-6], places: 3, operators: 1, trials: 2);
        GaugeResult r = study.ByAnova();

        Assert.Equal(Math.Sqrt(2), r.Repeatability.StandardDeviation.Micrometers, 1e-9);
        Assert.Equal(Math.Sqrt(2), r.Gauge.StandardDeviation.Micrometers, 1e-9);
        Assert.Equal(Math.Sqrt(15), r.PlaceToPlace.StandardDeviation.Micrometers, 1e-9);
        Assert.Equal(Math.Sqrt(17), r.Total.StandardDeviation.Micrometers, 1e-9);
        Assert.Null(r.InteractionF);
        foreach (GaugeResult result in new[] { r, study.ByRange() })
        {
            Assert.False(result.TryGetReproducibility(out _));
            Assert.Equal("gauge.operators.one", Assert.Throws<IndeterminateException>(() => result.Reproducibility).Finding!.Code);
            Assert.Contains(result.Findings, f => f.Code == "gauge.operators.one");
        }

        // 2/d2 of two = 2/1.128379: twice the half width of the range's mean
        Assert.Equal(2 / (2 / Math.Sqrt(Math.PI)), study.ByRange().Repeatability.StandardDeviation.Micrometers, 1e-6);
    }

    [Fact]
    public void LimitsOfOneOperatorHoldTheTruth()
    {
        var checks = new[] { new CoverageCheck("repeatability"), new CoverageCheck("places"), new CoverageCheck("total") };
        double[] truth = [1, 9, 10];
        for (int seed = 1; seed <= CoverageCheck.Cases; seed++)
        {
            var noise = new Noise(seed, NoiseKind.Normal, 1);
            double[] place = [.. Enumerable.Range(0, 12).Select(_ => 3 * noise.Next())];
            GaugeResult r = GaugeStudy.OfMeters([.. Enumerable.Range(0, 36).Select(k => place[k % 12] + noise.Next())], 12, 1, 3).ByAnova();
            GaugeComponent[] components = [r.Repeatability, r.PlaceToPlace, r.Total];
            for (int c = 0; c < 3; c++)
            {
                components[c].TryGetLimits(out Length low, out Length high);
                checks[c].Add(low.Meters * low.Meters <= truth[c] && high.Meters * high.Meters >= truth[c], (high - low).Meters / 4);
            }
        }

        foreach (CoverageCheck check in checks)
        {
            output.WriteLine(check.Report);
            check.Assert(.93, 1);
        }
    }

    [Fact]
    public void AUnitThatSlippedIsSuspected()
    {
        Assert.DoesNotContain(Study.ByAnova().Findings, f => f.Code == "gauge.unit.suspect");
        Assert.Contains(GaugeStudy.OfMeters(Handbook, 10, 3, 3).ByRange().Findings, f => f.Code == "gauge.unit.suspect");
        Assert.Throws<ArgumentOutOfRangeException>(() => GaugeStudy.OfMeters([1, 2, double.PositiveInfinity, 4], 2, 1, 2));
    }
}
