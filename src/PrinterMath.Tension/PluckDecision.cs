using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>Decides whether the best string may be called the answer.</summary>
/// <remarks>
/// Three gates: the best string beats "strays only" by <see cref="LeastOdds"/>, it explains most of the power in the peaks, and no rival comes
/// within <see cref="LeastLead"/>. Odds are natural logarithms. Rivals at a whole ratio are judged by <see cref="OctaveTest"/>, all others by
/// the odds of their peaks.
/// </remarks>
internal static class PluckDecision
{
    internal const double LeastOdds = 10;
    internal const double LeastLead = 4;

    /// <summary>Odds that a window other than the first must have in addition, and its lead over an octave: several windows have several chances to err.</summary>
    private const double MoreOdds = 5;
    private const double MoreLead = 1;
    private const double LeastShare = 0.5;
    internal const double LeastOctaveLead = 2.5;
    private static readonly int[] Divisors = [2, 3, 5];
    private const int MostMoves = 4;

    /// <summary>Log odds that a move to another octave may cost: past it the peaks contradict the octave test, and neither is believed.</summary>
    private const double MostLoss = 20;

    private const double SteadyRatio = 0.9;

    /// <summary>
    /// The string that may be called the answer, or the finding that stands in the way; of two undecided strings the one that was behind, in Hz, else 0; and of the best string its first partial in Hz when it is not
    /// the octave of the one plucked, else 0.
    /// </summary>
    /// <param name="ranked">Strings that explain the peaks, the best first.</param>
    /// <param name="peaks">The peaks.</param>
    /// <param name="search">Matches a string to the peaks.</param>
    /// <param name="test">Judges octaves by the spectrum.</param>
    /// <param name="range">Where strings may lie that this window is long enough to tell.</param>
    /// <param name="lowest">The lowest that a string may lie at all, in Hz.</param>
    /// <param name="isFirst">Whether this is the first window tried.</param>
    /// <param name="noOctave">First partial in Hz of a string that a longer window has told from the one an octave lower, else 0.</param>
    internal static (StringMatch? Match, Finding? Blocked, double Behind, double NoOctave) Judge(
        List<StringMatch> ranked, List<SpectralPeak> peaks, CandidateSearch search, OctaveTest test, PluckRange range, double lowest, bool isFirst, double noOctave)
    {
        double leastLead = LeastOctaveLead + (isFirst ? 0 : MoreLead), leastOdds = LeastOdds + (isFirst ? 0 : MoreOdds);
        if (ranked.Count == 0)
        {
            return (null, PluckSentences.NoPitch(peaks.Count, 0, 0), 0, 0);
        }

        StringMatch best = ranked[0];
        for (int round = 0; round < MostMoves; round++)
        {
            (StiffString other, double lead) = Nearest(best.Model, test, range);
            if (lead > leastLead)
            {
                break;
            }

            if (lead > -leastLead || round == MostMoves - 1)
            {
                double behind = lead > 0 ? other.Partial(1) : best.Model.Partial(1);
                double told = -test.LowerOverUpper(best.Model, 2) > leastLead + MoreLead && best.Model.F0 / 2 >= range.Lowest ? best.Model.Partial(1) : 0;
                return (null, Weakness(best, peaks, leastOdds) ?? PluckSentences.OctaveUndecided(best.Model.Partial(1), other.Partial(1), lead), behind, told);
            }

            StringMatch moved = search.Match(other);
            if (best.LogOdds - moved.LogOdds > MostLoss)
            {
                return (null, PluckSentences.OctaveUndecided(best.Model.Partial(1), other.Partial(1), lead), other.Partial(1), 0);
            }

            best = moved;
        }

        if (Weakness(best, peaks, leastOdds) is { } weak)
        {
            return (null, weak, 0, 0);
        }

        double first = best.Model.Partial(1), half = first / 2;
        if (!isFirst && half >= lowest && half < range.Lowest && Math.Abs(noOctave - first) > PluckAnalyzer.SameString * first)
        {
            return (null, PluckSentences.OctaveUndecided(first, half, 0), half, 0);
        }

        StringMatch? rival = ranked.Find(r => best.LogOdds - r.LogOdds < LeastLead && !IsMultiple(best.Model, r.Model) && Contests(r, best, peaks));
        return rival is null ? (best, null, 0, 0) : (null, PluckSentences.NoPitch(peaks.Count, best.LogOdds - rival.LogOdds, Share(best, peaks)), 0, 0);
    }

    /// <summary>That the string hardly beats strays, or explains little of the power in the peaks.</summary>
    private static Finding? Weakness(StringMatch best, List<SpectralPeak> peaks, double leastOdds)
    {
        double share = Share(best, peaks);
        return best.LogOdds < leastOdds || share < LeastShare ? PluckSentences.NoPitch(peaks.Count, best.LogOdds, share) : null;
    }

    private static double Share(StringMatch match, List<SpectralPeak> peaks) => match.Peaks.Sum(p => peaks[p].Power) / peaks.Sum(p => p.Power);

    /// <summary>Strings a whole ratio apart were judged by the spectrum.</summary>
    private static bool IsMultiple(StiffString a, StiffString b)
    {
        double ratio = Math.Max(a.F0, b.F0) / Math.Min(a.F0, b.F0);
        return Math.Abs(ratio - Math.Round(ratio)) < 0.01 * ratio;
    }

    /// <summary>A rival that shares little of its power with a string at least twice as strong is another string that rings along, not another reading.</summary>
    private static bool Contests(StringMatch rival, StringMatch best, List<SpectralPeak> peaks)
    {
        double own = rival.Peaks.Sum(p => peaks[p].Power);
        return rival.Peaks.Intersect(best.Peaks).Sum(p => peaks[p].Power) > 0.25 * own || best.Peaks.Sum(p => peaks[p].Power) < 2 * own;
    }

    /// <summary>The string at a half, a third, a fifth, twice, three or five times the frequency that comes nearest, and the lead over it.</summary>
    private static (StiffString Other, double Lead) Nearest(StiffString model, OctaveTest test, PluckRange range)
    {
        StiffString nearest = model;
        double least = double.PositiveInfinity;
        foreach (int d in Divisors)
        {
            StiffString lower = new(model.F0 / d, model.B / (d * d)), upper = new(model.F0 * d, model.B * d * d);
            if (lower.F0 >= range.Lowest)
            {
                Consider(lower, -test.LowerOverUpper(model, d));
            }

            if (upper.F0 <= range.Highest)
            {
                Consider(upper, test.LowerOverUpper(upper, d));
            }
        }

        return (nearest, least);

        void Consider(StiffString other, double lead) => (nearest, least) = lead < least ? (other, lead) : (nearest, least);
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
