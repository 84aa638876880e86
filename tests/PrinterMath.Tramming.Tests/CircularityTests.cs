using PrinterMath.Measurement;
using PrinterMath.Tramming.Tests.Simulation;
using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Tramming.Tests;

public class CircularityTests(ITestOutputHelper output)
{
    [Fact]
    public void AnExactCircleIsRecovered()
    {
        Circularity c = Path(36, 25e-3, .1, -.05, _ => 0);

        Assert.Equal(.1, c.LeastSquaresCircle.Estimate<Length>(0).SiValue, 1e-15);
        Assert.Equal(-.05, c.LeastSquaresCircle.Estimate<Length>(1).SiValue, 1e-15);
        Assert.Equal(25e-3, c.Radius.SiValue, 1e-15);
        Assert.Equal(0, c.CircularDeviation.Micrometers, 1e-9);
        Assert.Empty(c.Findings);
    }

    [Fact]
    public void AnOvalDeviatesByTwiceItsAmplitude()
    {
        // r + e cos 2t: both circles are concentric with it, and the ring is 2e wide
        Circularity c = Path(72, 25e-3, 0, 0, t => 30e-6 * Math.Cos(2 * t));

        Assert.Equal(60, c.CircularDeviation.Micrometers, 1e-6);
        Assert.Equal(60, c.LeastSquaresDeviation.Micrometers, 1e-6);
        Assert.Equal(0, c.ZoneCentre.X.Micrometers, 1e-6);
    }

    [Fact]
    public void TheRingIsNoWiderThanAnyOther()
    {
        // brute force: centres where two points lie on the outer and two on the inner circle, from bisectors of all pairs
        for (int seed = 1; seed <= 200; seed++)
        {
            var noise = new Noise(seed, NoiseKind.Uniform, 20e-6);
            double[] x = new double[9], y = new double[9];
            for (int i = 0; i < 9; i++)
            {
                (double s, double k) = Math.SinCos((.7 * i) + (.05 * noise.Next() / 20e-6));
                double r = 25e-3 + noise.Next();
                (x[i], y[i]) = (r * k, r * s);
            }

            double narrowest = double.PositiveInfinity;
            (int, int)[] pairs = [.. from i in Enumerable.Range(0, 9) from j in Enumerable.Range(0, i) select (i, j)];
            foreach ((int a, int b) in pairs)
            {
                foreach ((int p, int q) in pairs)
                {
                    // |c - a| = |c - b| and |c - p| = |c - q|: two lines
                    double a1 = x[b] - x[a], b1 = y[b] - y[a], c1 = ((x[b] * x[b]) + (y[b] * y[b]) - (x[a] * x[a]) - (y[a] * y[a])) / 2;
                    double a2 = x[q] - x[p], b2 = y[q] - y[p], c2 = ((x[q] * x[q]) + (y[q] * y[q]) - (x[p] * x[p]) - (y[p] * y[p])) / 2;
                    double det = (a1 * b2) - (a2 * b1);
                    if (Math.Abs(det) < 1e-9)
                    {
                        continue;
                    }

                    double cx = ((c1 * b2) - (c2 * b1)) / det, cy = ((a1 * c2) - (a2 * c1)) / det;
                    if (double.Hypot(cx, cy) > 5e-3)
                    {
                        continue; // rings far outside the path are not meant
                    }

                    double[] radii = [.. Enumerable.Range(0, 9).Select(i => double.Hypot(x[i] - cx, y[i] - cy))];
                    narrowest = Math.Min(narrowest, radii.Max() - radii.Min());
                }
            }

            Assert.Equal(narrowest, Circularity.OfMeters(x, y).CircularDeviation.Meters, 1e-12); // bisectors of near pairs lose five digits of 25 mm
        }
    }

