namespace PrinterMath.Tension;

/// <summary>Finds where plucks begin and how long each may be listened to.</summary>
/// <remarks>
/// A pluck begins where the mean square of the next 40 ms exceeds that of the last 40 ms by 9 dB and comes within 20 dB of the loudest
/// place, or at the very start of a recording that begins loud or far above its background. Where there is no such rise, as in loud noise, it begins at the
/// likeliest step up of the mean square (<see cref="Step"/>). It ends when it has fallen by 30 dB, when it sinks into the background, when the next one begins, or at the longest window.
/// </remarks>
internal static class OnsetDetector
{
    private const int Reach = 8;
    private const double Rise = 8;
    private const double LeastLevel = 0.01;
    private const double LoudStart = 0.5;
    private const double Decay = 1e-3;
    private const double OverBackground = 1.3;
    private const double OverKnocks = 30;
    private const int StepReach = 40;
    private const double StepRise = 1.6;

    /// <summary>All plucks, in order of time, outside the knocks, which are in order of time as well; loud knocks do not hide quiet plucks.</summary>
    internal static List<PluckStretch> Find(PluckEnvelope envelope, double sampleRate, double longest, IReadOnlyList<PluckStretch> knocks)
    {
        double[] smooth = Smooth(envelope.MeanSquares);
        double peak = smooth.Length == 0 ? 0 : Loudest(smooth, envelope.FrameLength, knocks);
        if (!(peak > 0))
        {
            return [];
        }

        double background = Background(smooth);
        if (knocks.Count > 0 && peak < OverKnocks * background)
        {
            return [];
        }

        List<int> starts = Starts(smooth, peak, background);
        if (starts.Count == 0 && smooth[0] > LeastLevel * peak)
        {
            starts.Add(Step(envelope.MeanSquares) is var step && step > 0 && step < smooth.Length ? step : Steepest(smooth, 0));
        }

        List<PluckStretch> found = [];
        for (int i = 0; i < starts.Count; i++)
        {
            int limit = i + 1 < starts.Count ? starts[i + 1] - 2 : smooth.Length + Reach - 1;
            int end = End(smooth, starts[i], Math.Min(limit, smooth.Length), limit, background);
            int start = starts[i] * envelope.FrameLength;
            int most = (int)(longest * sampleRate);
            int count = Math.Min((Math.Min(end, envelope.MeanSquares.Length) - starts[i]) * envelope.FrameLength, most);
            int room = Math.Min((Math.Min(limit, envelope.MeanSquares.Length) - starts[i]) * envelope.FrameLength, most);
            found.Add(new PluckStretch(start, count, room, LevelAfter(smooth, starts[i], limit)));
        }

        found.RemoveAll(f => knocks.Any(k => f.Start <= k.Start && k.Start < f.Start + f.Count || k.Start <= f.Start && f.Start < k.Start + k.Count));
        return found;
    }

    /// <summary>Highest mean square outside the knocks.</summary>
    private static double Loudest(double[] smooth, int frameLength, IReadOnlyList<PluckStretch> knocks)
    {
        double peak = 0;
        int next = 0, until = 0;
        for (int i = 0; i < smooth.Length; i++)
        {
            while (next < knocks.Count && knocks[next].Start / frameLength <= i + Reach)
            {
                until = Math.Max(until, (knocks[next].Start + knocks[next].Count) / frameLength);
                next++;
            }

            peak = i >= until ? Math.Max(peak, smooth[i]) : peak;
        }

        return peak;
    }

    /// <summary>Running mean over the 8 frames (40 ms) that begin at each frame.</summary>
    private static double[] Smooth(double[] frames)
    {
        int reach = Math.Min(Reach, frames.Length);
        double[] smooth = new double[frames.Length == 0 ? 0 : frames.Length - reach + 1];
        for (int i = 0; i < smooth.Length; i++)
        {
            double sum = 0;
            for (int j = 0; j < reach; j++)
            {
                sum += frames[i + j];
            }

            smooth[i] = sum / reach;
        }

        return smooth;
    }

    private static double Background(double[] smooth)
    {
        double[] sorted = (double[])smooth.Clone();
        Array.Sort(sorted);
        return sorted[sorted.Length / 20];
    }

    private static List<int> Starts(double[] smooth, double peak, double background)
    {
        List<int> starts = [];
        for (int i = 0; i < smooth.Length; i++)
        {
            double before = i >= Reach ? smooth[i - Reach] : i > 0 ? smooth[0] : smooth[0] > LoudStart * peak ? 0 : background;
            if (smooth[i] < LeastLevel * peak || smooth[i] < Rise * before)
            {
                continue;
            }

            int best = Steepest(smooth, i);
            if (starts.Count == 0 || best - starts[^1] >= 3 * Reach)
            {
                starts.Add(best);
            }

            i = best + Reach;
        }

        return starts;
    }

    /// <summary>The frame k at which two levels, one of all frames before and one of the 0.2 s after, most exceed one level in likelihood, n·ln s̄ − k·ln s̄₁ − (n − k)·ln s̄₂; 0 when there is no rise.</summary>
    /// <remarks>Source: Basseville and Nikiforov 1993, Detection of abrupt changes, section on the generalised likelihood ratio (from memory).</remarks>
    private static int Step(double[] frames)
    {
        double[] sums = new double[frames.Length + 1];
        for (int i = 0; i < frames.Length; i++)
        {
            sums[i + 1] = sums[i] + frames[i];
        }

        int best = 0;
        double most = 0;
        for (int k = Reach; k + Reach <= frames.Length; k++)
        {
            int after = Math.Min(StepReach, frames.Length - k), all = k + after;
            double low = sums[k] / k, high = (sums[all] - sums[k]) / after;
            double gain = low > 0 && high > StepRise * low ? (all * Math.Log(sums[all] / all)) - (k * Math.Log(low)) - (after * Math.Log(high)) : 0;
            (best, most) = gain > most ? (k, gain) : (best, most);
        }

        return best;
    }

    private static int Steepest(double[] smooth, int from)
    {
        int best = from;
        double steepest = 0;
        for (int i = from; i < Math.Min(smooth.Length, from + Reach); i++)
        {
            double rise = smooth[i] - (i >= Reach ? smooth[i - Reach] : 0);
            if (rise > steepest * 1.2)
            {
                (best, steepest) = (i, rise);
            }
        }

        return best;
    }

    private static double LevelAfter(double[] smooth, int start, int limit)
    {
        double level = 0;
        for (int i = start; i < Math.Min(limit, Math.Min(smooth.Length, start + (3 * Reach))); i++)
        {
            level = Math.Max(level, smooth[i]);
        }

        return level;
    }

    private static int End(double[] smooth, int start, int last, int limit, double background)
    {
        double peak = LevelAfter(smooth, start, last);
        for (int i = start + Reach; i < last; i++)
        {
            if (smooth[i] < Decay * peak || smooth[i] < OverBackground * background && peak > 30 * background)
            {
                return i + (Reach / 2);
            }
        }

        return limit;
    }
}
