using MathNet.Numerics.LinearAlgebra;
using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class TrammingLimitsTests
{
    private static readonly PlaneFitOptions FourMicrons = new() { ProbeRepeatability = Length.FromMicrometers(4) };

    private static BedSupports Three => BedSupports.Of(Screw("left", 0, 0), Screw("right", 200, 0), Screw("rear", 100, 200));

    // rises by .3 mm from left to right: heights at the screws 0, .3 and .15 mm
    private static PlaneFit Rising => PlaneFit.Fit(Grid(100, 3, 3, (x, _) => .0015 * x), FourMicrons);

    [Fact]
    public void ALimitThatIsNotReachedChangesNothing()
    {
        TrammingPlan free = Three.Plan(Rising);
        TrammingPlan limited = Three.Plan(Rising, new TrammingOptions { Limits = [TravelLimit.Between("left", Mm(-1), Mm(1)), TravelLimit.Spring("right", Mm(3), least: Mm(1))] });

        Assert.Equal(free.ToString(), limited.ToString());
        Assert.Equal(free.HeightChanges.Covariance(0, 1), limited.HeightChanges.Covariance(0, 1));
        Assert.DoesNotContain(limited.Findings, f => f.Code.StartsWith("plan.", StringComparison.Ordinal));
    }

    [Fact]
    public void AHeightGivesWayToALimit()
    {
        // changes about the mean: .15, -.15, 0; a spring with .1 mm to lose at the left lets the whole bed come .05 mm lower
        TrammingPlan plan = Three.Plan(Rising, new TrammingOptions { Limits = [TravelLimit.Spring("left", Mm(1.1), least: Mm(1))] });
        double[] expected = [.1, -.2, -.05];
        Assert.All(expected, (change, i) => Assert.Equal(change, plan.Turns[i].HeightChange.Millimeters(), 1e-12));
        Assert.Equal(0, plan.Turns[0].HeightChange.SiStandardUncertainty); // a limit is what it is
        Assert.Equal(.2 * Rising.SlopeX.SiStandardUncertainty, plan.Turns[1].HeightChange.SiStandardUncertainty, 1e-15);
        Assert.Equal(0, plan.PredictedPlane.SlopeX.SiValue);
        Assert.Equal(.1, plan.PredictedPlane.HeightAt(Mm(33), Mm(44)).Millimeters(), 1e-12);
        Finding finding = Assert.Single(plan.Findings, f => f.Code == "plan.limits.bind");
        Assert.Contains("'left'", finding.Message, StringComparison.Ordinal);
        Assert.Equal(0, finding.Numbers.Single(n => n.Name == "remainingSpread").Value);
    }

    [Fact]
    public void WhatLimitsLeaveIsTold()
    {
        // the left may rise by .1 and the right come down by .1 at most: .1 of the .3 mm are left along x, rear in the middle of both
        TrammingPlan plan = Three.Plan(Rising, new TrammingOptions { Limits = [TravelLimit.Between("left", Mm(-1), Mm(.1)), TravelLimit.Between("right", Mm(-.1), Mm(1))] });
        double[] expected = [.1, -.1, 0];
        Assert.All(expected, (change, i) => Assert.Equal(change, plan.Turns[i].HeightChange.Millimeters(), 1e-12));
        Assert.Equal(.0005, plan.PredictedPlane.SlopeX.SiValue, 1e-12);
        Assert.Equal(0, plan.PredictedPlane.SlopeY.SiValue, 1e-12);
        Assert.Equal(.1, plan.PredictedPlane.HeightSpread.Millimeters(), .004); // and the noise of the probe, 4 um a point
        Finding finding = Assert.Single(plan.Findings, f => f.Code == "plan.limits.bind");
        Assert.Equal(1e-4, finding.Numbers.Single(n => n.Name == "remainingSpread").Value, 1e-12);
        Assert.Equal(0, plan.HeightChanges.Covariance(0, 0));
        Assert.True(plan.HeightChanges.Covariance(2, 2) > 0);
    }

    [Fact]
    public void LimitsThatExcludeEachOtherGiveNoTurns()
    {
        // left must rise by .2 at least and right as much as .1 while the rear may not: the middle of left and right would be .15 high, the rear at 0 is no conflict in a plane,
        // but a still left is one: .2 short
        var options = new TrammingOptions { KeepStill = "left", Limits = [TravelLimit.Spring("left", Mm(3), least: Mm(1), most: Mm(2.8)), TravelLimit.Between("left", Mm(.2), Mm(1))] };
        TrammingPlan plan = Three.Plan(Rising, options);

        Assert.False(plan.IsDeterminate);
        Assert.False(plan.TryGetTurns(out _));
        Finding finding = Assert.Single(plan.Findings, f => f.Severity == FindingSeverity.Blocking);
        Assert.Equal("plan.limits.infeasible", finding.Code);
        Assert.Equal(2e-4, finding.Numbers[0].Value, 1e-12);
        Assert.Throws<IndeterminateException>(() => plan.Turns);
        Assert.Throws<IndeterminateException>(() => plan.TotalTurns);
        Assert.Throws<IndeterminateException>(() => plan.Moves);
        Assert.Equal(plan.Plane.HeightSpread, plan.Judge(Tolerance.AtMost(Mm(1))).Measured); // the bed as it is can still be judged
    }

    [Fact]
    public void TwoLimitsOfOneScrewHoldTogether()
    {
        // spring: at most -.1; thread: at least .1; both give by .1
        var options = new TrammingOptions { Limits = [TravelLimit.Spring("left", Mm(1), least: Mm(1.1)), TravelLimit.Between("left", Mm(.1), Mm(1))] };
        Finding finding = Assert.Single(Three.Plan(Rising, options).Findings, f => f.Code == "plan.limits.infeasible");
        Assert.Equal(1e-4, finding.Numbers[0].Value, 1e-12);
        Assert.Contains("'left'", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-3000, 2000)] // micrometres taken for millimetres
    [InlineData(-.003, .002)] // metres taken for millimetres
    public void TravelInAWrongUnitIsDoubted(double low, double high)
    {
        TrammingPlan plan = Three.Plan(Rising, new TrammingOptions { Limits = [TravelLimit.Between("left", Mm(low), Mm(high))] });
        Assert.Contains(plan.Findings, f => f.Code == "plan.limits.unit.suspect");
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => TravelLimit.Between("left", Mm(1), Mm(-1)));
        Assert.Throws<ArgumentException>(() => TravelLimit.Between(" ", Mm(-1), Mm(1)));
        Assert.Throws<ArgumentException>(() => TravelLimit.Spring("left", Mm(1), least: Mm(2), most: Mm(2)));
        Assert.Throws<ArgumentOutOfRangeException>(() => TravelLimit.Spring("left", Mm(-1), least: Mm(2)));
        Assert.ThrowsAny<ArgumentException>(() => TravelLimit.Between("left", Mm(double.NegativeInfinity), Mm(1)));
        Assert.Throws<ArgumentException>(() => Three.Plan(Rising, new TrammingOptions { Limits = [TravelLimit.Between("front", Mm(-1), Mm(1))] }));
        Assert.Throws<ArgumentNullException>(() => Three.Plan(Rising, new TrammingOptions { Limits = null! }));
        Assert.Throws<ArgumentNullException>(() => Three.Plan(Rising, new TrammingOptions { Limits = [null!] }));
        Assert.Throws<ArgumentException>(() => Three.Plan(Rising, new TrammingOptions { KeepStill = "left", LeastTotalTurning = true }));
        Assert.Equal("left: -1 mm to 2 mm", TravelLimit.Between("left", Mm(-1), Mm(2)).ToString());
        Assert.Equal("left: any depth to 2 mm, spring", TravelLimit.Spring("left", Mm(3), Mm(1)).ToString());
        Assert.Null(TravelLimit.Spring("left", Mm(3), Mm(1)).Lowest);
    }

    // The conditions of Karush, Kuhn and Tucker: within the limits, in one plane, and the gradient of the tilt a combination of active limits with multipliers that are not negative and,
    // since the common height is free, balance. Multipliers are found here by trying all sets of three active limits or fewer.
    [Fact]
    public void APlanWithLimitsIsOptimal()
    {
        int bound = 0;
        for (int seed = 1; seed <= 400; seed++)
        {
            var bed = new RandomBed(seed);
            TrammingPlan plan = bed.Supports.Plan(bed.Plane, new TrammingOptions { Limits = bed.Limits });
            double[] changes = bed.Changes(plan);
            (double rx, double ry) = (plan.PredictedPlane.SlopeX.SiValue, plan.PredictedPlane.SlopeY.SiValue);
            double height = plan.PredictedPlane.HeightAt(Mm(0), Mm(0)).Millimeters();
            for (int i = 0; i < changes.Length; i++)
            {
                Assert.InRange(changes[i], bed.Low[i] - 1e-12, bed.High[i] + 1e-12);
                double before = 1 + (bed.Slopes.X * bed.X[i]) + (bed.Slopes.Y * bed.Y[i]);
                Assert.Equal(height + (rx * bed.X[i]) + (ry * bed.Y[i]) - before, changes[i], 1e-11);
            }

            if (Math.Abs(rx) + Math.Abs(ry) > 1e-12)
            {
                bound++;
                Assert.True(HasMultipliers(bed, changes, rx, ry), $"seed {seed}");
            }
        }

        Assert.True(bound > 100, $"{bound} of 400 were bound"); // else the test shows nothing
    }

    private static bool HasMultipliers(RandomBed bed, double[] changes, double rx, double ry)
    {
        // gradient of the tilt: M r, with M = sum of (x, y)(x, y)' about the middle of the 5 x 4 grid: 4·36 000, 5·18 000
        Vector<double> gradient = Vector<double>.Build.Dense([144_000 * rx, 90_000 * ry, 0]);
        var active = new List<(int Index, int Sign)>();
        for (int i = 0; i < changes.Length; i++)
        {
            if (changes[i] <= bed.Low[i] + 1e-11)
            {
                active.Add((i, 1));
            }

            if (changes[i] >= bed.High[i] - 1e-11)
            {
                active.Add((i, -1));
            }
        }

        foreach (List<(int Index, int Sign)> set in Enumerable.Range(1, (1 << active.Count) - 1).Select(bits => active.Where((_, k) => (bits >> k & 1) == 1).ToList()).Where(set => set.Count <= 3))
        {
            var columns = Matrix<double>.Build.Dense(3, set.Count, (row, k) => set[k].Sign * (row == 0 ? bed.X[set[k].Index] - 120 : row == 1 ? bed.Y[set[k].Index] - 90 : 1));
            Vector<double> shares = columns.Svd().Solve(gradient);
            if (shares.All(share => share >= -1e-6 * gradient.L2Norm()) && ((columns * shares) - gradient).L2Norm() <= 1e-7 * gradient.L2Norm())
            {
                return true;
            }
        }

        return false;
    }

    [Fact]
    public void NoOtherPlanWithinTheLimitsIsMoreLevel()
    {
        for (int seed = 1; seed <= 60; seed++)
        {
            var bed = new RandomBed(seed);
            TrammingPlan plan = bed.Supports.Plan(bed.Plane, new TrammingOptions { Limits = bed.Limits });
            double best = RandomBed.Tilt(plan.PredictedPlane.SlopeX.SiValue, plan.PredictedPlane.SlopeY.SiValue);
            var random = new Random(seed);
            for (int trial = 0; trial < 2000; trial++)
            {
                double size = Math.Pow(10, -5 * random.NextDouble());
                double rx = plan.PredictedPlane.SlopeX.SiValue + (.01 * size * (random.NextDouble() - .5));
                double ry = plan.PredictedPlane.SlopeY.SiValue + (.01 * size * (random.NextDouble() - .5));
                double low = bed.X.Select((x, i) => bed.Low[i] - ((rx - bed.Slopes.X) * x) - ((ry - bed.Slopes.Y) * bed.Y[i])).Max();
                double high = bed.X.Select((x, i) => bed.High[i] - ((rx - bed.Slopes.X) * x) - ((ry - bed.Slopes.Y) * bed.Y[i])).Min();
                Assert.True(low > high || RandomBed.Tilt(rx, ry) >= best - 1e-9, $"seed {seed}: a common height from {low} to {high} mm does better");
            }
        }
    }
}
