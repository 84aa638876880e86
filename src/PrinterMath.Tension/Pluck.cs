using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>Hears the fundamental of a plucked span in a recording.</summary>
/// <remarks>
/// <para>Steps: onsets from the rise of the mean square; of each pluck a window from its onset until it has decayed by 30 dB, or a longer or shorter one where that leaves the pitch open; tapered spectrum with
/// a local noise floor and its significant peaks; lines that were there before the pluck or do not decay with it set aside; the stiff string
/// f_n = n·f0·√(1 + B·n²) that best explains the peaks by log odds; a robust fit of (f_n/n)² against n²; the partials followed
/// through the window for glide and decay; a consensus over plucks.</para>
/// <para>Memory and time grow with the length of the recording only by one pass over it; each pluck is analysed in a window of bounded length.</para>
/// <para>It was checked on plucked strings (double bass, guitar, harp, harpsichord, banjo) and on simulated belts: no recording of a belt was available.</para>
/// </remarks>
/// <example><code>PluckReading reading = Pluck.Read(SampledSignal.FromSamples(samples, Frequency.FromHertz(48_000)));</code></example>
public static class Pluck
{
    private const double NotableGlide = 0.002;
    private const double Rounding = 1e-12;
    private const double LowestRate = 2000;
    private const double HighestRate = 192_000;

    /// <summary>Reads a recording of one or more plucks of one span.</summary>
    /// <param name="signal">The recording, mono, 2 kHz to 192 kHz, a few tenths of a second to minutes.</param>
    /// <param name="options">How to listen; null for the defaults.</param>
    /// <param name="progress">Told how much is done, from 0 to 1; null for nobody.</param>
    /// <param name="cancellation">Asked before each pluck.</param>
    /// <returns>The reading; its findings say what is wrong when there is no answer.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="signal"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The sample rate or an option is out of its range.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> asked for it.</exception>
    public static PluckReading Read(
        SampledSignal signal, PluckOptions? options = null, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        Guard.NotNull(signal);
        options ??= new PluckOptions();
        options.Check();
        ReadOnlySpan<double> samples = signal.Samples;
        double rate = Guard.Between(signal.SampleRateHertz, LowestRate, HighestRate, "signal.SampleRate");
        cancellation.ThrowIfCancellationRequested();
        List<Finding> findings = [];
        PluckRange range = new(options.LowestFundamental.Hertz, Math.Min(options.HighestFundamental.Hertz, PluckAnalyzer.HighestPartial(rate)));
        if (range.Highest <= range.Lowest)
        {
            return Nothing(findings, PluckSentences.RateTooLow(rate, range.Lowest));
        }

        if (range.Highest < options.HighestFundamental.Hertz)
        {
            findings.Add(PluckSentences.RangeReduced(range.Highest));
        }

        PluckEnvelope envelope = PluckEnvelope.Of(samples, rate);
        double largest = Math.Max(Math.Abs(envelope.Lowest), Math.Abs(envelope.Highest));
        if (envelope.Highest - envelope.Lowest <= Rounding * largest)
        {
            return Nothing(findings, PluckSentences.None());
        }

        if (InterleavedChannels.ComeInPairs(samples, envelope.LoudestFrame * envelope.FrameLength))
        {
            return Nothing(findings, PluckSentences.Interleaved(rate));
        }

        PluckSelection selection = PluckSelection.Of(samples, rate, envelope, options, range, progress, cancellation);
        if (selection.Analyses.Count == 0)
        {
            return Nothing(findings, PluckSentences.None());
        }

        if (InterleavedChannels.HaveImages(samples, rate, envelope.Mean, selection.Analyses))
        {
            return Nothing(findings, PluckSentences.Interleaved(rate));
        }

        PluckReading reading = Conclude(samples, rate, findings, envelope, selection);
        progress?.Report(1);
        return reading;
    }

    private static PluckReading Conclude(ReadOnlySpan<double> samples, double rate, List<Finding> findings, PluckEnvelope envelope, PluckSelection selection)
    {
        List<PluckAnalysis> plucks = selection.Analyses;
        PluckConsensus consensus = PluckConsensus.Of(plucks);
        PluckAnalysis strongest = consensus.Used.MaxBy(p => p.Stretch.Energy) ?? plucks.MaxBy(p => p.Stretch.Energy)!;
        RecordingFaults faults = RecordingFaults.Of(samples, rate, envelope, selection, strongest);
        findings.AddRange(faults.Findings);
        foreach (double line in plucks.SelectMany(p => p.SteadyLines).Where(f => SteadyLines.IsMains(f, 0)).Select(f => Math.Round(f)).Distinct().Order())
        {
            findings.Add(PluckSentences.Hum(line));
        }

        if (consensus.Blocked is not null)
        {
            findings.Add(consensus.Blocked);
        }
        else
        {
            AddNotes(findings, plucks, consensus, strongest);
        }

        if (selection.Stretches.Count > plucks.Count)
        {
            findings.Add(PluckSentences.LeftOut(selection.Stretches.Count - plucks.Count, plucks.Count));
        }

        return new PluckReading(
            findings.AsReadOnly(),
            [.. plucks.Select(p => new HeardPluck(p, consensus.Used.Contains(p)))],
            consensus.Used.Count == 0 ? null : strongest,
            consensus,
            faults.DecayIsFalse);
    }

    private static void AddNotes(List<Finding> findings, List<PluckAnalysis> plucks, PluckConsensus consensus, PluckAnalysis strongest)
    {
        if (strongest.Glide is { } glide && Math.Abs(glide.RelativeChange) > Math.Max(NotableGlide, 3 * glide.ChangeUncertainty))
        {
            findings.Add(PluckSentences.Glide(glide.RelativeChange));
        }

        if (strongest.Partials.Count < 3)
        {
            findings.Add(PluckSentences.FewPartials(strongest.Partials.Count));
        }

        int knocks = plucks.Count(p => p.Blocked is not null), heard = plucks.Count - knocks;
        if (heard > 1)
        {
            findings.Add(PluckSentences.Several(heard, consensus.Used.Count));
        }

        if (knocks > 0)
        {
            findings.Add(PluckSentences.Handling(knocks));
        }

        findings.AddRange(consensus.SetAside.Select(p => PluckSentences.Outlier(p.Stretch.Start / p.SampleRate, p.FirstPartial)));
    }

    private static PluckReading Nothing(List<Finding> findings, Finding blocking)
    {
        findings.Add(blocking);
        return new PluckReading(findings.AsReadOnly(), [], null, null);
    }
}
