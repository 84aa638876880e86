using System.Buffers;
using System.Numerics;

namespace PrinterMath.Measurement;

/// <summary>Transform of any length as a convolution with a chirp: jk = (j² + k² − (k − j)²)/2.</summary>
/// <remarks>
/// X_k = c̄_k·Σ (x_j·c̄_j)·c_{k−j} with c_j = exp(iπ·j²/n), the sum by transforms of a power of two of at least 2n − 1 points.
/// Source: L. I. Bluestein 1970, "A linear filtering approach to the computation of discrete Fourier transform", IEEE Trans. Audio Electroacoust. 18(4), 451-455.
/// </remarks>
internal sealed class ChirpFourier
{
    private readonly int _length;
    private readonly PowerOfTwoFourier _inner;
    private readonly double[] _cosine;
    private readonly double[] _sine;
    private readonly double[] _filterRe;
    private readonly double[] _filterIm;

    internal ChirpFourier(int length)
    {
        _length = length;
        _inner = new PowerOfTwoFourier((int)Math.Max(PowerOfTwoFourier.Least, BitOperations.RoundUpToPowerOf2((uint)((2 * length) - 1))));
        int m = _inner.Length;
        _cosine = new double[length];
        _sine = new double[length];
        double[] re = new double[m], im = new double[m];
        for (int j = 0; j < length; j++)
        {
            (_cosine[j], _sine[j]) = UnitRoots.At((long)j * j % (2L * length), 2L * length);
            int mirror = (m - j) % m;
            (re[j], im[j]) = (re[mirror], im[mirror]) = (_cosine[j], _sine[j]);
        }

        _filterRe = new double[m];
        _filterIm = new double[m];
        _inner.Transform(re, im, _filterRe, _filterIm);
    }

    internal void Transform(ReadOnlySpan<double> fromRe, ReadOnlySpan<double> fromIm, Span<double> re, Span<double> im)
    {
        int m = _inner.Length;
        double[] work = ArrayPool<double>.Shared.Rent(4 * m);
        Span<double> ar = work.AsSpan(0, m), ai = work.AsSpan(m, m), br = work.AsSpan(2 * m, m), bi = work.AsSpan(3 * m, m);
        ar[_length..].Clear();
        ai[_length..].Clear();
        for (int j = 0; j < _length; j++)
        {
            (ar[j], ai[j]) = Turned(fromRe[j], fromIm[j], j);
        }

        _inner.Transform(ar, ai, br, bi);
        for (int k = 0; k < m; k++)
        {
            (br[k], bi[k]) = ((br[k] * _filterRe[k]) - (bi[k] * _filterIm[k]), (br[k] * _filterIm[k]) + (bi[k] * _filterRe[k]));
        }

        // The inverse is the transform with real and imaginary parts exchanged.
        _inner.Transform(bi, br, ai, ar);
        for (int k = 0; k < _length; k++)
        {
            (double r, double i) = Turned(ar[k], ai[k], k);
            (re[k], im[k]) = (r / m, i / m);
        }

        ArrayPool<double>.Shared.Return(work);
    }

    /// <summary>(re + i·im)·c̄_j.</summary>
    private (double Re, double Im) Turned(double re, double im, int j) => ((re * _cosine[j]) + (im * _sine[j]), (im * _cosine[j]) - (re * _sine[j]));
}
