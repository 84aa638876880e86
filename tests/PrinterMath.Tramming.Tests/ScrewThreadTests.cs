using PrinterMath.Measurement;
using UnitsNet;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class ScrewThreadTests
{
    // A right-hand part turned clockwise moves away from the hand; a nut that the frame holds pulls its stud towards the hand.
    [Theory]
    [InlineData(Handedness.Right, HandPosition.BelowBed, TurnedPart.StaysWithFrame, BedMotion.Lowers)]
    [InlineData(Handedness.Right, HandPosition.AboveBed, TurnedPart.TravelsWithBed, BedMotion.Lowers)]
    [InlineData(Handedness.Right, HandPosition.BelowBed, TurnedPart.TravelsWithBed, BedMotion.Raises)]
    [InlineData(Handedness.Right, HandPosition.AboveBed, TurnedPart.StaysWithFrame, BedMotion.Raises)]
    [InlineData(Handedness.Left, HandPosition.BelowBed, TurnedPart.StaysWithFrame, BedMotion.Raises)]
    [InlineData(Handedness.Left, HandPosition.AboveBed, TurnedPart.TravelsWithBed, BedMotion.Raises)]
    [InlineData(Handedness.Left, HandPosition.BelowBed, TurnedPart.TravelsWithBed, BedMotion.Lowers)]
    [InlineData(Handedness.Left, HandPosition.AboveBed, TurnedPart.StaysWithFrame, BedMotion.Lowers)]
    public void ClockwiseFollowsFromHowTheScrewIsBuiltIn(Handedness hand, HandPosition from, TurnedPart turned, BedMotion expected) =>
        Assert.Equal(expected, ScrewThread.IsoCoarse("M4", hand).Clockwise(from, turned));

    [Fact]
    public void CallersMistakesAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ScrewThread.FromLead(Length.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => ScrewThread.FromLead(Measured.Of(Mm(-1), Mm(.1))));
        Assert.Throws<ArgumentException>(() => ScrewThread.FromLead(default(Measured<Length>)));
        Assert.Throws<ArgumentException>(() => ScrewThread.IsoCoarse("M3.7"));
        Assert.Throws<ArgumentException>(() => ScrewThread.IsoCoarse(" "));
        Assert.Throws<ArgumentException>(() => Screw(" ", 0, 0));
        Assert.ThrowsAny<ArgumentException>(() => Screw("a", double.PositiveInfinity, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => AdjustingScrew.At("a", Mm(0), Mm(0), ScrewThread.IsoCoarse("M3"), (BedMotion)7));
        Assert.Throws<ArgumentNullException>(() => AdjustingScrew.At("a", Mm(0), Mm(0), null!, BedMotion.Lowers));
    }
}
