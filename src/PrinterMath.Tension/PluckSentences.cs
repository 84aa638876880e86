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

    internal static Finding Clipped(int samples) =>
        Make(PluckFindings.Clipped, FindingSeverity.Caution, $"{samples} samples stand at the recorder's limit: lower the gain. Levels and decay are not to be trusted.", new FindingNumber("samples", samples, "1"));

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
