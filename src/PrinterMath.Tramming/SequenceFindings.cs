using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>The findings of a sequence of passes, in one place so that codes stay unique.</summary>
internal static class SequenceFindings
{
    internal static Finding UncertaintyUnknown(int readings) => new(
        "sequence.uncertainty.unknown",
        FindingSeverity.Blocking,
        Text($"The {readings} readings leave no scatter beside planes and shape; state the probe's repeatability or probe more points."),
        new FindingNumber("readings", readings, "1"));

    internal static Finding Unmoved(string screw, Measured<Length> lead) => new(
        "sequence.response.none",
        FindingSeverity.Blocking,
        Text($"A turn of '{screw}' moves the bed by {lead}, which cannot be told from nothing: no turn of it can be planned. Is it screwed in, and does the bed rest on it?"),
        new FindingNumber("lead", lead.SiValue, "m"),
        new FindingNumber("standardUncertainty", lead.SiStandardUncertainty, "m"));

    internal static Finding One() => new(
        "sequence.one", FindingSeverity.Note, "One pass says nothing about convergence or about what a turn does; the next turns come from the stated leads.");

    internal static Finding NotTurned() => new(
        "sequence.turns.none", FindingSeverity.Caution, "No screw was turned between the passes: nothing is learned about what a turn does.");

    internal static Finding NoTimes(bool some) => new(
        "sequence.times.none",
        FindingSeverity.Note,
        some ? "Some passes carry times and some do not, or all times are one: drift is not looked for." : "The readings carry no times: drift is not looked for.");

    internal static Finding PlacesDiffer() => new(
        "sequence.places.differ",
        FindingSeverity.Note,
        "Not every place was read in two passes: what the bed's shape holds beyond twist and bow counts as noise. Probe the same places in every pass.");

    internal static Finding Misfit(double ratio) => new(
        "sequence.misfit",
        FindingSeverity.Caution,
        Text($"The readings scatter {ratio:0.##} times as much from pass to pass as their stated uncertainties explain; every uncertainty was widened."),
        new FindingNumber("scatterRatio", ratio, "1"));

    internal static Finding WithinNoise() => new(
        "sequence.noise",
        FindingSeverity.Note,
        "What tilt is left cannot be told from none: the probe's noise is the limit, and further turns chase it. Average more readings at each point, or stop.");

    internal static Finding Of(SequenceCause cause, string subject, int pass, Measured<Length> effect, double probability, SequenceCause[] rivals, SequenceReadings readings)
    {
        string undecided = rivals.Length == 0 ? string.Empty : $" Undecided: {string.Join(" or ", rivals.Select(Word))} explains the same readings.";
        List<FindingNumber> numbers =
        [
            new("effect", effect.SiValue, "m"),
            new("standardUncertainty", effect.SiStandardUncertainty, "m"),
            new("probability", probability, "1"),
        ];
        if (pass >= 0)
        {
            numbers.Add(new FindingNumber("pass", pass, "1"));
        }

        if (cause == SequenceCause.Drift)
        {
            numbers.Add(new FindingNumber("rate", effect.SiValue / readings.Span, "m/s"));
            numbers.Add(new FindingNumber("duration", readings.Span, "s"));
        }

        string says = cause switch
        {
            SequenceCause.Lead => Text($"A turn at {subject} moves the bed by {effect} more than its stated lead: check thread, sense and whether the screw turns at all; the next turns use what was learned."),
            SequenceCause.Backlash => Text($"At {subject}, {effect} of motion is lost when the sense is reversed: the next turns take it up; compress the springs more or secure the nut."),
            SequenceCause.Flex => Text($"The shape of the {subject} changes from pass to pass, twist or bow by up to {effect}: turn less at opposite corners against each other, slacken what clamps the plate, support it at three points."),
            SequenceCause.Loose => Text($"Before pass {pass + 1}, {subject} moved by {effect} that no turn explains: look for a loose nut, spring, carriage or plate there."),
            _ => Text($"Over the {readings.Span:0} s the heights drift by {effect} ({subject}): wait until bed and frame keep their temperature, then start anew."),
        };
        return new Finding($"sequence.{Word(cause)}", FindingSeverity.Caution, says + undecided, [.. numbers]);
    }

    private static string Word(SequenceCause cause) => cause switch
    {
        SequenceCause.Lead => "lead",
        SequenceCause.Backlash => "backlash",
        SequenceCause.Flex => "flex",
        SequenceCause.Loose => "loose",
        _ => "drift",
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
