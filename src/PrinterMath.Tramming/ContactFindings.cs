using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>The findings about contact, in one place so that codes stay unique.</summary>
internal static class ContactFindings
{
    internal static IEnumerable<Finding> Of(ContactSearch search, ContactGrid grid, ContactBracket bracket)
    {
        switch (search.State)
        {
            case ContactSearchState.StartTouches:
                yield return new Finding(
                    "contact.start.touching",
                    FindingSeverity.Blocking,
                    Text($"There is contact at {bracket.Touching * 1e3:0.#####} mm and no height was found clear: how far the nozzle already presses is not known. Raise it and begin higher."),
                    new FindingNumber("touching", bracket.Touching!.Value, "m"));
                break;
            case ContactSearchState.NoContact:
                yield return new Finding(
                    "contact.none",
                    FindingSeverity.Blocking,
                    Text($"No contact down to {grid.Lowest * 1e3:0.#####} mm, the lowest height allowed."),
                    new FindingNumber("lowest", grid.Lowest, "m"));
                break;
            case ContactSearchState.Contradictory:
                yield return Contradiction(bracket.Touching!.Value, bracket.Clear!.Value, grid.ReadingError);
                break;
            default:
                break;
        }

        if (Deepest(search.Trials) is (double clear, double touching) && clear - touching > grid.Overshoot * (1 + 1e-9))
        {
            yield return new Finding(
                "contact.overshoot",
                FindingSeverity.Caution,
                Text($"Between clear at {clear * 1e3:0.#####} mm and touching at {touching * 1e3:0.#####} mm the nozzle may have been driven {(clear - touching) * 1e3:0.####} mm below first contact, more than the {grid.Overshoot * 1e3:0.####} mm allowed: look at nozzle and surface."),
                new FindingNumber("largestOvershoot", clear - touching, "m"),
                new FindingNumber("allowedOvershoot", grid.Overshoot, "m"));
        }
    }

    internal static Finding NotYet() => new("contact.notYet", FindingSeverity.Blocking, "The search has not touched yet.");

    internal static Finding OneSided(bool touching, int count) => new(
        "contact.oneSided",
        FindingSeverity.Blocking,
        Text($"{(touching ? "No height was clear" : "No height touched")} in {count} trials beyond those that did both; the contact lies somewhere {(touching ? "above" : "below")} them."),
        new FindingNumber("trials", count, "1"));

    internal static Finding Reversed() => new(
        "contact.reversed",
        FindingSeverity.Blocking,
        "Contact became rarer towards the surface: the answers are the wrong way round, or heights do not count upwards.");

    internal static Finding Unclear(double chance, int count) => new(
        "contact.transition.unclear",
        FindingSeverity.Blocking,
        Text($"The {count} trials could look like this in {chance * 100:0} of 100 cases if height made no difference; try more heights, farther apart, and repeat them."),
        new FindingNumber("chance", chance, "1"),
        new FindingNumber("trials", count, "1"));

    internal static Finding Separable(double clear, double touching) => new(
        "contact.separable",
        FindingSeverity.Note,
        Text($"The answers change sides once, between {touching * 1e3:0.#####} and {clear * 1e3:0.#####} mm: they say nothing of how sharp the contact is, and the middle of that interval is given."),
        new FindingNumber("clear", clear, "m"),
        new FindingNumber("touching", touching, "m"));

    internal static Finding Outlier(IReadOnlyList<int> indices, IReadOnlyList<ContactTrial> trials) => new(
        "contact.contradiction",
        FindingSeverity.Caution,
        $"These trials contradict the others more than their scatter allows, by index: {string.Join(", ", indices.Select(i => Text($"{i} ({trials[i]})")))}. Make them again: dirt, ooze, something loose, or backlash that was not taken out.",
        [.. indices.Select(i => new FindingNumber("index", i, "1"))]);

    internal static Finding Contradiction(double touching, double clear, double error) => new(
        "contact.contradiction",
        FindingSeverity.Blocking,
        Text($"Touching at {touching * 1e3:0.#####} mm contradicts clear at {clear * 1e3:0.#####} mm; an error of {error * 1e3:0.####} mm in each does not explain it. Look for backlash, ooze, something loose, or a change of temperature, and begin again."),
        new FindingNumber("touching", touching, "m"),
        new FindingNumber("clear", clear, "m"),
        new FindingNumber("readingError", error, "m"));

    /// <summary>The touching trial that lies farthest below the lowest height found clear before it and above it.</summary>
    private static (double Clear, double Touching)? Deepest(IReadOnlyList<ContactTrial> trials)
    {
        (double Clear, double Touching)? deepest = null;
        double clear = double.PositiveInfinity;
        foreach (ContactTrial trial in trials)
        {
            if (!trial.Touches)
            {
                clear = Math.Min(clear, trial.HeightMeters);
            }
            else if (double.IsFinite(clear) && clear - trial.HeightMeters > (deepest is (double c, double t) ? c - t : 0))
            {
                deepest = (clear, trial.HeightMeters);
            }
        }

        return deepest;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
