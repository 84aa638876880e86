using PrinterMath.Measurement;

namespace PrinterMath.Tramming.Tests;

/// <summary>A generated bed: plane, grid of points with scatter, and three screws, all in millimetres.</summary>
public sealed record BedCase(double Offset, double SlopeX, double SlopeY, double Step, int CountX, int CountY, IReadOnlyList<double> Scatter)
{
    internal double Height(double x, double y) => Offset + (SlopeX * x) + (SlopeY * y);

    internal List<ProbePoint> Exact() => Bed.Grid(Step, CountX, CountY, Height);

    internal List<ProbePoint> Scattered()
    {
        int k = 0;
        return Bed.Grid(Step, CountX, CountY, (x, y) => Height(x, y) + Scatter[k++ % Scatter.Count]);
    }

    internal static IReadOnlyList<ProbePoint> Map(IEnumerable<ProbePoint> points, Func<ProbePoint, (double X, double Y, double Z)> map) =>
        [.. points.Select(p =>
        {
            (double x, double y, double z) = map(p);
            return ProbePoint.FromMeters(x, y, z);
        })];

    public override string ToString() =>
        $"z = {Offset} + {SlopeX} x + {SlopeY} y, {CountX} x {CountY} at {Step} mm, scatter {string.Join(' ', Scatter)}";
}
