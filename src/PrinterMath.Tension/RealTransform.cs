using System.Numerics;

namespace PrinterMath.Tension;

/// <summary>Power spectrum |X_k|² of a real sequence whose length is a power of two, by one complex transform of half the length.</summary>
/// <remarks>Source: Cooley and Tukey 1965, An algorithm for the machine calculation of complex Fourier series, Mathematics of Computation 19.</remarks>
internal static class RealTransform
{
    /// <summary>|X_k|² for k = 0 ... n/2 with X_k = Σ x_j exp(−2πi·jk/n).</summary>
    internal static double[] Power(ReadOnlySpan<double> x)
    {
        int n = x.Length;
        int half = n / 2;
        var (cosine, sine) = Circle(n);
        double[] re = new double[half];
        double[] im = new double[half];
        int shift = 32 - BitOperations.Log2((uint)half);
        for (int j = 0; j < half; j++)
        {
            int k = (int)(Reverse((uint)j) >> shift);
            re[k] = x[2 * j];
            im[k] = x[(2 * j) + 1];
        }

        Complex(re, im, cosine, sine);
        return Unpack(re, im, cosine, sine);
    }

    private static void Complex(double[] re, double[] im, double[] cosine, double[] sine)
    {
        int n = re.Length;
        double[] c = new double[n / 2];
        double[] s = new double[n / 2];
        for (int h = 1; h < n; h *= 2)
        {
            int stride = n / h;
            for (int k = 0; k < h; k++)
            {
                c[k] = cosine[k * stride];
                s[k] = sine[k * stride];
            }

            for (int start = 0; start < n; start += 2 * h)
            {
                Butterflies(re.AsSpan(start, h), im.AsSpan(start, h), re.AsSpan(start + h, h), im.AsSpan(start + h, h), c, s);
            }
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

    private static double[] Unpack(double[] re, double[] im, double[] cosine, double[] sine)
    {
        int half = re.Length;
        double[] power = new double[half + 1];
        power[0] = (re[0] + im[0]) * (re[0] + im[0]);
        power[half] = (re[0] - im[0]) * (re[0] - im[0]);
        for (int k = 1; k < half; k++)
        {
            double er = (re[k] + re[half - k]) / 2, ei = (im[k] - im[half - k]) / 2;
            double or = (im[k] + im[half - k]) / 2, oi = (re[half - k] - re[k]) / 2;
            double xr = er + (or * cosine[k]) + (oi * sine[k]);
            double xi = ei + (oi * cosine[k]) - (or * sine[k]);
            power[k] = (xr * xr) + (xi * xi);
        }

        return power;
    }

    /// <summary>cos and sin of 2πk/n for k below n/2; one eighth of the circle is computed, the rest mirrored.</summary>
    private static (double[] Cosine, double[] Sine) Circle(int n)
    {
        int half = n / 2, quarter = n / 4;
        double[] cosine = new double[half];
        double[] sine = new double[half];
        for (int k = 0; k <= n / 8; k++)
        {
            (double s, double c) = Math.SinCos(2 * Math.PI * k / n);
            (cosine[k], sine[k]) = (c, s);
            (cosine[quarter - k], sine[quarter - k]) = (s, c);
        }

        for (int k = 1; k < quarter; k++)
        {
            (cosine[half - k], sine[half - k]) = (-cosine[k], sine[k]);
        }

        return (cosine, sine);
    }

    private static uint Reverse(uint v)
    {
        v = ((v >> 1) & 0x55555555) | ((v & 0x55555555) << 1);
        v = ((v >> 2) & 0x33333333) | ((v & 0x33333333) << 2);
        v = ((v >> 4) & 0x0F0F0F0F) | ((v & 0x0F0F0F0F) << 4);
        return System.Buffers.Binary.BinaryPrimitives.ReverseEndianness(v);
    }
}
