using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

public sealed class SpanAllocationTests
{
    private static readonly Length Quarter = Length.FromMeters(0.25);
    private static readonly LinearDensity Belt = LinearDensity.FromGramsPerMeter(8.4);
    private static readonly FlexuralRigidity Rigidity = FlexuralRigidity.FromNewtonSquareMeters(2e-5);

    [Fact]
    public void An_ideal_string_allocates_nothing() => Allocation.None(i =>
        IdealString.Tension(Frequency.FromHertz(60 + i), Quarter, Belt).Newtons + IdealString.Frequency(Force.FromNewtons(1 + i), Quarter, Belt).Hertz);

    [Fact]
    public void A_pinned_span_allocates_nothing() => Allocation.None(i =>
        PinnedSpan.Tension(Frequency.FromHertz(60 + i), Quarter, Belt, Rigidity).Newtons + PinnedSpan.Frequency(Force.FromNewtons(1 + i), Quarter, Belt, Rigidity).Hertz);

    [Fact]
    public void A_clamped_span_allocates_nothing() => Allocation.None(i =>
        ClampedSpan.Tension(Frequency.FromHertz(60 + i), Quarter, Belt, Rigidity).Newtons + ClampedSpan.Frequency(Force.FromNewtons(1 + i), Quarter, Belt, Rigidity).Hertz);
}
