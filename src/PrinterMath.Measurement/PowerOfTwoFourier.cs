namespace PrinterMath.Measurement;

/// <summary>Transform of a power of two, X_k = Σ x_j·exp(−2πi·jk/n), real and imaginary parts apart.</summary>
/// <remarks>The inputs are read in bit-reversed order by a first stage of four points without roots; stages of four follow, and one of two where the exponent is odd.</remarks>
internal sealed class PowerOfTwoFourier
{
    internal const int Least = 4;
    private readonly int[] _order;
    private readonly FourierStage[] _stages;
    private readonly double[] _twoFold;

    /// <summary>A transform of n points, a power of two, 4 or more.</summary>
    internal PowerOfTwoFourier(int n)
    {
        Length = n;
        _order = FourierOrder.Reversed(n / 4);
        bool odd = int.Log2(n) % 2 == 1;
        _twoFold = odd ? new double[8] : [];
        UnitRoots.Fill(1, 8, _twoFold.AsSpan(0, odd ? 4 : 0), _twoFold.AsSpan(odd ? 4 : 0));
        List<FourierStage> stages = [];
        for (int h = odd ? 8 : 4; h < n; h *= 4)
        {
            stages.Add(new FourierStage(h));
        }

        _stages = [.. stages];
    }

    internal int Length { get; }

    /// <summary>From separate parts.</summary>
    internal void Transform(ReadOnlySpan<double> fromRe, ReadOnlySpan<double> fromIm, Span<double> re, Span<double> im)
    {
        int quarter = Length / 4;
        for (int g = 0; g < _order.Length; g++)
        {
            int p = _order[g], q = p + quarter, u = q + quarter, v = u + quarter;
            FourPoints(re, im, 4 * g, (fromRe[p], fromIm[p]), (fromRe[u], fromIm[u]), (fromRe[q], fromIm[q]), (fromRe[v], fromIm[v]));
        }

        Stages(re[..Length], im[..Length]);
    }

    /// <summary>From pairs (x₀, x₁), (x₂, x₃), … taken as real and imaginary parts.</summary>
    internal void TransformPairs(ReadOnlySpan<double> pairs, Span<double> re, Span<double> im)
    {
        int half = Length / 2;
        for (int g = 0; g < _order.Length; g++)
        {
            int p = 2 * _order[g], q = p + half, u = q + half, v = u + half;
            FourPoints(re, im, 4 * g, (pairs[p], pairs[p + 1]), (pairs[u], pairs[u + 1]), (pairs[q], pairs[q + 1]), (pairs[v], pairs[v + 1]));
        }

        Stages(re[..Length], im[..Length]);
    }

    private static void FourPoints(
        Span<double> re, Span<double> im, int at, (double Re, double Im) a, (double Re, double Im) b, (double Re, double Im) c, (double Re, double Im) d)
    {
        double sr = a.Re + b.Re, si = a.Im + b.Im, er = a.Re - b.Re, ei = a.Im - b.Im;
        double pr = c.Re + d.Re, pi = c.Im + d.Im, qr = c.Re - d.Re, qi = c.Im - d.Im;
        Span<double> r = re.Slice(at, 4), i = im.Slice(at, 4);
        (r[3], r[2], r[1], r[0]) = (er - qi, sr - pr, er + qi, sr + pr);
        (i[3], i[2], i[1], i[0]) = (ei + qr, si - pi, ei - qr, si + pi);
    }

    private void Stages(Span<double> re, Span<double> im)
    {
        if (_twoFold.Length > 0)
        {
            for (int start = 0; start < re.Length; start += 8)
            {
                TwoFold(re.Slice(start, 8), im.Slice(start, 8));
            }
        }

        foreach (FourierStage stage in _stages)
        {
            stage.Run(re, im);
        }
    }

    private void TwoFold(Span<double> re, Span<double> im)
    {
        for (int k = 0; k < 4; k++)
        {
            double c = _twoFold[k], s = _twoFold[k + 4];
            double tr = (re[k + 4] * c) + (im[k + 4] * s), ti = (im[k + 4] * c) - (re[k + 4] * s);
            (re[k + 4], im[k + 4]) = (re[k] - tr, im[k] - ti);
            (re[k], im[k]) = (re[k] + tr, im[k] + ti);
        }
    }
}
