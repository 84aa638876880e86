using PrinterMath.Measurement;
using PrinterMath.Tramming.Tests.Simulation;
using UnitsNet;
using Xunit.Abstractions;

namespace PrinterMath.Tramming.Tests;

/// <summary>
/// Coverage of 95 % intervals of what a sequence learns and predicts. True leads are drawn from the prior: an interval of a posterior holds the truth as often as it says over beds, not at each single lead. Bands: 93 to 97 %
/// for leads, couplings and heights, at least 93 % for the spread, which is never negative.
/// </summary>
public class TrammingSequenceCoverageTests(ITestOutputHelper output)
{
    private static int First => TrammingSequenceDetectionTests.Number("PRINTERMATH_COVERAGE_FIRST", 1);

    public static TheoryData<BedStory> Stories() => new()
    {
        new BedStory(3, 2, false, BedFault.None, 0),
        new BedStory(3, 4, true, BedFault.None, 0),
        new BedStory(4, 3, true, BedFault.None, 0) { IsStated = true },
        new BedStory(3, 3, true, BedFault.None, 0) { Side = 3, Noise = NoiseKind.Uniform },
        new BedStory(3, 3, false, BedFault.None, 0) { Noise = NoiseKind.Laplace },
        new BedStory(4, 3, false, BedFault.None, 0) { Compliance = 1 }, // a limp plate on four screws
        new BedStory(4, 4, true, BedFault.None, 0) { Compliance = .3 },
        new BedStory(3, 6, true, BedFault.Backlash, .05),
        new BedStory(4, 6, true, BedFault.Backlash, .05) { IsStated = true },
    };

    [Theory]
    [MemberData(nameof(Stories))]
    public void IntervalsHoldTheTruth(BedStory story)
    {
        var lead = new CoverageCheck("lead");
        var coupling = new CoverageCheck("coupling");
        var left = new CoverageCheck("height left");
        var spread = new CoverageCheck("spread left");
        double narrowing = 0;
        int refused = 0;
        for (int seed = First; seed < First + CoverageCheck.Cases; seed++)
        {
            var bed = new ScrewedBed(seed, story);
            TrammingSequence passes = TrammingSequence.Of(bed.Supports, bed.Run(), ScrewedBed.Options(story));
            ScrewResponse second = passes.Responses[1];
            lead.Add(second.EffectiveLead.Interval().Contains(Bed.Mm(bed.Leads[1])), second.EffectiveLead.SiStandardUncertainty);
            narrowing += second.EffectiveLead.SiStandardUncertainty / second.Prior.SiStandardUncertainty / CoverageCheck.Cases;
            Measured<Length> move = second.MoveAt("s2");
            coupling.Add(move.Interval().Contains(Bed.Mm(bed.Cross[2, 1])), move.SiStandardUncertainty);

            if (!passes.TryGetNextTurns(out _))
            {
                refused++;
                continue;
            }

            JointEstimate predicted = passes.PredictedHeights;
            Measured<Length> predictedSpread = passes.PredictedSpread;
            bed.Make(passes.NextTurns.Select(AppliedTurn.AsPlanned));
            double mean = bed.Places.Average(p => bed.Flat(p.X, p.Y));
            left.Add(predicted.Estimate<Length>(0).Interval().Contains(Bed.Mm(bed.Flat(bed.Places[0].X, bed.Places[0].Y) - mean)), Math.Sqrt(predicted.Covariance(0, 0)));
            spread.Add(predictedSpread.Interval().Contains(Bed.Mm(bed.Spread())), predictedSpread.SiStandardUncertainty);
        }

        output.WriteLine($"{story}: {lead.Report}; {coupling.Report}; {left.Report}; {spread.Report}; lead known to {narrowing:0.00} of the prior; {refused} without next turns");
        Assert.True(refused <= 1 + (.002 * CoverageCheck.Cases), $"{refused} without next turns"); // a healthy bed that is accused of a dead screw
        lead.Assert(.93, .97);
        coupling.Assert(.93, .97);
        left.Assert(.93, .97);
        spread.Assert(.93, 1);
    }

    // A round leaves what the probe's noise makes, when leads are as stated and turns are set exactly: mean spread of the plane's noise at 5 x 5 points, and 1.3 times that as the limit of its scatter over 100 beds.
    [Fact]
    public void WithGoodScrewsTwoPassesReachTheProbesNoise()
    {
        var story = new BedStory(3, 2, false, BedFault.None, 0) { Spread = (1e-9, 1e-9, 0), Dome = 0 };
        var good = new TrammingSequenceOptions { RelativeLeadUncertainty = 0, CrossCoupling = 0, TurnUncertainty = Angle.Zero };
        double spread = 0, expected = 0;
        for (int seed = 1; seed <= 100; seed++)
        {
            var bed = new ScrewedBed(seed, story);
            TrammingSequence passes = TrammingSequence.Of(bed.Supports, bed.Run(), good);
            expected += passes.PredictedSpread.SiValue * 1e3 / 100;
            bed.Make(passes.NextTurns.Select(AppliedTurn.AsPlanned));
            spread += bed.Spread() / 100;
        }

        // u(slope) over the bed: s/sqrt(sum of squares) = .005/sqrt(25·7200)·240 mm = .0028 mm; mean of |b| + |c|: 2·sqrt(2/pi)·.0028 = .0045 mm
        Assert.Equal(.0045, expected, .0003); // the repeatability is itself estimated
        Assert.InRange(spread, .0045 / 1.3, .0045 * 1.3);
    }
}
