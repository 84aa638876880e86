using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>Findings of a pluck in words and numbers.</summary>
internal static class PluckSentences
{
    internal static Finding None() =>
        new(PluckFindings.None, FindingSeverity.Blocking, "No pluck found: the recording is silent, constant, or nowhere rises out of its background.");

    internal static Finding TooShort(double seconds, double least) =>
        Make(PluckFindings.TooShort, FindingSeverity.Blocking, $"The pluck can be heard for {seconds:F3} s, which is too short for a frequency.", new FindingNumber("duration", seconds, "s"), new FindingNumber("least", least, "s"));

    internal static Finding Steady(double seconds) =>
        Make(PluckFindings.Steady, FindingSeverity.Blocking, $"The sound keeps its strength for {seconds:F2} s: a hum or a tone, not a pluck.", new FindingNumber("duration", seconds, "s"));

    internal static Finding NoPitch(int peaks, double odds, double share) =>
        Make(PluckFindings.NoPitch, FindingSeverity.Blocking, $"No pitch: {peaks} peaks, and no one set of partials explains them clearly better than any other.", new FindingNumber("peaks", peaks, "1"), new FindingNumber("logOdds", odds, "1"), new FindingNumber("powerShare", share, "1"));

    internal static Finding OctaveUndecided(double first, double second, double lead) =>
        Make(PluckFindings.OctaveUndecided, FindingSeverity.Blocking, $"Either {first:F2} Hz or {second:F2} Hz may be the fundamental; narrow the range or pluck again elsewhere on the span.", new FindingNumber("first", first, "Hz"), new FindingNumber("second", second, "Hz"), new FindingNumber("lead", lead, "1"));

    internal static Finding Disagree(int plucks, double low, double high) =>
        Make(PluckFindings.Disagree, FindingSeverity.Blocking, $"{plucks} plucks lie between {low:F2} Hz and {high:F2} Hz and no majority agrees.", new FindingNumber("plucks", plucks, "1"), new FindingNumber("lowest", low, "Hz"), new FindingNumber("highest", high, "Hz"));

    internal static Finding RateTooLow(double rate, double lowest) =>
        Make(PluckFindings.RateTooLow, FindingSeverity.Blocking, $"A sample rate of {rate:F0} Hz cannot carry a fundamental of {lowest:F0} Hz.", new FindingNumber("sampleRate", rate, "Hz"), new FindingNumber("lowest", lowest, "Hz"));

    internal static Finding RangeReduced(double highest) =>
        Make(PluckFindings.RangeReduced, FindingSeverity.Note, $"The sample rate lets fundamentals be heard up to {highest:F0} Hz only.", new FindingNumber("highest", highest, "Hz"));

    internal static Finding Clipped(int samples, double share, double until, bool beyondAttack) =>
        Make(PluckFindings.Clipped, FindingSeverity.Caution, beyondAttack ? (FormattableString)$"{samples} samples stand at the recorder's limit, {100 * share:F0} % of the pluck: lower the gain. Levels and decay are not to be trusted." : $"{samples} samples stand at the recorder's limit, in the attack alone: lower the gain. Levels are not to be trusted.", new FindingNumber("samples", samples, "1"), new FindingNumber("share", share, "1"), new FindingNumber("until", until, "s"));

    internal static Finding Interleaved(double rate) =>
        Make(PluckFindings.Interleaved, FindingSeverity.Blocking, $"This looks like two channels interleaved; pass one channel, every other sample, with its own sample rate.", new FindingNumber("sampleRate", rate, "Hz"));

    internal static Finding Beats(double rate, double decibels) =>
        Make(PluckFindings.Beats, FindingSeverity.Caution, $"A second string {rate:F1} Hz away rings at {decibels:F0} dB: damp the neighbouring belt by hand and pluck again.", new FindingNumber("beatRate", rate, "Hz"), new FindingNumber("level", decibels, "dB"));

    internal static Finding Gated(double seconds) =>
        Make(PluckFindings.Gated, FindingSeverity.Caution, $"A noise gate shut {seconds:F2} s after the pluck: switch noise suppression off. No decay times are given.", new FindingNumber("time", seconds, "s"));

    internal static Finding LevelControlled(double decibels) =>
        Make(PluckFindings.LevelControlled, FindingSeverity.Caution, $"The noise rises by {decibels:F0} dB while the pluck dies: switch automatic level control off. No decay times are given.", new FindingNumber("rise", decibels, "dB"));

    internal static Finding LeftOut(int leftOut, int analysed) =>
        Make(PluckFindings.LeftOut, FindingSeverity.Note, $"The {analysed} loudest sounds were analysed and {leftOut} left out; raise the number of plucks or shorten the recording.", new FindingNumber("leftOut", leftOut, "1"), new FindingNumber("analysed", analysed, "1"));

    internal static Finding Handling(int count) =>
        Make(PluckFindings.Handling, FindingSeverity.Note, $"{count} sounds without a pitch were set aside.", new FindingNumber("sounds", count, "1"));

    internal static Finding Hum(double frequency) =>
        Make(PluckFindings.Hum, FindingSeverity.Note, $"A steady line at {frequency:F1} Hz, a multiple of the mains frequency, was set aside.", new FindingNumber("frequency", frequency, "Hz"));

    internal static Finding Glide(double relative) =>
        Make(PluckFindings.Glide, FindingSeverity.Note, $"The frequency moves by {100 * relative:F2} % over the window; pluck more softly for a steadier reading.", new FindingNumber("relativeChange", relative, "1"));

    internal static Finding Several(int heard, int used) =>
        Make(PluckFindings.Several, FindingSeverity.Note, $"{used} of {heard} plucks were combined.", new FindingNumber("heard", heard, "1"), new FindingNumber("used", used, "1"));

    internal static Finding Outlier(double start, double frequency) =>
        Make(PluckFindings.Outlier, FindingSeverity.Caution, $"The pluck at {start:F2} s gives {frequency:F2} Hz and was set aside.", new FindingNumber("start", start, "s"), new FindingNumber("frequency", frequency, "Hz"));

    internal static Finding FewPartials(int count) =>
        Make(PluckFindings.FewPartials, FindingSeverity.Caution, $"Only {count} partials carry the reading.", new FindingNumber("partials", count, "1"));

    private static Finding Make(string code, FindingSeverity severity, FormattableString sentence, params FindingNumber[] numbers) =>
        new(code, severity, sentence.ToString(CultureInfo.InvariantCulture), numbers);
}
