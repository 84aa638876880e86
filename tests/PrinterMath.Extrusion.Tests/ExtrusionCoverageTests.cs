using PrinterMath.Measurement;
using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Extrusion.Tests;

/// <summary>How often a 95 % interval holds the truth that an invented workshop has planted, with the mean width beside it. Quick form, fixed seeds.</summary>
/// <remarks>
/// Few readings and type B terms, so the goal is at least 93 % in each stratum. With N cases the test fails below 93 % − 3.29·√(0.93·0.07/N): 99.9 % binomial.
/// </remarks>
public sealed class ExtrusionCoverageTests(ITestOutputHelper output)
{
    private const int Cases = 300;

    // Ruler: the same error in all trials of a case, normal. Scatter normal or heavy-tailed; read to 0.5 mm or 0.1 mm.
    [Theory]
    [InlineData(3, 0.4, 0.1, false)]
    [InlineData(5, 0.4, 0.5, false)]
    [InlineData(5, 0.4, 0.1, true)]
    [InlineData(10, 1.0, 0.5, true)]
    [InlineData(4, 0.02, 0.5, false)]
    public void Feed(int trials, double scatter, double step, bool heavy)
    {
        var workshop = new Workshop(101);
        var options = new FeedCalibrationOptions { Resolution = Length.FromMillimeters(step), RulerUncertainty = Length.FromMillimeters(0.15) };
        Judge($"feed n={trials} s={scatter} step={step} heavy={heavy}", () =>
        {
            double truth = workshop.Uniform(0.93, 1.07), ruler = workshop.Gauss(0.15);
            FeedTrial[] made = [.. Enumerable.Range(0, trials).Select(_ => FeedTrial.Of(
                Length.FromMillimeters(100),
                Length.FromMillimeters(Workshop.Read((100 * truth) + ruler + (heavy ? workshop.Heavy(scatter) : workshop.Gauss(scatter)), step))))];
            return Held(FeedCalibration.Fit(made, options).FeedError.Result.Interval(), truth - 1);
        });
    }

    // The true bead comes from a flow error by the workshop's own geometry; crests add up to 0.02 mm, calipers read to 0.01 mm with an error of their own.
    [Theory]
    [InlineData(1, 5, 0.01)]
    [InlineData(1, 3, 0.03)]
    [InlineData(3, 5, 0.01)]
    [InlineData(1, 8, 0.002)]
    public void Flow_from_a_wall(int beads, int readings, double scatter)
    {
        var workshop = new Workshop(102);
        Bead target = Bead.FromWidthAndHeight(Length.FromMillimeters(0.45), Length.FromMillimeters(0.2));
        var options = new WallOptions
        {
            Beads = beads,
            Spacing = Length.FromMillimeters(0.4),
            CrestHeight = Measured.FromRange(Length.Zero, Length.FromMillimeters(0.02)),
        };
        Judge($"wall of {beads}, n={readings} s={scatter}", () =>
        {
            double surplus = workshop.Uniform(0.92, 1.12), caliper = workshop.Gauss(0.01), crest = workshop.Uniform(0, 0.02);
            double section = (Math.PI * 0.1 * 0.1) + (0.25 * 0.2);
            double wall = Workshop.BeadWidth(surplus * section, 0.2) + ((beads - 1) * 0.4) + crest + caliper;
            Length[] read = [.. Enumerable.Range(0, readings).Select(_ => Length.FromMillimeters(Workshop.Read(wall + workshop.Heavy(scatter), 0.01)))];
            Measured<Length> thickness = CaliperReadings.Combine(read, Length.FromMillimeters(0.01), Length.FromMillimeters(0.01)).Result;
            return Held(FlowEstimate.FromWall(target, thickness, options).Ratio.Result.Interval(), 1 / surplus);
        });
    }

