using System.Diagnostics;

namespace PrinterMath.Measurement;

/// <summary>Discrete Fourier transform of a real sequence, X_k = Σ x_j·exp(−2πi·jk/n) for k from 0 to n/2: the other half is its mirror image.</summary>
/// <remarks>
/// <para>As <see cref="FourierTransform"/>, in half the time: an even length is a transform of n/2 points, the even samples real and the odd ones imaginary parts,
/// X_k = E_k + exp(−2πi·k/n)·O_k. No scaling. Safe for use by several threads at once; no allocation for powers of two.</para>
/// Source: J. W. Cooley, P. A. W. Lewis, P. D. Welch 1970, "The fast Fourier transform algorithm: programming considerations in the calculation of sine, cosine and Laplace transforms", J. Sound Vib. 12(3), 315-337 (from memory).
/// </remarks>
/// <example><code>
/// var transform = new RealFourierTransform(2048);
/// transform.Forward(samples, re, im);   // re and im hold transform.Bins numbers each
/// </code></example>
[DebuggerDisplay("{Length} points")]
public sealed class RealFourierTransform
{
    private readonly FourierTransform _inner;
    private readonly double[] _cosine;
    private readonly double[] _sine;

    /// <summary>Prepares a transform.</summary>
    /// <param name="length">Number of points n, from 1 to 2²⁶.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range.</exception>
    public RealFourierTransform(int length)
    {
        Length = (int)Guard.Between(length, 1, FourierTransform.MostPoints);
        bool even = length % 2 == 0;
        _inner = new FourierTransform(even ? length / 2 : length);
        _cosine = new double[even ? (length / 4) + 1 : 0];
        _sine = new double[_cosine.Length];
        UnitRoots.Fill(1, length, _cosine, _sine);
    }

    /// <summary>Number of points n.</summary>
    public int Length { get; }

    /// <summary>Number of bins, n/2 + 1 rounded down.</summary>
    public int Bins => (Length / 2) + 1;

    /// <summary>The transform X of x.</summary>
    /// <param name="x">The sequence, n numbers.</param>
    /// <param name="re">Receives the real parts of X_0 to X_{n/2}; as many as <see cref="Bins"/>, no memory shared with x.</param>
    /// <param name="im">Receives the imaginary parts; as many, no memory shared with x.</param>
    /// <exception cref="ArgumentException">A span has another length, or input and output overlap.</exception>
    public void Forward(ReadOnlySpan<double> x, Span<double> re, Span<double> im)
    {
        if (x.Length != Length)
        {
            throw Guard.Refused(nameof(x), FormattableString.Invariant($"{x.Length} numbers are given; the transform has {Length} points."));
        }

        if (re.Length != Bins || im.Length != Bins)
        {
            throw Guard.Refused(re.Length != Bins ? nameof(re) : nameof(im), FormattableString.Invariant($"The transform has {Bins} bins; re holds {re.Length} numbers and im {im.Length}."));
        }

        if (re.Overlaps(x) || im.Overlaps(x) || re.Overlaps(im))
        {
            throw Guard.Refused(nameof(re), "Input and output share memory; they must not.");
        }

        if (Length % 2 == 0)
        {
            _inner.TransformPairs(x, re, im);
            Unfold(re, im);
        }
        else
        {
            Whole(x, re, im);
        }
    }

    /// <summary>An odd length is transformed as it is.</summary>
    private void Whole(ReadOnlySpan<double> x, Span<double> re, Span<double> im)
    {
        double[] allRe = new double[Length], allIm = new double[Length];
        _inner.Transform(x, new double[Length], allRe, allIm);
        allRe.AsSpan(0, Bins).CopyTo(re);
        allIm.AsSpan(0, Bins).CopyTo(im);
    }

    /// <summary>E_k and O_k from Z_k and Z_{n/2−k}, in place: both bins of a pair at once.</summary>
    private void Unfold(Span<double> re, Span<double> im)
    {
        int half = Length / 2;
        (re[half], im[half]) = (re[0] - im[0], 0);
        (re[0], im[0]) = (re[0] + im[0], 0);
        for (int k = 1; 2 * k <= half; k++)
        {
            int m = half - k;
            double evenRe = 0.5 * (re[k] + re[m]), evenIm = 0.5 * (im[k] - im[m]);
            double oddRe = 0.5 * (im[k] + im[m]), oddIm = 0.5 * (re[m] - re[k]);
            double turnedRe = (oddRe * _cosine[k]) + (oddIm * _sine[k]), turnedIm = (oddIm * _cosine[k]) - (oddRe * _sine[k]);
            (re[m], im[m]) = (evenRe - turnedRe, turnedIm - evenIm);
            (re[k], im[k]) = (evenRe + turnedRe, evenIm + turnedIm);
        }
    }
}
