using PrinterMath.Measurement;
using static PrinterMath.Tramming.Tests.Bed;

namespace PrinterMath.Tramming.Tests;

public class ContactSearchTests
{
    private static ContactSearch Search => ContactSearch.Between(Mm(.2), Mm(-.2));

    [Fact]
    public void ComesDownInStepsThenHalves()
    {
        // contact at 0.113 mm; steps of the allowed 0.05 mm, then halves on a grid of 0.01 mm
        var heights = new List<double>();
        ContactSearch search = Search;
        while (search.TryGetNext(out ContactMove? move))
        {
            heights.Add(Math.Round(move.Height.Millimeters, 9));
            search = search.With(move.Height.Millimeters <= .113 ? ContactOutcome.Touching : ContactOutcome.Clear);
        }

        Assert.Equal([.2, .15, .1, .13, .12, .11], heights);
        Assert.Equal(ContactSearchState.Found, search.State);
        Assert.Equal(.115, search.Reading.SurfaceHeight.Millimeters(), 1e-12);
        Assert.Equal(.01 / Math.Sqrt(12), search.Reading.SurfaceHeight.UncertaintyMillimeters(), 1e-12); // GUM 4.3.7
        Assert.Throws<InvalidOperationException>(() => search.Next);
    }

    [Fact]
    public void FinerStepsTryTheClearHeightAnew()
    {
        var options = new ContactSearchOptions { AllowedOvershoot = Mm(.08), Refinement = ContactRefinement.FinerSteps };
        ContactSearch search = ContactSearch.Between(Mm(.2), Mm(-.2), options);
        var heights = new List<double>();
        while (search.TryGetNext(out ContactMove? move))
        {
            heights.Add(Math.Round(move.Height.Millimeters, 9));
            search = search.With(move.Height.Millimeters <= .075 ? ContactOutcome.Touching : ContactOutcome.Clear);
        }

        Assert.Equal([.2, .12, .04, .12, .1, .08, .06, .08, .07], heights);
    }

    [Fact]
    public void RetractsPastTheBacklashBeforeAnyHigherPlace()
    {
        ContactSearch search = Search;
        Assert.Equal(.2 + .1 + .05, search.Next.RetractTo!.Value.Millimeters, 1e-12); // backlash and a step above
        search = search.With(ContactOutcome.Clear);
        Assert.Null(search.Next.RetractTo);
        search = search.With(ContactOutcome.Touching);
        Assert.True(search.Next.RetractTo!.Value.Millimeters > search.Next.Height.Millimeters + .1);
    }

    [Fact]
    public void AGaugeIsSubtracted()
    {
        ContactSearch search = Search.With(ContactTrial.At(Mm(.2), ContactOutcome.Clear)).With(ContactTrial.At(Mm(.16), ContactOutcome.Touching));

        Assert.True(search.TryGetReading(out ContactReading? reading, Measured.Of(Mm(.1), Mm(.005))));
        Assert.Equal(.08, reading.SurfaceHeight.Millimeters(), 1e-12);
        Assert.Equal(Math.Sqrt((.04 * .04 / 12) + (.005 * .005)), reading.SurfaceHeight.UncertaintyMillimeters(), 1e-9);
        Assert.Contains(reading.Budget.Lines, line => line.Input.Name == "gauge thickness");
    }

    [Fact]
    public void TouchingAboveClearContradicts()
    {
        ContactSearch search = Search.With(ContactTrial.At(Mm(.1), ContactOutcome.Clear)).With(ContactTrial.At(Mm(.15), ContactOutcome.Touching));

        Assert.Equal(ContactSearchState.Contradictory, search.State);
        Assert.Equal("contact.contradiction", Assert.Single(search.Findings).Code);
        Assert.False(search.TryGetReading(out _));
        Assert.Equal("contact.contradiction", Assert.Throws<IndeterminateException>(() => search.Reading).Finding!.Code);
        Assert.False(search.TryGetNext(out _));
    }

