using FsCheck;
using FsCheck.Fluent;

namespace PrinterMath.Tramming.Tests;

public static class BedArbitraries
{
    public static Arbitrary<BedCase> Beds() => Arb.From(
        from offset in Gen.Choose(-5000, 5000)
        from slopeX in Gen.Choose(-1000, 1000)
        from slopeY in Gen.Choose(-1000, 1000)
        from step in Gen.Choose(20, 120)
        from countX in Gen.Choose(3, 6)
        from countY in Gen.Choose(2, 6)
        from scatter in Gen.Choose(-40, 40).ListOf(37)
        where scatter.Distinct().Count() > 5
        select new BedCase(offset * 1e-3, slopeX * 1e-5, slopeY * 1e-5, step, countX, countY, [.. scatter.Select(z => z * 1e-3)]));
}
