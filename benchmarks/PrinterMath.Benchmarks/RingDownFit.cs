using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;
using PrinterMath.Resonance;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class RingDownFit
{
    private SampledSignal? _signal;

    [Params(800, 3200)]
    public int Samples { get; set; }

    [GlobalSetup]
    public void Prepare() => _signal = Inputs.Signal(Inputs.Vibration(Samples), Inputs.VibrationRate);

    [Benchmark(Baseline = true)]
    public ModeSet OneMode() => RingDown.Fit(_signal!, new RingDownOptions { MostModes = 1 });

    [Benchmark]
    public ModeSet SixModes() => RingDown.Fit(_signal!);
}