    [Fact]
    public void PoorDataAreTold()
    {
        Circularity line = Circularity.OfMeters([0, 1e-3, 2e-3, 3e-3], [0, 1e-3, 2e-3, 3e-3]);
        Assert.Equal("circle.short", Assert.Throws<IndeterminateException>(() => line.CircularDeviation).Finding!.Code);
        Assert.False(line.TryGetCircularDeviation(out _));
        Assert.Equal("circle.short", Assert.Single(Circularity.OfMeters([1, 1, 1], [2, 2, 2]).Findings).Code);

        double[] t = [0, .2, .4, .6, .8, 1];
        Circularity arc = Circularity.OfMeters([.. t.Select(Math.Cos)], [.. t.Select(Math.Sin)]);
        Assert.Contains(arc.Findings, f => f.Code == "circle.arc");
        Assert.Equal(1, arc.Radius.SiValue, 1e-9);

        Circularity three = Circularity.OfMeters([1, 0, -1], [0, 1, 0]);
        Assert.Throws<IndeterminateException>(() => three.Radius);
        Assert.Equal(0, three.CircularDeviation.Micrometers, 1e-6);
        Assert.Throws<ArgumentException>(() => Circularity.OfMeters([1, 2], [1, 2]));
        Assert.Throws<ArgumentException>(() => Circularity.OfMeters([1, 2, 3], [1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Circularity.OfMeters([1, 2, double.NaN], [1, 2, 3]));
    }

    [Fact]
    public void IntervalsHoldTheTruth()
    {
        var radius = new CoverageCheck("radius");
        var centre = new CoverageCheck("centre");
        for (int seed = 1; seed <= CoverageCheck.Cases; seed++)
        {
            var noise = new Noise(seed, NoiseKind.Normal, 10e-6);
            JointEstimate fit = Path(40, 25e-3, .01, .02, _ => noise.Next()).LeastSquaresCircle;
            radius.Add(fit.Estimate<Length>(2).Interval().Contains(Length.FromMillimeters(25)), fit.Estimate<Length>(2).SiStandardUncertainty);
            centre.Add(fit.Estimate<Length>(0).Interval().Contains(Length.FromMillimeters(10)), fit.Estimate<Length>(0).SiStandardUncertainty);
        }

        output.WriteLine($"{radius.Report}; {centre.Report}");
        radius.Assert(.93, .97);
        centre.Assert(.93, .97);
    }

    private static Circularity Path(int count, double radius, double x, double y, Func<double, double> deviation)
    {
        double[] xs = new double[count], ys = new double[count];
        for (int i = 0; i < count; i++)
        {
            double t = 2 * Math.PI * i / count;
            double r = radius + deviation(t);
            (xs[i], ys[i]) = (x + (r * Math.Cos(t)), y + (r * Math.Sin(t)));
        }

        return Circularity.OfMeters(xs, ys);
    }

    [Fact]
    public void ThreePointsGiveTheCircleThroughThemAndNoUncertainty()
    {
        // circle about (3, 4) mm of radius 5 mm
        Circularity three = Circularity.OfMeters([0, 6e-3, 8e-3], [0, 0, 4e-3]);

        Assert.All(three.Deviations, d => Assert.Equal(0, d.Micrometers, 1e-9));
        Assert.Equal(0, three.CircularDeviation.Micrometers, 1e-9);
        Assert.Equal(3, three.ZoneCentre.X.Millimeters, 1e-9);
        Assert.Equal(4, three.ZoneCentre.Y.Millimeters, 1e-9);
        Assert.Equal("circle.uncertainty.unknown", Assert.Throws<IndeterminateException>(() => three.Radius).Finding!.Code);
        Assert.Contains(three.Findings, f => f.Code == "circle.uncertainty.unknown");
    }

    [Theory]
    [InlineData(1e3)]
    [InlineData(1e-3)]
    public void AUnitThatSlippedIsSuspected(double factor)
    {
        double[] t = [.. Enumerable.Range(0, 12).Select(i => i * Math.PI / 6)];
        Circularity c = Circularity.OfMeters([.. t.Select(a => .02 * factor * Math.Cos(a))], [.. t.Select(a => .02 * factor * Math.Sin(a))]);
        Assert.Equal("circle.unit.suspect", Assert.Single(c.Findings).Code);
    }

    [Fact]
    public void PointsThatAreNoCircleStayFinite()
    {
        // scatter without a shape, repeated points, and a point in the middle: some answer or a finding, never a number that is none
        for (int seed = 1; seed <= 500; seed++)
        {
            var random = new Random(seed);
            int n = random.Next(3, 9);
            double[] x = [.. Enumerable.Range(0, n).Select(_ => random.Next(5) * 5e-3)], y = [.. Enumerable.Range(0, n).Select(_ => random.Next(5) * 5e-3)];
            Circularity c = Circularity.OfMeters(x, y);
            Assert.True(c.IsDeterminate ? double.IsFinite(c.CircularDeviation.Meters) && c.Deviations.All(d => double.IsFinite(d.Meters)) : c.Findings[0].Code == "circle.short");
            if (c.IsDeterminate && n > 3)
            {
                Assert.True(c.CircularDeviation <= c.LeastSquaresDeviation * (1 + 1e-9));
            }
        }
    }
}
