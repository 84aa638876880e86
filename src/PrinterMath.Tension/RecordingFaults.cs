using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>What a recording did to the pluck that carries the reading, beyond its frequency: clipping, gate, gain, a second string.</summary>
internal sealed class RecordingFaults
{
    private const double AttackSeconds = 0.03;

    private RecordingFaults(List<Finding> findings, bool decayIsFalse)
    {
        Findings = findings;
        DecayIsFalse = decayIsFalse;
    }

    internal List<Finding> Findings { get; }

    /// <summary>Whether decay times must be withheld.</summary>
    internal bool DecayIsFalse { get; }

    internal static RecordingFaults Of(ReadOnlySpan<double> samples, double rate, PluckEnvelope envelope, PluckSelection selection, PluckAnalysis strongest)
    {
        List<Finding> findings = [];
        bool decayIsFalse = false;
        int place = selection.Stretches.FindLastIndex(s => s.Start <= strongest.Stretch.Start);
        PluckStretch whole = selection.Stretches[place];
        PluckStretch stretch = strongest.Stretch with { Count = whole.Count + whole.Start - strongest.Stretch.Start };
        ClippedStretch all = envelope.Clipped(samples);
        if (all.Samples > 0)
        {
            ClippedStretch here = envelope.Clipped(samples.Slice(stretch.Start, stretch.Count));
            double until = (here.Last + 1) / rate;
            findings.Add(PluckSentences.Clipped(all.Samples, (double)here.Samples / stretch.Count, until, until > AttackSeconds));
            decayIsFalse = until > AttackSeconds;
        }

        int previousEnd = place > 0 ? selection.Stretches[place - 1].Start + selection.Stretches[place - 1].Count : 0;
        int margin = (int)(SoundCourse.StepSeconds * rate);
        int nextStart = place + 1 < selection.Stretches.Count ? selection.Stretches[place + 1].Start - margin : samples.Length;
        SoundCourse course = SoundCourse.Of(samples, rate, envelope.Mean, stretch, previousEnd, nextStart);
        if (RecorderFaults.GateShuts(course) is { } shut)
        {
            findings.Add(PluckSentences.Gated(shut));
            decayIsFalse = true;
        }
        else if (RecorderFaults.GainRises(course) is { } rise)
        {
            findings.Add(PluckSentences.LevelControlled(rise));
            decayIsFalse = true;
        }

        if (strongest.Beat is { } beat)
        {
            findings.Add(PluckSentences.Beats(beat.RelativeDifference * strongest.FirstPartial, 20 * Math.Log10(beat.Level)));
            decayIsFalse = true;
        }

        return new RecordingFaults(findings, decayIsFalse);
    }
}
