using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

/// <summary>A design within the range that its family has for a tolerance of up to 10 %.</summary>
public sealed record DampedDesign(int Humps, double Zeta, double Tolerance, double Hertz);

public static class DampedDesignArbitrary
{
    private static readonly double[] Reaches = [0.55, 0.28, 0.20, 0.15];

    public static Arbitrary<DampedDesign> Cases() => Arb.From(
        from humps in Gen.Choose(1, 4)
        from share in Gen.Choose(0, 1000)
        from tolerance in Gen.Choose(5, 100)
        from hertz in Gen.Choose(150, 2000)
        select new DampedDesign(humps, share / 1000.0 * Reaches[humps - 1], tolerance / 1000.0, hertz / 10.0));
}

[Properties(Arbitrary = [typeof(DampedDesignArbitrary)], MaxTest = 100)]
public sealed class DampedDesignProperties
{
    // At the mode's damping, from one end of the band to the other the residual stays within the tolerance and touches it at least once at a hump.
    [Property]
    public bool Humps_reach_the_tolerance_and_do_not_exceed_it(DampedDesign d)
    {
        ImpulseSequence s = ImpulseSequence.MultiHumpExtraInsensitive(Frequency.FromHertz(d.Hertz), d.Zeta, d.Humps, d.Tolerance);
        if (!s.TryGetInsensitiveBand(Frequency.FromHertz(d.Hertz), d.Zeta, d.Tolerance, out FrequencyBand band))
        {
            return false;
        }

        double below = d.Hertz - band.LowerHertz, above = band.UpperHertz - d.Hertz;
        FrequencyBand inner = FrequencyBand.Between(Frequency.FromHertz(d.Hertz - (0.98 * below)), Frequency.FromHertz(d.Hertz + (0.98 * above)));
        double worst = s.WorstResidual(inner, d.Zeta, d.Zeta);
        return Math.Abs(worst - d.Tolerance) < 1e-8 && s.Amplitudes.ToArray().All(a => a > 0);
    }

    // The stricter form with one hump and the one that is a damped period long differ little, the former being the shorter.
    [Property]
    public bool One_hump_is_no_longer_than_a_damped_period(DampedDesign d)
    {
        Frequency f = Frequency.FromHertz(d.Hertz);
        double free = ImpulseSequence.MultiHumpExtraInsensitive(f, d.Zeta, 1, d.Tolerance).Duration.Seconds * d.Hertz;
        double given = ImpulseSequence.ExtraInsensitive(f, d.Zeta, d.Tolerance).Duration.Seconds * d.Hertz;
        return free <= given + 1e-12 && free > 0.8 * given && Math.Abs(given - (1 / Math.Sqrt(1 - (d.Zeta * d.Zeta)))) < 1e-12;
    }

    [Property]
    public bool Unity_magnitudes_leave_what_they_should(DampedDesign d)
    {
        Frequency f = Frequency.FromHertz(d.Hertz);
        double zeta = Math.Min(0.5, 2 * d.Zeta);
        ImpulseSequence flat = ImpulseSequence.UnityMagnitudeZeroVibrationDerivative(f, zeta);

        // With a zero of second order a step of 1e-4 leaves some 1e-7; one of first order would leave 3e-4.
        return ImpulseSequence.UnityMagnitudeZeroVibration(f, zeta).ResidualVibration(f, zeta) < 1e-11
            && flat.ResidualVibration(f, zeta) < 1e-11
            && flat.ResidualVibration(Frequency.FromHertz(1.0001 * d.Hertz), zeta) < 2e-6
            && Math.Abs(ImpulseSequence.UnityMagnitudeExtraInsensitive(f, zeta, d.Tolerance).ResidualVibration(f, zeta) - d.Tolerance) < 1e-10;
    }

    [Fact]
    public void Zero_vibration_has_no_limit_of_damping()
    {
        Frequency f = Frequency.FromHertz(40);
        foreach (double zeta in new[] { 0.31, 0.6, 0.9, 0.999 })
        {
            Assert.InRange(ImpulseSequence.ZeroVibrationDerivative(f, zeta, 2).ResidualVibration(f, zeta), 0, 1e-14);
        }
    }

    [Fact]
    public void Beyond_its_range_a_sequence_says_how_far_it_goes()
    {
        Frequency f = Frequency.FromHertz(40);
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => ImpulseSequence.MultiHumpExtraInsensitive(f, 0.4, 3));
        Assert.Equal("dampingRatio", refused.ParamName);
        Assert.Contains("at most 0.319", refused.Message, StringComparison.Ordinal);
        Assert.Equal("humps", Assert.Throws<ArgumentOutOfRangeException>(() => ImpulseSequence.MultiHumpExtraInsensitive(f, 0.1, 5)).ParamName);
        Assert.Equal("tolerance", Assert.Throws<ArgumentOutOfRangeException>(() => ImpulseSequence.UnityMagnitudeExtraInsensitive(f, 0.1, double.NaN)).ParamName);
        Assert.Equal("dampingRatio", Assert.Throws<ArgumentOutOfRangeException>(() => ImpulseSequence.UnityMagnitudeZeroVibration(f, -0.1)).ParamName);
        Assert.Equal("frequency", Assert.Throws<ArgumentOutOfRangeException>(() => ImpulseSequence.UnityMagnitudeZeroVibrationDerivative(default, 0.1)).ParamName);
    }
}
