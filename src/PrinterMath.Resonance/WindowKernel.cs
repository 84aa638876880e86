using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace PrinterMath.Resonance;

/// <summary>Expected windowed spectra of e^((−a + iω)τ), from which those of all modes are put together.</summary>
/// <remarks>
/// The expected periodogram of a stationary process under a window is the transform of its autocorrelation times the window's: exact for leakage, finite
/// length and sampling. Source: A. M. Sykulski et al. 2019, "The debiased Whittle likelihood", Biometrika 106(2), 251-266, equation (9) (number from memory).
/// </remarks>
internal sealed class WindowKernel
{
    private readonly double[] _lags;
    private readonly double _scale;

    internal WindowKernel(WindowProperties window, double rate)
    {
        Length = window.Length;
        _lags = Autocorrelation(window);
        _scale = 4 / (rate * window.SumOfSquares);
    }

    internal int Length { get; }

    /// <summary>One-sided densities of cos(ωτ)·e^(−aτ) and sin(ω|τ|)·e^(−a|τ|), and of both times |τ|, at lines from <paramref name="first"/> on.</summary>
    /// <param name="decay">a per sample, zero for a tone.</param>
    /// <param name="angle">ω per sample.</param>
    /// <param name="first">First line.</param>
    /// <param name="even">cos kernel and, second, its |τ| multiple.</param>
    /// <param name="odd">sin kernel and, second, its |τ| multiple.</param>
    internal void Evaluate(double decay, double angle, int first, (double[] Plain, double[] Lag) even, (double[] Plain, double[] Lag) odd)
    {
        var plain = new Complex[Length];
        var lagged = new Complex[Length];
        Complex step = Complex.Exp(new Complex(-decay, angle)), value = Complex.One;
        for (int lag = 0; lag < Length; lag++)
        {
            plain[lag] = value * (lag == 0 ? 0.5 * _lags[0] : _lags[lag]);
            lagged[lag] = plain[lag] * lag;
            value = (lag & 255) == 255 ? Complex.Exp(new Complex(-decay * (lag + 1), angle * (lag + 1))) : value * step;
        }

        Fourier.Forward(plain, FourierOptions.NoScaling);
        Fourier.Forward(lagged, FourierOptions.NoScaling);
        for (int i = 0; i < even.Plain.Length; i++)
        {
            (even.Plain[i], odd.Plain[i]) = Halves(plain, first + i);
            (even.Lag[i], odd.Lag[i]) = Halves(lagged, first + i);
        }
    }

    private (double Even, double Odd) Halves(Complex[] transform, int line)
    {
        Complex right = transform[line], left = transform[Length - line];
        return (_scale * 0.5 * (right.Real + left.Real), _scale * 0.5 * (right.Imaginary + left.Imaginary));
    }

    private static double[] Autocorrelation(WindowProperties window)
    {
        var padded = new Complex[2 * window.Length];
        for (int n = 0; n < window.Length; n++)
        {
            padded[n] = window.Samples[n];
        }

        Fourier.Forward(padded, FourierOptions.NoScaling);
        for (int k = 0; k < padded.Length; k++)
        {
            padded[k] = padded[k].Real * padded[k].Real + padded[k].Imaginary * padded[k].Imaginary;
        }

        Fourier.Inverse(padded, FourierOptions.NoScaling);
        return [.. padded.Take(window.Length).Select(c => c.Real / padded.Length)];
    }
}
