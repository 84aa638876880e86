using BenchmarkDotNet.Attributes;
using PrinterMath.Extrusion;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class FitSeriesRefit
{
    private readonly FitSeries _start = FitSeries.Between(0.90, 1.00);

    [Params(10, 50)]
    public int Trials { get; set; }

    [Benchmark(Baseline = true)]
    public FitEstimate Estimate() => Refit(_start, Trials).Estimate;

    internal static FitSeries Refit(FitSeries start, int trials) => start.With([.. Enumerable.Range(0, trials).Select(Trial)]);

    private static FitTrial Trial(int i)
    {
        double flow = 0.93 + (0.005 * (i % 9));
        return FitTrial.At(flow, flow + (i % 2 == 0 ? 0.004 : -0.004) < 0.951 ? FitOutcome.Fits : FitOutcome.DoesNotFit);
    }
}
