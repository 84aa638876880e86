using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;
using PrinterMath.Tramming;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class MinimumZones
{
    private ProbePoint[] _points = [];

    [Params(5, 100)]
    public int Side { get; set; }

    [GlobalSetup]
    public void Prepare() => _points = Inputs.Points(Side);

    [Benchmark(Baseline = true)]
    public MinimumZone InZ() => MinimumZone.InZ(_points);

    [Benchmark]
    public MinimumZone Orthogonal() => MinimumZone.Orthogonal(_points);
}