    [Fact]
    public void WithinTheErrorOfAReadingItDoesNot()
    {
        var options = new ContactSearchOptions { LargestReadingError = Mm(.03) };
        ContactSearch search = ContactSearch.Between(Mm(.2), Mm(-.2), options)
            .With(ContactTrial.At(Mm(.1), ContactOutcome.Clear)).With(ContactTrial.At(Mm(.14), ContactOutcome.Touching));

        Assert.Equal(ContactSearchState.Found, search.State);
        Assert.Equal(.12, search.Reading.SurfaceHeight.Millimeters(), 1e-12); // from .14 - .03 to .10 + .03
        Assert.Equal(.02 / Math.Sqrt(12), search.Reading.SurfaceHeight.UncertaintyMillimeters(), 1e-12);
    }

    [Fact]
    public void GoingTooFarIsAFinding()
    {
        ContactSearch search = Search.With(ContactTrial.At(Mm(.2), ContactOutcome.Clear)).With(ContactTrial.At(Mm(0), ContactOutcome.Touching));

        Finding finding = Assert.Single(search.Findings);
        Assert.Equal("contact.overshoot", finding.Code);
        Assert.Equal(2e-4, finding.Numbers[0].Value, 1e-12);
        Assert.Equal(.15, search.Next.Height.Millimeters, 1e-12); // no halving of a bracket wider than the allowed overshoot
    }

    [Fact]
    public void AStartThatTouchesAndASurfaceOutOfReachSaySo()
    {
        ContactSearch touches = Search.With(ContactOutcome.Touching);
        Assert.Equal(ContactSearchState.StartTouches, touches.State);
        Assert.Equal("contact.start.touching", Assert.Single(touches.Findings).Code);

        ContactSearch none = Search;
        while (none.State == ContactSearchState.Running)
        {
            none = none.With(ContactOutcome.Clear);
        }

        Assert.Equal("contact.none", Assert.Single(none.Findings).Code);
        Assert.Equal("contact.none", Assert.Throws<IndeterminateException>(() => none.Reading).Finding!.Code);
        Assert.Equal("contact.notYet", Assert.Throws<IndeterminateException>(() => Search.Reading).Finding!.Code);
    }

    [Fact]
    public void AnEarlierSearchStaysAsItIs()
    {
        ContactSearch search = Search;
        _ = search.With(ContactOutcome.Clear);
        Assert.Empty(search.Trials);
    }

    [Fact]
    public void CallersMistakesAreRefused()
    {
        ArgumentOutOfRangeException metres = Assert.Throws<ArgumentOutOfRangeException>(
            () => ContactSearch.Between(Mm(1), Mm(0), new ContactSearchOptions { AllowedOvershoot = Mm(10) }));
        Assert.Contains("damages both", metres.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactSearch.Between(Mm(1), Mm(0), new ContactSearchOptions { FinestStep = Mm(10) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactSearch.Between(Mm(1), Mm(0), new ContactSearchOptions { FinestStep = Mm(0) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactSearch.Between(Mm(1), Mm(0), new ContactSearchOptions { AllowedOvershoot = Mm(.00005) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactSearch.Between(Mm(1), Mm(0), new ContactSearchOptions { Backlash = Mm(100) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactSearch.Between(Mm(1), Mm(0), new ContactSearchOptions { LargestReadingError = Mm(.05) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactSearch.Between(Mm(1), Mm(0), new ContactSearchOptions { Refinement = (ContactRefinement)7 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactSearch.Between(Mm(0), Mm(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactSearch.Between(Mm(1000), Mm(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactSearch.Between(Mm(90), Mm(0), new ContactSearchOptions { AllowedOvershoot = Mm(.002), FinestStep = Mm(.001) }));
        Assert.ThrowsAny<ArgumentException>(() => ContactSearch.Between(Mm(double.PositiveInfinity), Mm(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactTrial.At(Mm(1), (ContactOutcome)5));
    }
}
