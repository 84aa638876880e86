using System.Globalization;
using MathNet.Numerics.Distributions;
using PrinterMath.Tramming.Tests.Simulation;
using Xunit.Abstractions;

namespace PrinterMath.Tramming.Tests;

/// <summary>
/// Faults named when there, silence when not. The quick form, 100 beds with seeds 1 to 100, fails only if the 99.9 % binomial limit misses the rate; PRINTERMATH_COVERAGE_CASES sets another number of beds,
/// PRINTERMATH_COVERAGE_FIRST another first seed.
/// </summary>
public class TrammingSequenceDetectionTests(ITestOutputHelper output)
{
    private static int Cases => Number("PRINTERMATH_COVERAGE_CASES", 100);

    private static int First => Number("PRINTERMATH_COVERAGE_FIRST", 1);

    public static TheoryData<BedStory, SequenceCause> Faults() => new()
    {
        { new BedStory(4, 3, false, BedFault.Flex, .25), SequenceCause.Flex },
        { new BedStory(3, 4, true, BedFault.Flex, .05), SequenceCause.Flex },
        { new BedStory(4, 4, true, BedFault.Flex, .05), SequenceCause.Flex },
        { new BedStory(3, 3, true, BedFault.Flex, .05), SequenceCause.Flex },
        { new BedStory(4, 4, true, BedFault.None, 0) { Compliance = .3 }, SequenceCause.Flex }, // a plate that follows screws turned against each other
        { new BedStory(3, 4, false, BedFault.LooseCorner, .025), SequenceCause.Loose },
        { new BedStory(4, 5, false, BedFault.LooseCorner, .025), SequenceCause.Loose },
        { new BedStory(3, 5, true, BedFault.Backlash, .025), SequenceCause.Backlash },
        { new BedStory(3, 6, true, BedFault.Backlash, .05), SequenceCause.Backlash },
        { new BedStory(4, 6, true, BedFault.Backlash, .05), SequenceCause.Backlash },
        { new BedStory(4, 6, true, BedFault.Backlash, .025), SequenceCause.Backlash },
        { new BedStory(3, 3, false, BedFault.CommonDrift, .025), SequenceCause.Drift },
        { new BedStory(4, 3, false, BedFault.CommonDrift, .025), SequenceCause.Drift },
        { new BedStory(3, 5, false, BedFault.CommonDrift, .025), SequenceCause.Drift },
        { new BedStory(3, 5, false, BedFault.CommonDrift, .05), SequenceCause.Drift },
        { new BedStory(3, 7, false, BedFault.CornerDrift, .025), SequenceCause.Drift },
        { new BedStory(4, 7, false, BedFault.CornerDrift, .025), SequenceCause.Drift },
        { new BedStory(3, 5, false, BedFault.CornerDrift, .05), SequenceCause.Drift },
        { new BedStory(4, 5, false, BedFault.CornerDrift, .05), SequenceCause.Drift },
        { new BedStory(3, 5, true, BedFault.WrongLead, .2), SequenceCause.Lead },
        { new BedStory(4, 5, true, BedFault.WrongLead, .2), SequenceCause.Lead },
    };

    public static TheoryData<BedStory> Healthy() => new()
    {
        new BedStory(3, 3, false, BedFault.None, 0),
        new BedStory(3, 5, false, BedFault.None, 0),
        new BedStory(4, 4, false, BedFault.None, 0),
        new BedStory(3, 5, true, BedFault.None, 0),
        new BedStory(4, 6, true, BedFault.None, 0),
        new BedStory(3, 4, false, BedFault.None, 0) { IsStated = true, Side = 3 },
        new BedStory(3, 4, false, BedFault.None, 0) { Noise = NoiseKind.Laplace },
        new BedStory(4, 5, true, BedFault.None, 0) { Noise = NoiseKind.Laplace },
    };

