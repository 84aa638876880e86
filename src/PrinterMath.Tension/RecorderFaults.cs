namespace PrinterMath.Tension;

/// <summary>What a recorder's own electronics did to the level of a pluck: a gate that shuts, a gain that follows the sound.</summary>
/// <remarks>
/// <para>Partials that decay add up to a level whose logarithm bends upward only. A gate bends it downward: the level falls below the line of the time before,
/// the noise falls with it, and neither comes back. A hand on the span stops the sound but not the noise.</para>
/// <para>A gain that follows the sound raises the noise while the sound dies, and has lowered it when the pluck began.</para>
/// </remarks>
internal static class RecorderFaults
{
    private const int Trend = 5;
    private const int LeastAfter = 3;
    private const double GateFall = 9;
    private const double GateNoiseFall = 8;
    private const double LeastRise = 5;
    private const double NearLoudest = 3;
    private const double RiseAlone = 8;
    private const double LeastFall = 6;
    private const int Averaged = 4;

    /// <summary>Time after the onset at which a gate shuts, in seconds; null when none does.</summary>
    internal static double? GateShuts(SoundCourse course)
    {
        double[] level = course.Level, noise = course.Noise;
        double loudest = Highest(level, course.Onset, level.Length - 1);
        for (int k = course.Onset + 3; k + LeastAfter + 1 < level.Length; k++)
        {
            if (level[k] < loudest - 50)
            {
                break;
            }

            if (StaysBelow(level, course.Onset, k, GateFall) && StaysBelow(noise, course.Onset, k, GateNoiseFall) && Highest(noise, k + 2, noise.Length - 1) < Lowest(noise, course.Onset + 1, k) - GateNoiseFall)
            {
                return (k + 1 - course.Onset) * SoundCourse.StepSeconds;
            }
        }

        return null;
    }

    /// <summary>Rise of the noise in dB while the sound dies; null when it does not rise.</summary>
    internal static double? GainRises(SoundCourse course)
    {
        double[] noise = course.Noise, level = course.Level;
        int last = noise.Length - Averaged;
        if (last < 2 * Averaged)
        {
            return null;
        }

        int quietest = 1, late;
        double least = double.PositiveInfinity, before = double.NegativeInfinity, after = double.NegativeInfinity;
        for (int k = 1; k + Averaged < last; k++)
        {
            double mean = Mean(noise, k, Averaged);
            (quietest, least) = mean < least ? (k, mean) : (quietest, least);
        }

        double loud = Highest(level, 0, level.Length - 1);
        int set = Array.FindIndex(level, v => v > loud - NearLoudest);
        late = quietest;
        for (int k = 0; k <= last; k++)
        {
            double mean = Mean(noise, k, Averaged);
            before = k + Averaged < set ? Math.Max(before, mean) : before;
            (late, after) = k > quietest && mean > after ? (k, mean) : (late, after);
        }

        double quiet = Lowest(level, quietest, last);
        double rise = after - least;
        bool gainWasHigher = double.IsInfinity(before) ? rise > RiseAlone : before - least > LeastRise;
        return rise > LeastRise && gainWasHigher && loud - quiet > LeastFall && Steady(noise, quietest, late) ? rise : null;
    }

    /// <summary>Whether the noise keeps rising: most of its steps lie in the order of time.</summary>
    private static bool Steady(double[] noise, int from, int to)
    {
        int up = 0, pairs = 0;
        for (int k = from; k + Averaged <= to; k++)
        {
            double step = Mean(noise, k + (Averaged / 2), Averaged) - Mean(noise, k, Averaged);
            up += step > 0 ? 1 : 0;
            pairs++;
        }

        return pairs == 0 || up > 0.6 * pairs;
    }

    /// <summary>Whether everything after step k + 1 lies below the falling line through the steps up to k.</summary>
    private static bool StaysBelow(double[] values, int onset, int k, double by)
    {
        int from = Math.Max(onset + 1, k - Trend);
        double slope = k > from ? Math.Min(0, (values[k] - values[from]) / (k - from)) : 0;
        for (int j = k + 2; j < values.Length; j++)
        {
            if (values[j] > values[k] + (slope * Math.Min(j - k, LeastAfter)) - by)
            {
                return false;
            }
        }

        return true;
    }

    private static double Highest(double[] values, int from, int to)
    {
        double highest = double.NegativeInfinity;
        for (int k = from; k <= to; k++)
        {
            highest = Math.Max(highest, values[k]);
        }

        return highest;
    }

    private static double Lowest(double[] values, int from, int to)
    {
        double lowest = double.PositiveInfinity;
        for (int k = from; k <= to; k++)
        {
            lowest = Math.Min(lowest, values[k]);
        }

        return lowest;
    }

    private static double Mean(double[] values, int from, int count)
    {
        double sum = 0;
        for (int k = from; k < from + count; k++)
        {
            sum += values[k];
        }

        return sum / count;
    }
}
