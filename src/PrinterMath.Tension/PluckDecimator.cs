using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;

namespace PrinterMath.Tension;

/// <summary>Lowers the sample rate of one stretch of a recording, so that the work that follows does not grow with the rate.</summary>
/// <remarks>A linear-phase low-pass (Blackman-windowed sinc, −6 dB at 0.45 of the new rate) keeps a partial's frequency and phase.</remarks>
internal static class PluckDecimator
{
    private const double LeastRate = 11_000;
    private const int LobesPerSide = 8;

    /// <summary>The rate that is left, and the factor it was divided by.</summary>
    internal static int FactorFor(double sampleRate) => Math.Max(1, (int)(sampleRate / LeastRate));

    /// <summary>
    /// Every <paramref name="factor"/>-th sample of the low-passed stretch that begins at <paramref name="start"/>, as many as
    /// <paramref name="taken"/> holds, with <paramref name="mean"/> taken off; zero beyond the ends.
    /// </summary>
    internal static void Take(ReadOnlySpan<double> samples, int start, int factor, double mean, Span<double> taken)
    {
        if (factor == 1)
        {
            for (int i = 0; i < taken.Length; i++)
            {
                taken[i] = samples[start + i] - mean;
            }

            return;
        }

        double[] filter = LowPass(factor);
        int reach = filter.Length / 2;
        int length = (taken.Length * factor) + (2 * reach) + 1;
        double[] padded = ArrayPool<double>.Shared.Rent(length);
        Fill(samples, start - reach, mean, padded.AsSpan(0, length));
        for (int i = 0; i < taken.Length; i++)
        {
            taken[i] = Dot(filter, padded.AsSpan(i * factor, filter.Length));
        }

        ArrayPool<double>.Shared.Return(padded);
    }

    private static void Fill(ReadOnlySpan<double> samples, int start, double mean, Span<double> padded)
    {
        int before = Math.Clamp(-start, 0, padded.Length), after = Math.Max(before, Math.Min(padded.Length, samples.Length - start));
        padded[..before].Clear();
        ReadOnlySpan<double> heard = samples.Slice(start + before, after - before);
        for (int i = 0; i < heard.Length; i++)
        {
            padded[before + i] = heard[i] - mean;
        }

        padded[after..].Clear();
    }

    private static double[] LowPass(int factor)
    {
        int reach = LobesPerSide * factor;
        double[] filter = new double[(2 * reach) + 1];
        double sum = 0;
        for (int i = 0; i < filter.Length; i++)
        {
            double t = i - reach;
            double phase = 2 * Math.PI * t * 0.45 / factor;
            double window = 0.42 + (0.5 * Math.Cos(Math.PI * t / (reach + 1))) + (0.08 * Math.Cos(2 * Math.PI * t / (reach + 1)));
            filter[i] = (t == 0 ? 1 : Math.Sin(phase) / phase) * window;
            sum += filter[i];
        }

        for (int i = 0; i < filter.Length; i++)
        {
            filter[i] /= sum;
        }

        return filter;
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        ref double fromA = ref MemoryMarshal.GetReference(a), fromB = ref MemoryMarshal.GetReference(b);
        Vector<double> sums = Vector<double>.Zero, others = sums;
        int i = 0, step = Vector<double>.Count;
        for (; i + (2 * step) <= a.Length; i += 2 * step)
        {
            sums += Vector.LoadUnsafe(ref fromA, (nuint)i) * Vector.LoadUnsafe(ref fromB, (nuint)i);
            others += Vector.LoadUnsafe(ref fromA, (nuint)(i + step)) * Vector.LoadUnsafe(ref fromB, (nuint)(i + step));
        }

        sums += others;
        double sum = Vector.Sum(sums);
        for (; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
