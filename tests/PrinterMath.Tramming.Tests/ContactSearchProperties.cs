using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Tramming.Tests.Simulation;
using UnitsNet;

namespace PrinterMath.Tramming.Tests;

[Properties(Arbitrary = [typeof(ContactArbitraries)], MaxTest = 2000)]
public class ContactSearchProperties
{
    private const double Rounding = 1e-6; // of a micrometre: heights are sums of some thousand steps

    [Property]
    public Property NeverFartherBelowFirstContactThanAllowed(ContactCase contact)
    {
        (ContactSearch search, SlackAxis axis) = Run(contact);
        double limit = contact.Surface - contact.Overshoot - Rounding;
        return (axis.Deepest >= Math.Min(limit, ContactCase.Start)).ToProperty().Label($"deepest {axis.Deepest}, {search}");
    }

    [Property]
    public Property NeverBelowTheLowestHeight(ContactCase contact) =>
        (Run(contact).Axis.Deepest >= ContactCase.Lowest - Rounding).ToProperty();

    [Property]
    public Property EndsWithinTheStatedNumberOfTrials(ContactCase contact)
    {
        ContactSearch search = Run(contact).Search;
        return (search.State != ContactSearchState.Running && search.Trials.Count <= search.MostTrials).ToProperty().Label($"{search.MostTrials}: {search}");
    }

    [Property]
    public Property TheBracketHoldsTheTruthAndIsAsNarrowAsAsked(ContactCase contact)
    {
        ContactSearch search = Run(contact).Search;
        bool found = search.TryGetReading(out ContactReading? reading);
        bool expected = search.State == ContactSearchState.Found;
        bool holds = reading is null
            || (reading.Touching.Micrometers <= contact.Surface + Rounding
                && reading.Clear.Micrometers >= contact.Surface - Rounding
                && reading.Clear.Micrometers - reading.Touching.Micrometers <= contact.Finest + (2 * contact.ReadingError) + (3 * Rounding));
        return (found == expected && holds && search.Findings.All(f => f.Code is "contact.none" or "contact.start.touching")).ToProperty().Label(search.ToString());
    }

    [Property]
    public Property OutcomesWithoutErrorEndAsTheyMust(ContactCase contact)
    {
        ContactSearchState expected = contact.Surface >= ContactCase.Start ? ContactSearchState.StartTouches
            : contact.Surface < ContactCase.Lowest ? ContactSearchState.NoContact
            : ContactSearchState.Found;
        return (Run(contact with { ReadingError = 0 }).Search.State == expected).ToProperty();
    }

    [Property]
    public Property EveryHeightIsReachedFromAbove(ContactCase contact)
    {
        // a nozzle that did not take out its play stands below the height it is told
        ContactSearch search = contact.Search;
        var axis = new SlackAxis(ContactCase.Start + 3000, contact.Play);
        var random = new Random(contact.Seed);
        bool reached = true;
        while (search.TryGetNext(out ContactMove? move))
        {
            Drive(axis, move);
            reached &= Math.Abs(axis.Nozzle - move.Height.Micrometers) < Rounding;
            search = search.With(Answer(contact, axis, random));
        }

        return reached.ToProperty();
    }

    private static (ContactSearch Search, SlackAxis Axis) Run(ContactCase contact)
    {
        ContactSearch search = contact.Search;
        var axis = new SlackAxis(ContactCase.Start + 3000, contact.Play);
        var random = new Random(contact.Seed);
        for (int i = 0; i < 20_000 && search.TryGetNext(out ContactMove? move); i++)
        {
            Drive(axis, move);
            search = search.With(Answer(contact, axis, random));
        }

        return (search, axis);
    }

    private static void Drive(SlackAxis axis, ContactMove move)
    {
        if (move.RetractTo is Length above)
        {
            axis.MoveTo(above.Micrometers);
        }

        axis.MoveTo(move.Height.Micrometers);
    }

    private static ContactOutcome Answer(ContactCase contact, SlackAxis axis, Random random)
    {
        double error = contact.ReadingError * ((2 * random.NextDouble()) - 1) * .9999;
        return axis.Nozzle + error <= contact.Surface + (Rounding / 10) ? ContactOutcome.Touching : ContactOutcome.Clear;
    }
}
