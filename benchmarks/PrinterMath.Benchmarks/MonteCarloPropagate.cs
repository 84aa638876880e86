using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class MonteCarloPropagate
{
    private readonly BudgetInput[] _inputs = [BudgetInput.Of("a", Measured.Of(2.0, 0.1)), BudgetInput.Of("b", Measured.Of(3.0, 0.2))];

    [Params(100_000, 1_000_000)]
    public int Trials { get; set; }

    [Benchmark(Baseline = true)]
    public MonteCarloResult<double> Product() => MonteCarlo.Propagate<double>(x => x[0] * x[1], _inputs, new MonteCarloOptions { Seed = 1, Trials = Trials });
}
