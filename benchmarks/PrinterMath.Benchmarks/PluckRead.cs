using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;
using PrinterMath.Tension;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class PluckRead
{
    private SampledSignal? _signal;

    [Params(1, 3)]
    public int Seconds { get; set; }

    [GlobalSetup]
    public void Prepare() => _signal = Inputs.Signal(Inputs.Pluck((int)(Seconds * Inputs.AudioRate)), Inputs.AudioRate);

    [Benchmark(Baseline = true)]
    public PluckReading Read() => Pluck.Read(_signal!);
}
