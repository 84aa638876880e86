using System.Buffers;
using System.Buffers.Binary;
using System.Numerics;

namespace PrinterMath.Tension;

/// <summary>Power spectrum |X_k|² of a real sequence whose length is a power of two, by one complex transform of half the length.</summary>
/// <remarks>Source: Cooley and Tukey 1965, An algorithm for the machine calculation of complex Fourier series, Mathematics of Computation 19.</remarks>
internal static class RealTransform
{
    /// <summary>|X_k|² for the first bins of X_k = Σ x_j exp(−2πi·jk/n), as many as <paramref name="power"/> holds, at most n/2; n a power of two, 16 or more.</summary>
    internal static void Power(ReadOnlySpan<double> x, Span<double> power)
    {
        int n = x.Length, half = n / 2;
        double[] work = ArrayPool<double>.Shared.Rent(3 * n);
        Span<double> re = work.AsSpan(0, half), im = work.AsSpan(half, half);
        Span<double> cosine = work.AsSpan(n, half), sine = work.AsSpan(n + half, half);
        Span<double> c = work.AsSpan(2 * n, half), s = work.AsSpan((2 * n) + half, half);
        UnitCircle.Fill(n, cosine, sine);
        int shift = 32 - BitOperations.Log2((uint)half);
        for (int j = 0; j < half; j++)
        {
            int k = (int)(Reverse((uint)j) >> shift);
            re[k] = x[2 * j];
            im[k] = x[(2 * j) + 1];
        }

        FirstTwoStages(re, im);
        int h = 4;
        if (BitOperations.Log2((uint)(half / h)) % 2 == 1)
        {
            Pick(h, half / h, c, s);
            for (int start = 0; start < half; start += 2 * h)
            {
                Butterflies(re.Slice(start, h), im.Slice(start, h), re.Slice(start + h, h), im.Slice(start + h, h), c, s);
            }

            h *= 2;
        }

        for (; h < half; h *= 4)
        {
            Span<double> c2 = c.Slice(h, h), s2 = s.Slice(h, h);
            Pick(h, half / h, c, s);
            Pick(h, half / (2 * h), c2, s2);
            for (int start = 0; start < half; start += 4 * h)
            {
                FourFold.Butterflies(re.Slice(start, 4 * h), im.Slice(start, 4 * h), c[..h], s[..h], c2, s2);
            }
        }

        Unpack(re, im, cosine, sine, power);
        ArrayPool<double>.Shared.Return(work);

        void Pick(int count, int stride, Span<double> toCosine, Span<double> toSine) => UnitCircle.Pick(count, stride, work.AsSpan(n, half), work.AsSpan(n + half, half), toCosine, toSine);
    }

    private static void FirstTwoStages(Span<double> re, Span<double> im)
    {
        for (int i = 0; i + 3 < re.Length; i += 4)
        {
            double ar = re[i] + re[i + 1], ai = im[i] + im[i + 1], br = re[i] - re[i + 1], bi = im[i] - im[i + 1];
            double cr = re[i + 2] + re[i + 3], ci = im[i + 2] + im[i + 3], dr = re[i + 2] - re[i + 3], di = im[i + 2] - im[i + 3];
            (re[i], im[i], re[i + 2], im[i + 2]) = (ar + cr, ai + ci, ar - cr, ai - ci);
            (re[i + 1], im[i + 1], re[i + 3], im[i + 3]) = (br + di, bi - dr, br - di, bi + dr);
        }
    }

    private static void Butterflies(Span<double> ar, Span<double> ai, Span<double> br, Span<double> bi, ReadOnlySpan<double> c, ReadOnlySpan<double> s)
    {
        int k = 0;
        for (int step = Vector<double>.Count; k + step <= ar.Length; k += step)
        {
            Vector<double> wr = new(c[k..]), wi = new(s[k..]), xr = new(br[k..]), xi = new(bi[k..]), yr = new(ar[k..]), yi = new(ai[k..]);
            Vector<double> tr = (xr * wr) + (xi * wi), ti = (xi * wr) - (xr * wi);
            (yr + tr).CopyTo(ar[k..]);
            (yi + ti).CopyTo(ai[k..]);
            (yr - tr).CopyTo(br[k..]);
            (yi - ti).CopyTo(bi[k..]);
        }

        for (; k < ar.Length; k++)
        {
            double tr = (br[k] * c[k]) + (bi[k] * s[k]), ti = (bi[k] * c[k]) - (br[k] * s[k]);
            (br[k], bi[k]) = (ar[k] - tr, ai[k] - ti);
            (ar[k], ai[k]) = (ar[k] + tr, ai[k] + ti);
        }
    }

    private static void Unpack(ReadOnlySpan<double> re, ReadOnlySpan<double> im, ReadOnlySpan<double> cosine, ReadOnlySpan<double> sine, Span<double> power)
    {
        int half = re.Length;
        power[0] = (re[0] + im[0]) * (re[0] + im[0]);
        for (int k = 1; k < power.Length; k++)
        {
            double er = (re[k] + re[half - k]) / 2, ei = (im[k] - im[half - k]) / 2;
            double or = (im[k] + im[half - k]) / 2, oi = (re[half - k] - re[k]) / 2;
            double xr = er + (or * cosine[k]) + (oi * sine[k]);
            double xi = ei + (oi * cosine[k]) - (or * sine[k]);
            power[k] = (xr * xr) + (xi * xi);
        }
    }

    private static uint Reverse(uint v)
    {
        v = ((v >> 1) & 0x55555555) | ((v & 0x55555555) << 1);
        v = ((v >> 2) & 0x33333333) | ((v & 0x33333333) << 2);
        v = ((v >> 4) & 0x0F0F0F0F) | ((v & 0x0F0F0F0F) << 4);
        return BinaryPrimitives.ReverseEndianness(v);
    }
}
