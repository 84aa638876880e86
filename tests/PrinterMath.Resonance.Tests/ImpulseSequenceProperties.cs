using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace PrinterMath.Resonance.Tests;

/// <summary>A sequence and a mode that it may meet.</summary>
public sealed record AnyCase(string Family, string OtherFamily, double Hertz, double OtherHertz, double Zeta, double ModeHertz, double ModeZeta);

public static class SequenceArbitrary
{
    public static Arbitrary<AnyCase> Cases() => Arb.From(
        from family in Gen.Elements("ZV", "ZVD", "ZVDD", "EI")
        from other in Gen.Elements("ZV", "ZVD", "ZVDD", "EI")
        from hertz in Gen.Choose(150, 2000)
        from otherHertz in Gen.Choose(150, 2000)
        from zeta in Gen.Choose(0, 300)
        from modeHertz in Gen.Choose(100, 3000)
        from modeZeta in Gen.Choose(0, 400)
        select new AnyCase(family, other, hertz / 10.0, otherHertz / 10.0, zeta / 1000.0, modeHertz / 10.0, modeZeta / 1000.0));
}

[Properties(Arbitrary = [typeof(SequenceArbitrary)], MaxTest = 300)]
public sealed class ImpulseSequenceProperties
{
    [Property]
    public bool Amplitudes_sum_to_one(AnyCase c)
    {
        double one = 0, both = 0;
        foreach (double a in Make(c).Amplitudes)
        {
            one += a;
        }

        foreach (double a in Make(c).Convolve(MakeOther(c)).Amplitudes)
        {
            both += a;
        }

        return Math.Abs(one - 1) <= 1e-15 && Math.Abs(both - 1) <= 1e-15;
    }

    [Property]
    public bool Zero_vibration_leaves_nothing_at_its_mode(AnyCase c) =>
        c.Family == "EI"
            ? Math.Abs(Make(c).ResidualVibration(Frequency.FromHertz(c.Hertz), c.Zeta) - 0.05) < 1e-11
            : Make(c).ResidualVibration(Frequency.FromHertz(c.Hertz), c.Zeta) < 1e-14;

    [Property]
    public bool Residual_of_a_convolution_is_the_product(AnyCase c)
    {
        ImpulseSequence a = Make(c), b = MakeOther(c);
        Frequency f = Frequency.FromHertz(c.ModeHertz);
        double product = a.ResidualVibration(f, c.ModeZeta) * b.ResidualVibration(f, c.ModeZeta);
        return Math.Abs(a.Convolve(b).ResidualVibration(f, c.ModeZeta) - product) < 1e-12;
    }

    [Property]
    public bool Duration_delay_and_variance_add_under_convolution(AnyCase c)
    {
        ImpulseSequence a = Make(c), b = MakeOther(c), both = a.Convolve(b);
        return Close(a.Duration.Seconds + b.Duration.Seconds, both.Duration.Seconds)
            && Close(a.MeanDelay.Seconds + b.MeanDelay.Seconds, both.MeanDelay.Seconds)
            && Close(a.VarianceSquareSeconds + b.VarianceSquareSeconds, both.VarianceSquareSeconds);
    }

    // V depends on frequency times time only.
    [Property]
    public bool Residual_scales_with_the_period(AnyCase c)
    {
        ImpulseSequence twice = Make(c with { Hertz = 2 * c.Hertz });
        double v = Make(c).ResidualVibration(Frequency.FromHertz(c.ModeHertz), c.ModeZeta);
        return Math.Abs(twice.ResidualVibration(Frequency.FromHertz(2 * c.ModeHertz), c.ModeZeta) - v) < 1e-12;
    }

    [Property]
    public bool Worst_of_a_box_is_no_less_than_any_point_of_it(AnyCase c)
    {
        ImpulseSequence s = Make(c);
        double high = c.ModeHertz * 1.3, z = Math.Min(0.4, c.ModeZeta + 0.05);
        double worst = s.WorstResidual(FrequencyBand.Between(Frequency.FromHertz(c.ModeHertz), Frequency.FromHertz(high)), c.ModeZeta, z);
        double sampled = 0;
        for (int i = 0; i <= 37; i++)
        {
            for (int j = 0; j <= 5; j++)
            {
                sampled = Math.Max(sampled, s.ResidualVibration(Frequency.FromHertz(c.ModeHertz + ((high - c.ModeHertz) * i / 37)), c.ModeZeta + ((z - c.ModeZeta) * j / 5)));
            }
        }

        // Five damping ratios are looked at: between them V differs from its neighbours by a curvature of some 1e-4.
        return worst <= 1 + 1e-12 && worst > sampled - 1e-3;
    }

    // Ringing after a shaped rectangular push, over that after the bare push, seen at the same moment: exactly V, by the state transition of a damped oscillator.
    [Property]
    public bool Ringing_of_a_simulated_mode_is_reduced_by_the_residual_ratio(AnyCase c)
    {
        ImpulseSequence s = Make(c);
        double push = 0.37 / c.ModeHertz;
        double end = s.Duration.Seconds + push;
        double bare = 0, shaped = 0;
        var oscillator = new Oscillator(c.ModeHertz, c.ModeZeta);
        bare = oscillator.EnvelopeAt(end, [(0, 1), (push, -1)]);
        (double, double)[] steps = new (double, double)[2 * s.Count];
        for (int i = 0; i < s.Count; i++)
        {
            steps[2 * i] = (s.Times[i], s.Amplitudes[i]);
            steps[(2 * i) + 1] = (s.Times[i] + push, -s.Amplitudes[i]);
        }

        shaped = oscillator.EnvelopeAt(end, steps);

        // Both envelopes decay by the same factor from where they stand; V refers the bare one to the end of the sequence after its own push.
        double v = s.ResidualVibration(Frequency.FromHertz(c.ModeHertz), c.ModeZeta);
        double decay = Math.Exp(-c.ModeZeta * 2 * Math.PI * c.ModeHertz * s.Duration.Seconds);
        return Math.Abs(shaped - (v * bare / decay)) < 1e-10 * (1 + (bare / decay));
    }

    private static ImpulseSequence Make(AnyCase c) => ImpulseSequenceReferenceTests.Make(c.Family, Frequency.FromHertz(c.Hertz), c.Zeta);

    private static ImpulseSequence MakeOther(AnyCase c) => ImpulseSequenceReferenceTests.Make(c.OtherFamily, Frequency.FromHertz(c.OtherHertz), c.Zeta);

    private static bool Close(double expected, double actual) => Math.Abs(actual - expected) <= 1e-12 * Math.Abs(expected);
}
