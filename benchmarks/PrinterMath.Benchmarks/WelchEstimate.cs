using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;
using PrinterMath.Resonance;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class WelchEstimate
{
    private SampledSignal? _signal;

    [Params(10, 60)]
    public int Seconds { get; set; }

    [GlobalSetup]
    public void Prepare() => _signal = Inputs.Signal(Inputs.Vibration((int)(Seconds * Inputs.VibrationRate)), Inputs.VibrationRate);

    [Benchmark(Baseline = true)]
    public PowerSpectrum Segments2048() => Welch.Estimate(_signal!);

    [Benchmark]
    public PowerSpectrum Segments4096() => Welch.Estimate(_signal!, new WelchOptions { SegmentLength = 4096 });
}
