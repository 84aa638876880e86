using System.Diagnostics;
using System.Numerics;

namespace PrinterMath.Measurement;

/// <summary>Discrete Fourier transform of one length, X_k = Σ x_j·exp(−2πi·jk/n), prepared once and used often.</summary>
/// <remarks>
/// <para>Any length from 1 to 2²⁶, in n·log n steps; powers of two are the fastest. Nothing is scaled: a transform and its inverse multiply by n. Real and imaginary parts stand in spans of their own.</para>
/// <para>Safe for use by several threads at once. A length that is no power of two rents memory of some eight times its length during a call.</para>
/// Source: J. W. Cooley, J. W. Tukey 1965, Math. Comp. 19, 297-301; L. I. Bluestein 1970, IEEE Trans. Audio Electroacoust. 18(4), 451-455.
/// </remarks>
/// <example><code>
/// var transform = new FourierTransform(1024);
/// transform.Forward(re, im, spectrumRe, spectrumIm);
/// </code></example>
[DebuggerDisplay("{Length} points")]
public sealed class FourierTransform
{
    internal const int MostPoints = 1 << 26;
    private readonly PowerOfTwoFourier? _powerOfTwo;
    private readonly ChirpFourier? _chirp;

    /// <summary>Prepares a transform.</summary>
    /// <param name="length">Number of points n, from 1 to 2²⁶.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range.</exception>
    public FourierTransform(int length)
    {
        Length = (int)Guard.Between(length, 1, MostPoints);
        bool fast = length >= PowerOfTwoFourier.Least && BitOperations.IsPow2(length);
        _powerOfTwo = fast ? new PowerOfTwoFourier(length) : null;
        _chirp = fast ? null : new ChirpFourier(length);
    }

    /// <summary>Number of points n.</summary>
    public int Length { get; }

    /// <summary>The transform X of x.</summary>
    /// <param name="re">Real parts of x, n of them.</param>
    /// <param name="im">Imaginary parts of x, n of them.</param>
    /// <param name="toRe">Receives the real parts of X; n of them, no memory shared with x.</param>
    /// <param name="toIm">Receives the imaginary parts of X; n of them, no memory shared with x.</param>
    /// <exception cref="ArgumentException">A span has another length than n, or input and output overlap.</exception>
    public void Forward(ReadOnlySpan<double> re, ReadOnlySpan<double> im, Span<double> toRe, Span<double> toIm)
    {
        Check(re.Length, nameof(re));
        Check(im.Length, nameof(im));
        Check(toRe.Length, nameof(toRe));
        Check(toIm.Length, nameof(toIm));
        if (toRe.Overlaps(re) || toRe.Overlaps(im) || toIm.Overlaps(re) || toIm.Overlaps(im) || toRe.Overlaps(toIm))
        {
            throw Guard.Refused(nameof(toRe), "Input and output share memory; they must not.");
        }

        Transform(re, im, toRe, toIm);
    }

    /// <summary>The sum with the opposite sign in the exponent, x_j = Σ X_k·exp(+2πi·jk/n): n times the x that X came from.</summary>
    /// <param name="re">Real parts of X, n of them.</param>
    /// <param name="im">Imaginary parts of X, n of them.</param>
    /// <param name="toRe">Receives n times the real parts of x; no memory shared with X.</param>
    /// <param name="toIm">Receives n times the imaginary parts of x; no memory shared with X.</param>
    /// <exception cref="ArgumentException">A span has another length than n, or input and output overlap.</exception>
    public void Inverse(ReadOnlySpan<double> re, ReadOnlySpan<double> im, Span<double> toRe, Span<double> toIm) => Forward(im, re, toIm, toRe);

    /// <summary>Without checks; when n is a power of two from 4, lengths above n are allowed.</summary>
    internal void Transform(ReadOnlySpan<double> re, ReadOnlySpan<double> im, Span<double> toRe, Span<double> toIm)
    {
        if (_powerOfTwo is not null)
        {
            _powerOfTwo.Transform(re, im, toRe, toIm);
        }
        else
        {
            _chirp!.Transform(re, im, toRe, toIm);
        }
    }

    internal void TransformPairs(ReadOnlySpan<double> pairs, Span<double> toRe, Span<double> toIm)
    {
        if (_powerOfTwo is not null)
        {
            _powerOfTwo.TransformPairs(pairs, toRe, toIm);
            return;
        }

        for (int j = 0; j < Length; j++)
        {
            (toRe[j], toIm[j]) = (pairs[2 * j], pairs[(2 * j) + 1]);
        }

        _chirp!.Transform(toRe, toIm, toRe, toIm);
    }

    private void Check(int length, string name)
    {
        if (length != Length)
        {
            throw Guard.Refused(name, FormattableString.Invariant($"{length} numbers are given; the transform has {Length} points."));
        }
    }
}
