namespace PrinterMath.Tension;

/// <summary>Which of the onsets of a recording are analysed, and their analyses.</summary>
/// <remarks>
/// The loudest first, until enough have a pitch; knocks do not use up the places of plucks, and there are at most <see cref="TriesPerPluck"/> tries for each place.
/// Where nothing but knocks was heard, quieter onsets are looked for outside them: a tap on the telephone may be far louder than the span.
/// </remarks>
internal sealed class PluckSelection
{
    internal const int TriesPerPluck = 4;
    private const int Rounds = 3;

    private PluckSelection(List<PluckStretch> stretches, List<PluckAnalysis> analyses)
    {
        Stretches = stretches;
        Analyses = analyses;
    }

    /// <summary>All onsets, in order of time.</summary>
    internal List<PluckStretch> Stretches { get; }

    /// <summary>Those analysed, in order of time.</summary>
    internal List<PluckAnalysis> Analyses { get; }

    internal static PluckSelection Of(
        ReadOnlySpan<double> samples, double rate, PluckEnvelope envelope, PluckOptions options, PluckRange range, IProgress<double>? progress, CancellationToken cancellation)
    {
        List<PluckStretch> stretches = OnsetDetector.Find(envelope, rate, options.LongestWindow.Seconds, []);
        List<PluckAnalysis> analyses = [];
        int tries = TriesPerPluck * options.MostPlucks;
        for (int round = 0; round < Rounds && stretches.Count > analyses.Count; round++)
        {
            QuietLines quiet = SteadyLines.Outside(samples, rate, envelope, stretches);
            HashSet<int> known = [.. analyses.Select(a => a.Stretch.Start)];
            int pitched = 0;
            foreach (PluckStretch stretch in stretches.Where(s => !known.Contains(s.Start)).OrderByDescending(s => s.Energy).ThenBy(s => s.Start))
            {
                if (pitched == options.MostPlucks || analyses.Count == tries)
                {
                    break;
                }

                cancellation.ThrowIfCancellationRequested();
                PluckAnalysis analysis = PluckAnalyzer.Analyze(samples, rate, envelope.Mean, stretch, quiet, range);
                pitched += analysis.Blocked is null ? 1 : 0;
                analyses.Add(analysis);
                progress?.Report((double)analyses.Count / (1 + Math.Min(stretches.Count, tries)));
            }

            if (pitched > 0 || analyses.Count == tries || !analyses.TrueForAll(IsKnock))
            {
                break;
            }

            List<PluckStretch> knocks = [.. analyses.Select(a => a.Stretch).OrderBy(s => s.Start)];
            stretches = [.. knocks.Concat(OnsetDetector.Find(envelope, rate, options.LongestWindow.Seconds, knocks)).OrderBy(s => s.Start)];
        }

        return new PluckSelection(stretches, [.. analyses.OrderBy(a => a.Stretch.Start)]);
    }

    private static bool IsKnock(PluckAnalysis analysis) => analysis.Blocked!.Code is PluckFindings.NoPitch or PluckFindings.TooShort;
}
