using System.Globalization;

namespace PrinterMath.Tramming;

/// <summary>Every place at which each cause is looked for.</summary>
internal static class CauseCandidates
{
    private const int GapSteps = 24;

    internal static CauseCandidate[] All(SequenceReadings readings) =>
        [.. Leads(readings), .. Gaps(readings), .. Flexing(readings), .. Corners(readings), .. Points(readings), .. Drifts(readings)];

    private static IEnumerable<CauseCandidate> Leads(SequenceReadings r)
    {
        int screws = r.Screws.Length;
        double[] leads = [.. r.Screws.ToArray().Select(screw => screw.Thread.Lead.SiValue)];
        int[] turned = [.. Enumerable.Range(0, screws).Where(k => r.Moves[k].Any(move => move != 0))];
        foreach (int k in turned)
        {
            yield return new CauseCandidate(SequenceCause.Lead, r.Screws[k].Name, -1, [r.Column(i => r.Influence(i, k) * r.Turned[k][r.Pass[i]])], k, Reach: r.Turned[k].Max(Math.Abs));
        }

        if (turned.Length > 1)
        {
            double mean = turned.Average(k => leads[k]);
            yield return new CauseCandidate(SequenceCause.Lead, "all screws", -1, [r.Column(i => turned.Sum(k => r.Influence(i, k) * r.Turned[k][r.Pass[i]] * leads[k] / mean))], Reach: turned.Max(k => r.Turned[k].Max(Math.Abs)));
        }
    }

    private static IEnumerable<CauseCandidate> Gaps(SequenceReadings r)
    {
        int screws = r.Screws.Length;
        double[][] moves = [.. Enumerable.Range(0, screws).Select(k => r.Moves[k].Select(move => move * r.Screws[k].Thread.Lead.SiValue).ToArray())];
        int[] reversing = [.. Enumerable.Range(0, screws).Where(k => PlayOperator.Reverses(moves[k]))];
        foreach (int k in reversing)
        {
            yield return new CauseCandidate(SequenceCause.Backlash, r.Screws[k].Name, -1, [], k, gap => ScrewPlay.Of(gap, k).Lost(r, gap), Steps(moves[k]));
        }

        if (reversing.Length > 0)
        {
            int[] turned = [.. Enumerable.Range(0, screws).Where(k => moves[k].Any(move => move != 0))];
            double[] largest = [.. moves.OrderBy(move => move.Sum(Math.Abs)).Last()];
            yield return new CauseCandidate(SequenceCause.Backlash, "all screws", -1, [], -1, gap => ScrewPlay.Of(gap, turned).Lost(r, gap), Steps(largest));
        }
    }

    /// <summary>Gaps to try, by equal ratios up to all that was turned.</summary>
    private static double[] Steps(double[] moves)
    {
        double most = moves.Sum(Math.Abs);
        double ratio = Math.Pow(1000, 1.0 / (GapSteps - 1));
        return [.. Enumerable.Range(0, GapSteps).Select(i => most / 1000 * Math.Pow(ratio, i))];
    }

    private static IEnumerable<CauseCandidate> Flexing(SequenceReadings r) =>
        [new CauseCandidate(SequenceCause.Flex, "bed", -1, [.. r.ShapeChanges()])];

    private static IEnumerable<CauseCandidate> Corners(SequenceReadings r) =>
        from pass in Enumerable.Range(1, r.Passes - 1)
        from k in Enumerable.Range(0, r.Screws.Length)
        select new CauseCandidate(SequenceCause.Loose, r.Screws[k].Name, pass, [r.Column(i => r.Pass[i] >= pass ? r.Influence(i, k) : 0)], k);

    /// <summary>A point that moved and stayed: two readings before and two after, since a single odd one is an outlier.</summary>
    private static IEnumerable<CauseCandidate> Points(SequenceReadings r) =>
        from pass in Enumerable.Range(2, Math.Max(0, r.Passes - 3))
        where r.PlacesAreShared
        from place in Enumerable.Range(0, r.Places)
        let rows = Enumerable.Range(0, r.Count).Where(i => r.Place[i] == place).ToArray()
        where rows.Count(i => r.Pass[i] < pass) > 1 && rows.Count(i => r.Pass[i] >= pass) > 1
        let point = r.Point(rows[0])
        let name = string.Create(CultureInfo.InvariantCulture, $"point at ({point.XMeters * 1e3:0.#}, {point.YMeters * 1e3:0.#}) mm")
        select new CauseCandidate(SequenceCause.Loose, name, pass, [r.Column(i => r.Place[i] == place && r.Pass[i] >= pass ? 1 : 0)]);

    private static IEnumerable<CauseCandidate> Drifts(SequenceReadings r)
    {
        if (!r.HasTimes)
        {
            yield break;
        }

        yield return new CauseCandidate(SequenceCause.Drift, "bed", -1, [r.Column(i => r.Time[i])]);
        double[][] corners = [.. Enumerable.Range(0, r.Screws.Length).Select(k => r.Column(i => r.Time[i] * r.Influence(i, k)))];
        for (int k = 0; k < corners.Length; k++)
        {
            yield return new CauseCandidate(SequenceCause.Drift, r.Screws[k].Name, -1, [corners[k]], k);
        }

        yield return new CauseCandidate(SequenceCause.Drift, "corners", -1, corners);
    }
}