    // Stated uncertainty right, or half of the true scatter; four outer, four inner features and a centre distance.
    [Theory]
    [InlineData(1, false)]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void Dimensions(double understated, bool heavy)
    {
        var workshop = new Workshop(103);
        double[] nominal = [10, 25, 50, 90];
        int[] held = new int[3];
        double[] error = new double[3], width = new double[3], bias = new double[3];
        for (int i = 0; i < Cases; i++)
        {
            double s = workshop.Uniform(-0.008, 0.002), outer = workshop.Uniform(-0.1, 0.15), inner = workshop.Uniform(-0.1, 0.15);
            DimensionalFit fit = DimensionalFit.For(PrintAxis.X,
            [
                .. nominal.Select(length => Feature(FeatureKind.Outer, length, length + (s * length) + outer + outer)),
                .. nominal.Select(length => Feature(FeatureKind.Inner, length, length + (s * length) - inner - inner)),
                Feature(FeatureKind.CenterDistance, 110, 110 + (s * 110)),
            ]);
            Count(0, fit.Scale.Interval(), s, 1);
            Count(1, Ratio(fit.OuterOffset).Interval(), outer, 1);
            Count(2, Ratio(fit.InnerOffset).Interval(), inner, 1);
        }

        for (int k = 0; k < 3; k++)
        {
            string name = new[] { "scale", "outer offset / mm", "inner offset / mm" }[k];
            output.WriteLine($"{name}, u understated {understated}x, heavy {heavy}: held {held[k] / (double)Cases:0.000}, width {width[k] / Cases:G3}, bias {bias[k] / Cases:G2}");
            Assert.True(held[k] / (double)Cases >= Lowest(Cases));

            // Without bias: the mean error within four standard errors of zero.
            Assert.InRange(Math.Abs(bias[k] / Cases), 0, 4 * Math.Sqrt(error[k] / Cases / Cases));
        }

        PrintedFeature Feature(FeatureKind kind, double length, double truth) => PrintedFeature.Of(
            kind,
            PrintAxis.X,
            Length.FromMillimeters(length),
            Measured.Of(Length.FromMillimeters(truth + (heavy ? workshop.Heavy(0.03) : workshop.Gauss(0.03))), Length.FromMillimeters(0.03 / understated)));

        void Count(int k, ExpandedInterval<double> interval, double truth, double unit)
        {
            double middle = (interval.Lower + interval.Upper) / 2;
            held[k] += interval.Contains(truth) ? 1 : 0;
            width[k] += (interval.Upper - interval.Lower) * unit;
            bias[k] += middle - truth;
            error[k] += (middle - truth) * (middle - truth);
        }

        static Measured<double> Ratio(Measured<Length> length) =>
            Measured<double>.FromSi(length.SiValue * 1e3, length.SiStandardUncertainty * 1e3, length.DegreesOfFreedom);
    }

    // The series runs by its own stop rule; µ anywhere in the bracket but its outermost twentieths.
    [Theory]
    [InlineData(0.003, 0.005)]
    [InlineData(0.006, 0.005)]
    [InlineData(0.02, 0.005)]
    [InlineData(0.003, 0.01)]
    [InlineData(0.006, 0.01)]
    [InlineData(0.02, 0.01)]
    public void Fit_series(double deviation, double step)
    {
        var workshop = new Workshop(104);
        int within = 0, missed = 0;
        double trials = 0;
        Judge($"fit series sd={deviation} step={step}", () =>
        {
            double truth = workshop.Uniform(0.905, 0.995);
            FitSeries series = Run(workshop, truth, deviation, step);
            trials += series.Trials.Count;
            if (!series.TryGetEstimate(out FitEstimate? estimate))
            {
                // Counts as not held: the truth lies inside the bracket.
                missed++;
                return (false, 0);
            }

            within += Math.Abs(estimate.Flow.SiValue - truth) <= 0.005 ? 1 : 0;
            return (truth >= estimate.Lower && truth <= estimate.Upper, estimate.Upper - estimate.Lower);
        });
        output.WriteLine($"  within 0.005: {within / (double)Cases:0.000}, mean trials {trials / Cases:0.0}, without answer {missed}");
        Assert.InRange(missed, 0, Cases / 50);
    }

    // Printers whose transition is no wider than 0.006, any narrower one as likely: 90 % within 0.005 after at most 14 trials, with a 99.9 % binomial margin.
    [Fact]
    public void Fit_series_ends_near_the_truth_within_fourteen_trials()
    {
        var workshop = new Workshop(105);
        int within = 0;
        for (int i = 0; i < Cases; i++)
        {
            double truth = workshop.Uniform(0.905, 0.995);
            FitSeries series = Run(workshop, truth, workshop.Uniform(0.0005, 0.006), 0.005);
            Assert.InRange(series.Trials.Count, 2, 14);
            within += series.TryGetEstimate(out FitEstimate? estimate) && Math.Abs(estimate.Flow.SiValue - truth) <= 0.005 ? 1 : 0;
        }

        output.WriteLine($"within 0.005: {within / (double)Cases:0.000}");
        Assert.True(within / (double)Cases >= 0.90 - (3.29 * Math.Sqrt(0.90 * 0.10 / Cases)));
    }

    private static FitSeries Run(Workshop workshop, double truth, double deviation, double step)
    {
        FitSeries series = FitSeries.Between(0.90, 1.00, new FitSeriesOptions { FlowStep = step });
        while (series.State == FitSeriesState.Running)
        {
            double flow = series.NextFlow;
            series = series.With(flow, workshop.Fits(flow, truth, deviation) ? FitOutcome.Fits : FitOutcome.DoesNotFit);
        }

        return series;
    }

    private static (bool Held, double Width) Held(ExpandedInterval<double> interval, double truth) =>
        (interval.Contains(truth), interval.Upper - interval.Lower);

    private static double Lowest(int cases) => 0.93 - (3.29 * Math.Sqrt(0.93 * 0.07 / cases));

    private void Judge(string stratum, Func<(bool Held, double Width)> runCase)
    {
        int held = 0;
        double width = 0;
        for (int i = 0; i < Cases; i++)
        {
            (bool inside, double wide) = runCase();
            held += inside ? 1 : 0;
            width += wide;
        }

        output.WriteLine($"{stratum}: held {held / (double)Cases:0.000}, mean width {width / Cases:G3}");
        Assert.True(held / (double)Cases >= Lowest(Cases), $"{stratum}: only {held} of {Cases} held");
    }
}
