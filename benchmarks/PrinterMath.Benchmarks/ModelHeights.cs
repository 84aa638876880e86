using BenchmarkDotNet.Attributes;
using PrinterMath.SurfaceMesh;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class ModelHeights
{
    private readonly double[] _xs = Inputs.Places(1_000_000, 3), _ys = Inputs.Places(1_000_000, 4), _zs = new double[1_000_000];
    private BilinearModel? _bilinear;
    private BicubicModel? _bicubic;

    [Params(5, 11, 31)]
    public int Side { get; set; }

    [GlobalSetup]
    public void Prepare() => (_bilinear, _bicubic) = (BilinearModel.Through(Inputs.Grid(Side)), BicubicModel.Through(Inputs.Grid(Side)));

    [Benchmark(Baseline = true)]
    public double[] Bilinear()
    {
        _bilinear!.Heights(_xs, _ys, _zs);
        return _zs;
    }

    [Benchmark]
    public double[] Bicubic()
    {
        _bicubic!.Heights(_xs, _ys, _zs);
        return _zs;
    }
}
