using MathNet.Numerics.Distributions;
using PrinterMath.Tramming.Tests.Simulation;
using Xunit.Abstractions;

namespace PrinterMath.Tramming.Tests;

/// <summary>
/// How often a drift of one corner could be named at all: the most powerful test of one simple hypothesis against another, Φ(distance − 1.645) at a risk of 5 % (Neyman, Pearson 1933, Phil. Trans. R. Soc. A 231, 289, from memory),
/// once against health and once against a step at that corner; the smaller of the two, mean over beds. A diagnosis that has to find corner, direction, size and pass by itself stays below it.
/// </summary>
public class TrammingSequenceBoundTests(ITestOutputHelper output)
{
    // Drift of five times the repeatability between the first reading of the first pass and the first of the last. Computed: 94, 90, 67, 99, 99 and 100 %; the bands hold the scatter of turns over 60 beds.
    [Theory]
    [InlineData(3, 3, false, .9, .95)]
    [InlineData(4, 3, false, .86, .945)]
    [InlineData(3, 5, true, .6, .75)]
    [InlineData(3, 5, false, .95, 1)]
    [InlineData(4, 5, false, .9, 1)]
    [InlineData(3, 7, false, .98, 1)]
    public void ThreePassesHoldTooLittleOfASlowDrift(int screws, int passes, bool hunts, double lowest, double highest)
    {
        const double Risk = 1.6448536269514722;
        const int Beds = 60;
        var story = new BedStory(screws, passes, hunts, BedFault.CornerDrift, 5 * BedStory.Repeatability);
        double named = 0, seen = 0;
        for (int seed = 1; seed <= Beds; seed++)
        {
            var bed = new ScrewedBed(seed, story);
            var information = new DriftInformation(bed, story, bed.Run());
            double health = Normal.CDF(0, 1, information.FromHealth - Risk);
            seen += health / Beds;
            named += Math.Min(health, Normal.CDF(0, 1, information.FromStep - Risk)) / Beds;
        }

        output.WriteLine($"{story}: at best seen {100 * seen:0.0} %, named {100 * named:0.0} %");
        Assert.InRange(named, lowest, highest);
    }
}
