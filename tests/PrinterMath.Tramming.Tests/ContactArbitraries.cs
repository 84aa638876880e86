using FsCheck;
using FsCheck.Fluent;
using UnitsNet;

namespace PrinterMath.Tramming.Tests;

/// <summary>A generated contact: where it is, the play of the axis, the error of a reading and how it is searched for, in micrometres.</summary>
public sealed record ContactCase(int Surface, int Play, int Overshoot, int Finest, int ReadingError, bool FinerSteps, int Seed)
{
    internal const int Start = 2000;
    internal const int Lowest = -500;

    internal ContactSearchOptions Options => new()
    {
        AllowedOvershoot = Length.FromMicrometers(Overshoot),
        FinestStep = Length.FromMicrometers(Finest),
        Backlash = Length.FromMicrometers(Play),
        LargestReadingError = Length.FromMicrometers(ReadingError),
        Refinement = FinerSteps ? ContactRefinement.FinerSteps : ContactRefinement.Bisect,
    };

    internal ContactSearch Search => ContactSearch.Between(Length.FromMicrometers(Start), Length.FromMicrometers(Lowest), Options);
}

public static class ContactArbitraries
{
    public static Arbitrary<ContactCase> Contacts() => Arb.From(
        from surface in Gen.Choose(-800, 2300)
        from play in Gen.Choose(0, 400)
        from overshoot in Gen.Choose(2, 200)
        from error in Gen.Choose(0, overshoot - 1)
        from noisy in Gen.Choose(0, 1)
        from finest in Gen.Choose(1, Math.Max(1, overshoot - (noisy * error)))
        from finer in Gen.Choose(0, 1)
        from seed in Gen.Choose(0, int.MaxValue)
        select new ContactCase(surface, play, overshoot, finest, noisy * error, finer == 1, seed));
}
