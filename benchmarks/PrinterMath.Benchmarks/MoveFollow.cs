using BenchmarkDotNet.Attributes;
using PrinterMath.SurfaceMesh;
using UnitsNet;

namespace PrinterMath.Benchmarks;

[MemoryDiagnoser]
public class MoveFollow
{
    private readonly SurfacePosition _from = SurfacePosition.FromMeters(0.01, 0.02), _to = SurfacePosition.FromMeters(0.28, 0.19);
    private BilinearModel? _bilinear;
    private BicubicModel? _bicubic;

    [Params(1, 5)]
    public int Micrometers { get; set; }

    [GlobalSetup]
    public void Prepare() => (_bilinear, _bicubic) = (BilinearModel.Through(Inputs.Grid(11)), BicubicModel.Through(Inputs.Grid(11)));

    [Benchmark(Baseline = true)]
    public FollowedMove Bilinear() => _bilinear!.Follow(_from, _to, Length.FromMicrometers(Micrometers));

    [Benchmark]
    public FollowedMove Bicubic() => _bicubic!.Follow(_from, _to, Length.FromMicrometers(Micrometers));
}