    public static TheoryData<BedStory, SequenceCause, double> TooFewPasses() => new()
    {
        { new BedStory(3, 5, false, BedFault.CornerDrift, .025), SequenceCause.Drift, .93 },
        { new BedStory(3, 4, false, BedFault.CornerDrift, .025), SequenceCause.Drift, .85 },
        { new BedStory(4, 5, false, BedFault.CornerDrift, .025), SequenceCause.Drift, .82 },
        { new BedStory(3, 3, false, BedFault.CornerDrift, .025), SequenceCause.Drift, .62 },
        { new BedStory(4, 3, false, BedFault.CornerDrift, .025), SequenceCause.Drift, .47 },
        { new BedStory(3, 3, false, BedFault.LooseCorner, .025), SequenceCause.Loose, .78 },
        { new BedStory(4, 3, false, BedFault.LooseCorner, .025), SequenceCause.Loose, .58 },
        { new BedStory(4, 4, false, BedFault.LooseCorner, .025), SequenceCause.Loose, .89 },
        { new BedStory(3, 3, true, BedFault.Backlash, .025), SequenceCause.Backlash, .64 },
        { new BedStory(3, 4, true, BedFault.Backlash, .025), SequenceCause.Backlash, .90 },
        { new BedStory(4, 4, true, BedFault.Backlash, .025), SequenceCause.Backlash, .84 },
        { new BedStory(3, 3, true, BedFault.CommonDrift, .025), SequenceCause.Drift, .80 },
    };

    // Faults of five times the repeatability of a reading, in passes too few to name them in 95 %. Of 1000 beds: corner drift 94, 88, 85, 65, 50 %; loose corner in the last of three passes 80 and 62 %, before the third or fourth 91 %
    // (else called drift: a step after the second of three readings of a height is nearly a slope); play 67, 92, 86 %; common drift while every screw is turned far 83 %. What a test could reach at best, which knows place, direction
    // and size: TrammingSequenceBoundTests.
    [Theory]
    [MemberData(nameof(TooFewPasses))]
    public void FewPassesNameAFaultLessOften(BedStory story, SequenceCause cause, double least) => Check(story, cause, least);

    [Theory]
    [MemberData(nameof(Faults))]
    public void AFaultIsNamedFirst(BedStory story, SequenceCause cause) => Check(story, cause, .95);

    [Theory]
    [MemberData(nameof(Healthy))]
    public void AHealthyBedIsLeftInPeace(BedStory story)
    {
        int accused = 0;
        Dictionary<SequenceCause, int> of = [];
        for (int seed = First; seed < First + Cases; seed++)
        {
            var bed = new ScrewedBed(seed, story);
            IReadOnlyList<SequenceDiagnosis> found = TrammingSequence.Of(bed.Supports, bed.Run(), ScrewedBed.Options(story)).Diagnoses;
            accused += found.Count > 0 ? 1 : 0;
            if (found.Count > 0)
            {
                of[found[0].Cause] = of.GetValueOrDefault(found[0].Cause) + 1;
            }
        }

        output.WriteLine($"{story}, {story.Noise} noise: accused {accused} of {Cases}, upper 95 % limit {100 * Beta.InvCDF(accused + 1, Math.Max(1e-9, Cases - accused), .95):0.0} %: {string.Join(", ", of)}");
        double lower = accused == 0 ? 0 : Beta.InvCDF(accused, Cases - accused + 1, .0005);
        Assert.True(lower < .05, $"{accused} of {Cases} accused");
    }

    private void Check(BedStory story, SequenceCause cause, double least)
    {
        int named = 0, decided = 0, silent = 0;
        Dictionary<SequenceCause, int> instead = [];
        for (int seed = First; seed < First + Cases; seed++)
        {
            var bed = new ScrewedBed(seed, story);
            IReadOnlyList<SequenceDiagnosis> found = TrammingSequence.Of(bed.Supports, bed.Run(), ScrewedBed.Options(story)).Diagnoses;
            silent += found.Count == 0 ? 1 : 0;
            named += found.Count > 0 && found[0].Cause == cause ? 1 : 0;
            decided += found.Count > 0 && found[0].Cause == cause && found[0].IsDecided ? 1 : 0;
            if (found.Count > 0 && found[0].Cause != cause)
            {
                instead[found[0].Cause] = instead.GetValueOrDefault(found[0].Cause) + 1;
            }
        }

        output.WriteLine($"{story}: named {named} of {Cases}, decided {decided}, silent {silent}, instead {string.Join(", ", instead)}");
        double upper = named == Cases ? 1 : Beta.InvCDF(named + 1, Cases - named, .9995);
        Assert.True(upper >= least, $"{named} of {Cases} named");
    }

    internal static int Number(string name, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : otherwise;
}
