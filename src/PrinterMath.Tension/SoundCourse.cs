using System.Numerics;

namespace PrinterMath.Tension;

/// <summary>Level of the sound and of its noise about one pluck, in steps of time.</summary>
/// <remarks>
/// The noise is heard above the partials: the fourth difference of the samples raises the top of the band over a partial at f by (1/sin(πf/rate))⁴,
/// 100 dB at a fiftieth of half the rate.
/// </remarks>
internal sealed class SoundCourse
{
    internal const double StepSeconds = 0.02;
    private const double Before = 0.4;
    private const double After = 0.4;
    private const double LongestRing = 1.5;
    private const double Silence = 1e-20;

    private SoundCourse(double[] level, double[] noise, int onset)
    {
        Level = level;
        Noise = noise;
        Onset = onset;
    }

    /// <summary>Mean square of each step in dB.</summary>
    internal double[] Level { get; }

    /// <summary>Mean square of the fourth difference of each step in dB.</summary>
    internal double[] Noise { get; }

    /// <summary>Steps before the pluck.</summary>
    internal int Onset { get; }

    internal static SoundCourse Of(ReadOnlySpan<double> samples, double rate, double mean, PluckStretch stretch, int previousEnd, int nextStart)
    {
        int step = Math.Max(8, (int)(StepSeconds * rate));
        int before = Math.Max(0, Math.Min((int)(Before * rate), stretch.Start - previousEnd) / step);
        int last = Math.Min(Math.Min(samples.Length - 4, nextStart), stretch.Start + Math.Min(stretch.Count, (int)(LongestRing * rate)) + (int)(After * rate));
        int after = Math.Max(0, (last - stretch.Start) / step);
        double[] level = new double[before + after], noise = new double[before + after];
        double largest = Silence;
        for (int k = 0; k < level.Length; k++)
        {
            int from = stretch.Start + ((k - before) * step);
            (level[k], noise[k]) = Powers(samples.Slice(from, step), samples.Slice(from, Math.Min((step / 2) + 4, samples.Length - from)), mean);
            largest = Math.Max(largest, level[k]);
        }

        for (int k = 0; k < level.Length; k++)
        {
            level[k] = 10 * Math.Log10(Math.Max(level[k], largest * 1e-14));
            noise[k] = 10 * Math.Log10(Math.Max(noise[k], largest * 1e-20));
        }

        return new SoundCourse(level, noise, before);
    }

    private static (double Level, double Noise) Powers(ReadOnlySpan<double> step, ReadOnlySpan<double> half, double mean)
    {
        Vector<double> level = Vector<double>.Zero, noise = level, origin = new(mean), four = new(4.0), six = new(6.0);
        int lanes = Vector<double>.Count, i = 0, j = 0;
        for (; i + lanes <= step.Length; i += lanes)
        {
            Vector<double> x = new Vector<double>(step[i..]) - origin;
            level += x * x;
        }

        for (; j + lanes + 4 <= half.Length; j += lanes)
        {
            Vector<double> d = new Vector<double>(half[j..]) + new Vector<double>(half[(j + 4)..])
                - (four * (new Vector<double>(half[(j + 1)..]) + new Vector<double>(half[(j + 3)..]))) + (six * new Vector<double>(half[(j + 2)..]));
            noise += d * d;
        }

        return (Vector.Sum(level) / Math.Max(1, i), Vector.Sum(noise) / Math.Max(1, j) / 70);
    }
}
