using System.Buffers;
using System.Numerics;

namespace PrinterMath.Tension;

/// <summary>Lowers the sample rate of one stretch of a recording, so that the work that follows does not grow with the rate.</summary>
/// <remarks>A linear-phase low-pass (Blackman-windowed sinc, −6 dB at 0.45 of the new rate) keeps a partial's frequency and phase.</remarks>
internal static class PluckDecimator
{
    private const double LeastRate = 11_000;
    private const int LobesPerSide = 8;

    /// <summary>The rate that is left, and the factor it was divided by.</summary>
    internal static int FactorFor(double sampleRate) => Math.Max(1, (int)(sampleRate / LeastRate));

    /// <summary>Every <paramref name="factor"/>-th sample of the low-passed stretch with <paramref name="mean"/> taken off; zero beyond the ends.</summary>
    internal static double[] Take(ReadOnlySpan<double> samples, int start, int count, int factor, double mean)
    {
        double[] taken = new double[count / factor];
        if (factor == 1)
        {
            for (int i = 0; i < taken.Length; i++)
            {
                taken[i] = samples[start + i] - mean;
            }

            return taken;
        }

        double[] filter = LowPass(factor);
        int reach = filter.Length / 2;
        int length = count + (2 * reach) + 1;
        double[] padded = ArrayPool<double>.Shared.Rent(length);
        for (int i = 0; i < length; i++)
        {
            int j = start - reach + i;
            padded[i] = j >= 0 && j < samples.Length ? samples[j] - mean : 0;
        }

        for (int i = 0; i < taken.Length; i++)
        {
            taken[i] = Dot(filter, padded.AsSpan(i * factor, filter.Length));
        }

        ArrayPool<double>.Shared.Return(padded);
        return taken;
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
        Vector<double> sums = Vector<double>.Zero;
        int i = 0;
        for (int step = Vector<double>.Count; i + step <= a.Length; i += step)
        {
            sums += new Vector<double>(a[i..]) * new Vector<double>(b[i..]);
        }

        double sum = Vector.Sum(sums);
        for (; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
