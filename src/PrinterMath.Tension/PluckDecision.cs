using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>Decides whether the best string may be called the answer.</summary>
/// <remarks>
/// Three gates: the best string beats "strays only" by <see cref="LeastOdds"/>, it explains most of the power in the peaks, and no rival comes
/// within <see cref="LeastLead"/>. Odds are natural logarithms; a lead of 4 is 55 to 1.
/// </remarks>
internal static class PluckDecision
{
    internal const double LeastOdds = 10;
    internal const double LeastLead = 4;
    private const double LeastShare = 0.5;
    private const double SteadyRatio = 0.7;

    internal static Finding? Judge(List<StringMatch> ranked, List<SpectralPeak> peaks)
    {
        if (ranked.Count == 0)
        {
            return PluckSentences.NoPitch(peaks.Count, 0, 0);
        }

        StringMatch best = ranked[0];
        double total = peaks.Sum(p => p.Power);
        double share = best.Peaks.Sum(p => peaks[p].Power) / total;
        if (best.LogOdds < LeastOdds || share < LeastShare)
        {
            return PluckSentences.NoPitch(peaks.Count, best.LogOdds, share);
        }

        if (ranked.Count > 1 && best.LogOdds - ranked[1].LogOdds < LeastLead)
        {
            double ratio = Math.Max(best.Model.F0, ranked[1].Model.F0) / Math.Min(best.Model.F0, ranked[1].Model.F0);
            return Math.Abs(ratio - Math.Round(ratio)) < 0.03 * ratio
                ? PluckSentences.OctaveUndecided(best.Model.Partial(1), ranked[1].Model.Partial(1), best.LogOdds - ranked[1].LogOdds)
                : PluckSentences.NoPitch(peaks.Count, best.LogOdds - ranked[1].LogOdds, share);
        }

        return null;
    }

    /// <summary>Whether half a second or more of sound keeps its strength: last third against first third.</summary>
    internal static bool IsSteady(ReadOnlySpan<double> x, double rate)
    {
        int third = x.Length / 3;
        return x.Length >= rate / 2 && MeanSquare(x[^third..]) > SteadyRatio * MeanSquare(x[..third]);
    }

    private static double MeanSquare(ReadOnlySpan<double> x)
    {
        double sum = 0;
        foreach (double v in x)
        {
            sum += v * v;
        }

        return sum / x.Length;
    }
}
