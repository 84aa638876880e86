using BenchmarkDotNet.Attributes;
using PrinterMath.Measurement;
using PrinterMath.Tramming;
using UnitsNet;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class TrammingPlans
{
    private ProbePoint[] _points = [];
    private PlaneFit? _plane;
    private BedSupports? _supports;

    [Params(5, 10)]
    public int Side { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        _points = Inputs.Points(Side);
        _plane = PlaneFit.Fit(_points);
        _supports = FourScrews();
    }

    [Benchmark(Baseline = true)]
    public PlaneFit Plane() => PlaneFit.Fit(_points);

    [Benchmark]
    public TrammingPlan Plan() => _supports!.Plan(_plane!);

    internal static BedSupports FourScrews() => BedSupports.Of(Screw("a", 0, 0), Screw("b", 300, 0), Screw("c", 300, 300), Screw("d", 0, 300));

    private static AdjustingScrew Screw(string name, double x, double y) => AdjustingScrew.At(
        name, Length.FromMillimeters(x), Length.FromMillimeters(y), ScrewThread.IsoCoarse("M3"), BedMotion.Raises);
}
