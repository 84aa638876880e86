using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

/// <summary>A band about 1 Hz, damping and tolerance.</summary>
public sealed record BandCase(double Width, double LowZeta, double HighZeta, double Tolerance, double Other);

public static class BandArbitrary
{
    public static Arbitrary<BandCase> Cases() => Arb.From(
        from width in Gen.Choose(0, 500)
        from low in Gen.Choose(0, 150)
        from more in Gen.Choose(0, 60)
        from tolerance in Gen.Choose(10, 200)
        from other in Gen.Choose(1100, 2800)
        select new BandCase(width / 1000.0, low / 1000.0, (low + more) / 1000.0, tolerance / 1000.0, other / 1000.0));
}

[Properties(Arbitrary = [typeof(BandArbitrary)], MaxTest = 15)]
public sealed class SpecifiedInsensitivityTests
{
    [Property]
    public bool The_tolerance_is_kept_over_the_range(BandCase c)
    {
        ModeRange range = Range(c);
        ImpulseSequence s = ImpulseSequence.SpecifiedInsensitivity([range], c.Tolerance);
        double worst = s.WorstResidual(range.Band, range.LowestDampingRatio, range.HighestDampingRatio);
        return worst <= c.Tolerance * 1.0001 && worst > 0.99 * c.Tolerance && s.Amplitudes.ToArray().All(a => a > 0);
    }

    // No sequence that keeps the tolerance over the range is shorter: not the multi-hump ones, where they keep it.
    [Property]
    public bool Nothing_that_keeps_the_tolerance_is_shorter(BandCase c)
    {
        ModeRange range = Range(c);
        double shortest = ImpulseSequence.SpecifiedInsensitivity([range], c.Tolerance).Duration.Seconds;
        foreach (int humps in new[] { 1, 2 })
        {
            ImpulseSequence s = ImpulseSequence.MultiHumpExtraInsensitive(Frequency.FromHertz(1), c.LowZeta, humps, Math.Min(c.Tolerance, 0.1));
            if (s.Duration.Seconds < shortest * 0.9999 && s.WorstResidual(range.Band, c.LowZeta, c.HighZeta) <= c.Tolerance)
            {
                return false;
            }
        }

        return true;
    }

    [Property]
    public bool Two_modes_are_both_at_rest(BandCase c)
    {
        ImpulseSequence s = ImpulseSequence.TwoModeZeroVibration(Frequency.FromHertz(40), c.LowZeta, Frequency.FromHertz(40 * c.Other), c.HighZeta);
        return s.ResidualVibration(Frequency.FromHertz(40), c.LowZeta) < 1e-11 && s.ResidualVibration(Frequency.FromHertz(40 * c.Other), c.HighZeta) < 1e-11;
    }

    // Times scale with the period; the order in which ranges are given does not matter.
    [Fact]
    public void Two_ranges_in_either_order()
    {
        ModeRange low = Range(39, 43, 0.03, 0.07), high = Range(60, 66, 0.02, 0.05);
        ImpulseSequence s = ImpulseSequence.SpecifiedInsensitivity([low, high]), turned = ImpulseSequence.SpecifiedInsensitivity([high, low]);
        Assert.Equal(s.Duration.Seconds, turned.Duration.Seconds, 1e-9);
        Assert.InRange(s.WorstResidual(low.Band, 0.03, 0.07), 0, 0.050005);
        Assert.InRange(s.WorstResidual(high.Band, 0.02, 0.05), 0, 0.050005);
        ImpulseSequence slower = ImpulseSequence.SpecifiedInsensitivity([Range(19.5, 21.5, 0.03, 0.07), Range(30, 33, 0.02, 0.05)]);
        Assert.Equal(2 * s.Duration.Seconds, slower.Duration.Seconds, 1e-9);
    }

    [Fact]
    public void Bad_arguments_name_themselves()
    {
        ModeRange range = Range(40, 50, 0, 0.1);
        Assert.Equal("ranges", Assert.Throws<ArgumentException>(() => ImpulseSequence.SpecifiedInsensitivity([])).ParamName);
        Assert.Equal("ranges", Assert.Throws<ArgumentNullException>(() => ImpulseSequence.SpecifiedInsensitivity([null!])).ParamName);
        Assert.Equal("tolerance", Assert.Throws<ArgumentOutOfRangeException>(() => ImpulseSequence.SpecifiedInsensitivity([range], 0)).ParamName);
        Assert.ThrowsAny<OperationCanceledException>(() => ImpulseSequence.SpecifiedInsensitivity([range], 0.05, new CancellationToken(true)));
        Assert.Equal("otherFrequency", Assert.Throws<ArgumentOutOfRangeException>(
            () => ImpulseSequence.TwoModeZeroVibration(Frequency.FromHertz(40), 0, Frequency.FromHertz(130), 0)).ParamName);
        Assert.Equal("otherDampingRatio", Assert.Throws<ArgumentOutOfRangeException>(
            () => ImpulseSequence.TwoModeZeroVibration(Frequency.FromHertz(40), 0, Frequency.FromHertz(60), 1)).ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => ModeRange.Between(range.Band, 0.1, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => ModeRange.Between(default, 0, 0.05));
    }

    [Fact]
    public void A_measured_mode_spans_its_uncertainty()
    {
        var mode = Mode.FromValues(Measured.Of(Frequency.FromHertz(50), Frequency.FromHertz(0.5)), Measured.Of(0.05, 0.03), Measured.Exact(1.0));
        ModeRange range = ModeRange.Of(mode);
        Assert.Equal(49, range.Band.LowerHertz, 1e-12);
        Assert.Equal(51, range.Band.UpperHertz, 1e-12);
        Assert.Equal(0, range.LowestDampingRatio);
        Assert.Equal(0.11, range.HighestDampingRatio, 1e-12);
        Assert.Equal("49 to 51 Hz, ζ = 0 to 11 %", range.ToString());
        Assert.Throws<ArgumentOutOfRangeException>(() => ModeRange.Of(mode, 200));
    }

    private static ModeRange Range(BandCase c) => Range(1 - (c.Width / 2), 1 + (c.Width / 2), c.LowZeta, c.HighZeta);

    private static ModeRange Range(double low, double high, double zeta0, double zeta1) =>
        ModeRange.Between(FrequencyBand.Between(Frequency.FromHertz(low), Frequency.FromHertz(high)), zeta0, zeta1);
}
