namespace PrinterMath.Tramming;

/// <summary>
/// One cause at one place: columns whose coefficients are lengths, for a gap the motion it loses, and the gap that explains a fit best. A coefficient of 1 moves the bed at the screw by the reach at most.
/// </summary>
internal sealed record CauseCandidate(SequenceCause Cause, string Subject, int Pass, double[][] Columns, int Screw = -1, Func<double, double[]>? Gap = null, double[]? Gaps = null, double Reach = 1)
{
    /// <summary>What shares a count of places: corners and single points are counted apart.</summary>
    internal (SequenceCause Cause, bool OfPoint) Group => (Cause, Cause == SequenceCause.Loose && Screw < 0);

    /// <summary>The gain and, for a gap, the candidate at the gap that gains most.</summary>
    internal (CauseGain Gain, CauseCandidate Best) Try(SequenceFit fit)
    {
        if (Gap is null)
        {
            return (fit.Gain(Columns), this);
        }

        double best = 0, at = Gaps![0];
        foreach (double gap in Gaps)
        {
            double gain = fit.GainOfOne(Gap(gap));
            (best, at) = gain > best ? (gain, gap) : (best, at);
        }

        double step = Gaps[1] / Gaps[0];
        for (int i = 0; best > 0 && i < 12; i++)
        {
            step = Math.Sqrt(step);
            foreach (double gap in new[] { at / step, at * step })
            {
                double gain = fit.GainOfOne(Gap(gap));
                (best, at) = gain > best ? (gain, gap) : (best, at);
            }
        }

        double[] column = [.. Gap(at).Select(v => v / at)];
        return (fit.Gain(column) with { Square = best }, this with { Columns = [column], Gaps = [at, Gaps[^1]] });
    }
}
