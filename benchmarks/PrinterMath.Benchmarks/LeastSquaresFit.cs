using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class LeastSquaresFit
{
    private double[] _design = [], _response = [];

    [Params(10, 100, 1000)]
    public int Readings { get; set; }

    [GlobalSetup]
    public void Prepare() => (_design, _response) = (Inputs.Places(3 * Readings, 7), Inputs.Places(Readings, 8));

    [Benchmark(Baseline = true)]
    public LinearFit ThreeColumns() => LinearLeastSquares.Fit(_design, 3, _response);
}
