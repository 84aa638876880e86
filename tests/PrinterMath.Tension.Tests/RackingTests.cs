using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class RackingTests
{
    private static readonly Measured<Length> Width = Measured.Exact(Length.FromMillimeters(300));

    private static SkewReading Read(double newtons, double milliradians, double u = 0.05) => new(
        Measured.Of(Force.FromNewtons(newtons), Force.FromNewtons(0.2)), Measured.Of(Angle.FromRadians(milliradians / 1000), Angle.FromRadians(u / 1000)));

    // D from 0 to 10 N, φ from 1 to 2 mrad, W = 0.3 m: M = 3 N·m for 1 mrad: k = 3000 N·m/rad; φ at −5 N is 0.5 mrad.
    [Fact]
    public void By_hand()
    {
        Racking racking = Racking.FromReadings(Width, Read(0, 1), Read(10, 2));
        Assert.True(racking.TryGetStiffness(out Measured<RotationalStiffness> k));
        Assert.Equal(3000, k.SiValue, 1e-9);
        // u(k)/k = √(2·0.05² + 2·(0.2/10)²·1²) = 7.616 %.
        Assert.Equal(0.07616, k.RelativeStandardUncertainty, 2e-5);
        Assert.Equal(0.5e-3, racking.SkewAt(Measured.Exact(Force.FromNewtons(-5))).Result.SiValue, 1e-12);
        Assert.True(racking.TryGetLeastStiffness(out RotationalStiffness least));
        Assert.InRange(least.NewtonMetersPerRadian, 2500, 3000);
        Assert.Equal(k.SiValue, Racking.FromReadings(Width, Read(10, 2), Read(0, 1)).Stiffness.Result.SiValue, 1e-9);
    }

    // 2 mrad on 3000 N·m/rad over 0.3 m: 20 N, and 1.645·20·(0.1/2) more.
    [Fact]
    public void One_print_gives_a_bound()
    {
        Force bound = Racking.LargestDifference(
            Measured.Of(Angle.FromRadians(-2e-3), Angle.FromRadians(1e-4)), Measured.Exact(RotationalStiffness.FromNewtonMetersPerRadian(3000)), Width);
        Assert.Equal(20 + (1.645 * 1), bound.Newtons, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => Racking.LargestDifference(
            Measured.Exact(Angle.Zero), Measured.Exact(RotationalStiffness.FromNewtonMetersPerRadian(0)), Width));
    }

    [Fact]
    public void What_is_not_seen_is_a_finding()
    {
        Racking alike = Racking.FromReadings(Width, Read(5, 1), Read(5.1, 2));
        Assert.Equal(DriveFindings.DifferencesAlike, Assert.Single(alike.Findings).Code);
        Assert.Throws<IndeterminateException>(() => alike.SkewAt(Measured.Exact(Force.Zero)));
        Assert.False(alike.TryGetLeastStiffness(out _));
        Racking stiff = Racking.FromReadings(Width, Read(0, 1), Read(10, 1.01));
        Assert.Equal(DriveFindings.RackingNotSeen, Assert.Single(stiff.Findings).Code);
        Assert.Throws<IndeterminateException>(() => stiff.Stiffness);
        Assert.False(stiff.TryGetStiffness(out _));
        Assert.True(stiff.TryGetLeastStiffness(out RotationalStiffness least));

        // 0.01 ± 0.0707 mrad for 3 N·m: at most 0.1263 mrad: 23.7 kN·m/rad at least.
        Assert.InRange(least.NewtonMetersPerRadian, 23_500, 24_000);
        Assert.Throws<ArgumentOutOfRangeException>(() => Racking.FromReadings(Measured.Exact(Length.Zero), Read(0, 1), Read(10, 2)));
    }
}
