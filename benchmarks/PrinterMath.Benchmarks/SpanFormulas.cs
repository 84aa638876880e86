using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;
using PrinterMath.Tension;
using UnitsNet;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class SpanFormulas
{
    private readonly Length _length = Length.FromMillimeters(250);
    private readonly LinearDensity _density = LinearDensity.FromGramsPerMeter(8.4);
    private readonly FlexuralRigidity _rigidity = FlexuralRigidity.FromNewtonSquareMeters(2e-5);

    [Params(60, 150)]
    public double Hertz { get; set; }

    [Benchmark(Baseline = true)]
    public Force Ideal() => IdealString.Tension(Frequency.FromHertz(Hertz), _length, _density);

    [Benchmark]
    public Force Pinned() => PinnedSpan.Tension(Frequency.FromHertz(Hertz), _length, _density, _rigidity);

    [Benchmark]
    public Force Clamped() => ClampedSpan.Tension(Frequency.FromHertz(Hertz), _length, _density, _rigidity);
}
