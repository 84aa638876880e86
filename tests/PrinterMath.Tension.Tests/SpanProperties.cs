using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>A span anywhere in the range that machines use.</summary>
public sealed record AnySpan(double Tension, double Length, double Density, double Rigidity, int Harmonic);

public static class SpanArbitrary
{
    public static Arbitrary<AnySpan> Spans() => Arb.From(
        from tension in Gen.Choose(10, 20_000)
        from length in Gen.Choose(50, 2000)
        from density in Gen.Choose(10, 600)
        from rigidity in Gen.Choose(0, 1000)
        from harmonic in Gen.Choose(1, 6)
        select new AnySpan(tension / 100.0, length / 1000.0, density / 10_000.0, rigidity * 1e-7, harmonic));
}

[Properties(Arbitrary = [typeof(SpanArbitrary)], MaxTest = 500)]
public sealed class SpanProperties
{
    private const double Rounding = 1e-11;

    // The inverse subtracts what bending adds: rounding grows with the ratio of bending to tension.
    [Property]
    public bool Tension_gives_back_its_frequency(AnySpan s)
    {
        Length length = Length.FromMeters(s.Length);
        LinearDensity density = LinearDensity.FromKilogramsPerMeter(s.Density);
        FlexuralRigidity rigidity = FlexuralRigidity.FromNewtonSquareMeters(s.Rigidity);
        double pinned = PinnedSpan.Tension(Frequency.FromHertz(Pinned(s)), length, density, rigidity, s.Harmonic).Newtons;
        double clamped = ClampedSpan.Tension(Frequency.FromHertz(ClampedHertz(s)), length, density, rigidity, s.Harmonic).Newtons;
        double bending = s.Rigidity * Math.Pow((s.Harmonic + 1) * Math.PI / s.Length, 2);
        double allowed = Rounding * (s.Tension + bending);
        return Math.Abs(pinned - s.Tension) < allowed && Math.Abs(clamped - s.Tension) < allowed;
    }

    // f(sL, T/s²) = f(L, T)/s² with rigidity; f(2L, 4T) = f(L, T) without.
    [Property]
    public bool Scaling_laws(AnySpan s) =>
        Close(ClampedHertz(s) / 4, ClampedHertz(s with { Length = 2 * s.Length, Tension = s.Tension / 4 }))
        && Close(Pinned(s) / 4, Pinned(s with { Length = 2 * s.Length, Tension = s.Tension / 4 }))
        && Close(
            ClampedHertz(s with { Rigidity = 0 }),
            ClampedHertz(s with { Rigidity = 0, Length = 2 * s.Length, Tension = 4 * s.Tension }));

    [Property]
    public bool Clamped_sounds_higher_than_pinned_and_pinned_higher_than_the_string(AnySpan s)
    {
        double ideal = IdealString.Frequency(
            Force.FromNewtons(s.Tension), Length.FromMeters(s.Length), LinearDensity.FromKilogramsPerMeter(s.Density), s.Harmonic).Hertz;
        return s.Rigidity == 0
            ? Close(ideal, Pinned(s)) && Close(ideal, ClampedHertz(s))
            : ideal < Pinned(s) && Pinned(s) < ClampedHertz(s);
    }

    [Property]
    public bool More_tension_sounds_higher(AnySpan s) =>
        ClampedHertz(s) < ClampedHertz(s with { Tension = s.Tension * 1.01 }) && Pinned(s) < Pinned(s with { Tension = s.Tension * 1.01 });

    [Property]
    public bool Characteristic_equation_holds(AnySpan s)
    {
        if (s.Rigidity == 0)
        {
            return true;
        }

        // 2pq(1 − cos p cosh q) + (q² − p²) sin p sinh q = 0, divided by pq·cosh q.
        double product = 2 * Math.PI * ClampedHertz(s) * s.Length * s.Length * Math.Sqrt(s.Density / s.Rigidity);
        double difference = s.Tension * s.Length * s.Length / s.Rigidity;
        double p = Math.Sqrt(2 * product * product / (difference + Math.Sqrt((difference * difference) + (4 * product * product))));
        double q = product / p;
        double left = (2 * ((1 / Math.Cosh(q)) - Math.Cos(p))) + (((q / p) - (p / q)) * Math.Sin(p) * Math.Tanh(q));
        return Math.Abs(left) < 1e-9 * (1 + (q / p));
    }

    private static double Pinned(AnySpan s) => PinnedSpan.Frequency(
        Force.FromNewtons(s.Tension), Length.FromMeters(s.Length), LinearDensity.FromKilogramsPerMeter(s.Density),
        FlexuralRigidity.FromNewtonSquareMeters(s.Rigidity), s.Harmonic).Hertz;

    private static double ClampedHertz(AnySpan s) => ClampedSpan.Frequency(
        Force.FromNewtons(s.Tension), Length.FromMeters(s.Length), LinearDensity.FromKilogramsPerMeter(s.Density),
        FlexuralRigidity.FromNewtonSquareMeters(s.Rigidity), s.Harmonic).Hertz;

    private static bool Close(double expected, double actual) => Math.Abs(actual - expected) <= Rounding * Math.Abs(expected);
}
