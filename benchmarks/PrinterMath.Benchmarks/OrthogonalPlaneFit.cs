using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;
using PrinterMath.Tramming;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class OrthogonalPlaneFit
{
    private ProbePoint[] _points = [];

    [Params(5, 10)]
    public int Side { get; set; }

    [GlobalSetup]
    public void Prepare() => _points = Inputs.Points(Side);

    [Benchmark(Baseline = true)]
    public PlaneFit InZ() => PlaneFit.Fit(_points);

    [Benchmark]
    public OrthogonalPlane Orthogonal() => OrthogonalPlane.Fit(_points);
}
