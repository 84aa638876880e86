using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;
using PrinterMath.SurfaceMesh;
using UnitsNet;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class SurfaceShape
{
    private ProbePoint[] _points = [];

    [Params(5, 10)]
    public int Side { get; set; }

    [GlobalSetup]
    public void Prepare() => _points = Inputs.Points(Side);

    [Benchmark(Baseline = true)]
    public ShapeDecomposition Decomposition() => ShapeDecomposition.Fit(_points);

    [Benchmark]
    public Flatness FlatnessCorrected() => Flatness.Of(_points, new FlatnessOptions { Seed = 1, Repeatability = Length.FromMicrometers(3) });
}
