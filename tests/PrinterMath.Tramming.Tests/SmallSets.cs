using FsCheck;
using FsCheck.Fluent;
using PrinterMath.Measurement;

namespace PrinterMath.Tramming.Tests;

/// <summary>Three to eight points: scattered, or on coarse grids where places repeat, lines and planes hold many points, and limits are touched by ties.</summary>
public static class SmallSets
{
    public static Arbitrary<IReadOnlyList<ProbePoint>> Sets() => Arb.From(
        from kind in Gen.Choose(0, 3)
        from count in Gen.Choose(3, 8)
        from numbers in Gen.Choose(0, 999_999).ArrayOf(24)
        select (IReadOnlyList<ProbePoint>)[.. Enumerable.Range(0, count).Select(i => Point(kind, numbers[3 * i], numbers[(3 * i) + 1], numbers[(3 * i) + 2]))]);

    private static ProbePoint Point(int kind, int x, int y, int z) => kind switch
    {
        0 => ProbePoint.FromMeters(x * 2e-7, y * 2e-7, z * 1e-10), // a bed of 200 mm, heights to 0.1 mm
        1 => ProbePoint.FromMeters(x % 3 * .05, y % 3 * .05, ((z % 7) - 3) * 1e-5),
        2 => ProbePoint.FromMeters(x % 4 * .05, y % 2 * .05, z % 2 * 1e-5),
        _ => ProbePoint.FromMeters(x % 3 * .01, y % 3 * .01, z % 3 * .01), // as high as wide
    };
}
