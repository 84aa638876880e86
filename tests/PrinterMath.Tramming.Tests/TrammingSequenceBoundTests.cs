using MathNet.Numerics.Distributions;
using PrinterMath.Tramming.Tests.Simulation;
using Xunit.Abstractions;

namespace PrinterMath.Tramming.Tests;

/// <summary>
/// How often a fault could be named at all: the most powerful test of one simple hypothesis against another, Φ(distance − 1.645) at a risk of 5 % (Neyman, Pearson 1933, Phil. Trans. R. Soc. A 231, 289, from memory), once against
/// health and once against the likest of another cause at the same place, as large or larger; the smaller of the two, mean over beds. A diagnosis that has to find place, direction, size and pass by itself stays below it.
/// </summary>
public class TrammingSequenceBoundTests(ITestOutputHelper output)
{
    // Faults of five times the repeatability. Computed: drift of a corner 94, 90, 67, 99, 99, 100 %; loose corner 83, 64, 98 %; play 85, 95, 99 %; the bands hold the scatter of turns over 60 beds.
    public static TheoryData<BedStory, double, double> Stories() => new()
    {
        { Of(3, 3, false, BedFault.CornerDrift), .9, .95 },
        { Of(4, 3, false, BedFault.CornerDrift), .86, .945 },
        { Of(3, 5, true, BedFault.CornerDrift), .6, .75 },
        { Of(3, 5, false, BedFault.CornerDrift), .95, 1 },
        { Of(4, 5, false, BedFault.CornerDrift), .9, 1 },
        { Of(3, 7, false, BedFault.CornerDrift), .98, 1 },
        { Of(3, 3, false, BedFault.LooseCorner), .78, .88 },
        { Of(4, 3, false, BedFault.LooseCorner), .58, .70 },
        { Of(4, 4, false, BedFault.LooseCorner), .95, 1 },
        { Of(3, 3, true, BedFault.Backlash), .78, .90 },
        { Of(3, 4, true, BedFault.Backlash), .92, .98 },
        { Of(3, 5, true, BedFault.Backlash), .97, 1 },
    };

    [Theory]
    [MemberData(nameof(Stories))]
    public void FewPassesHoldTooLittleOfAFault(BedStory story, double lowest, double highest)
    {
        const double Risk = 1.6448536269514722;
        const int Beds = 60;
        double named = 0, seen = 0;
        for (int seed = 1; seed <= Beds; seed++)
        {
            var bed = new ScrewedBed(seed, story);
            var information = new FaultInformation(bed, story, bed.Run());
            double health = Normal.CDF(0, 1, information.FromHealth - Risk);
            seen += health / Beds;
            named += Math.Min(health, Normal.CDF(0, 1, information.FromRivals - Risk)) / Beds;
        }

        output.WriteLine($"{story}: at best seen {100 * seen:0.0} %, named {100 * named:0.0} %");
        Assert.InRange(named, lowest, highest);
    }

    private static BedStory Of(int screws, int passes, bool hunts, BedFault fault) => new(screws, passes, hunts, fault, 5 * BedStory.Repeatability);
}
