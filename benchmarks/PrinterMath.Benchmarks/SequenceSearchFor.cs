using BenchmarkDotNet.Attributes;
using PrinterMath.Resonance;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class SequenceSearchFor
{
    private Mode[] _modes = [];

    [Params(81, 150)]
    public int Frequencies { get; set; }

    [GlobalSetup]
    public void Prepare() => _modes = Inputs.Modes();

    [Benchmark(Baseline = true)]
    public SequenceChoice OneMode() => SequenceSearch.For(_modes, new SequenceLimits { Frequencies = Frequencies });
}
