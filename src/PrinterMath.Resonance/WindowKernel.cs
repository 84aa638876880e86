using System.Numerics;
using PrinterMath.Measurement;

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
    private readonly FourierTransform _transform;

    internal WindowKernel(WindowProperties window, double rate)
    {
        Length = window.Length;
        _lags = Autocorrelation(window);
        _scale = 4 / (rate * window.SumOfSquares);
        _transform = new FourierTransform(Length);
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
        var plain = new Line(Length);
        var lagged = new Line(Length);
        Complex step = Complex.Exp(new Complex(-decay, angle)), value = Complex.One;
        for (int lag = 0; lag < Length; lag++)
        {
            Complex windowed = value * (lag == 0 ? 0.5 * _lags[0] : _lags[lag]);
            (plain.Re[lag], plain.Im[lag]) = (windowed.Real, windowed.Imaginary);
            (lagged.Re[lag], lagged.Im[lag]) = (windowed.Real * lag, windowed.Imaginary * lag);
            value = (lag & 255) == 255 ? Complex.Exp(new Complex(-decay * (lag + 1), angle * (lag + 1))) : value * step;
        }

        Line plainLines = Transformed(plain), laggedLines = Transformed(lagged);
        for (int i = 0; i < even.Plain.Length; i++)
        {
            (even.Plain[i], odd.Plain[i]) = Halves(plainLines, first + i);
            (even.Lag[i], odd.Lag[i]) = Halves(laggedLines, first + i);
        }
    }

    private Line Transformed(Line line)
    {
        var transformed = new Line(Length);
        _transform.Forward(line.Re, line.Im, transformed.Re, transformed.Im);
        return transformed;
    }

    private (double Even, double Odd) Halves(Line transform, int line)
    {
        int mirror = Length - line;
        return (_scale * 0.5 * (transform.Re[line] + transform.Re[mirror]), _scale * 0.5 * (transform.Im[line] + transform.Im[mirror]));
    }

    /// <summary>Σ w_n·w_{n+lag}: the powers of the padded window, transformed back. They are real and even, so either transform does.</summary>
    internal static double[] Autocorrelation(WindowProperties window)
    {
        var padded = new RealFourierTransform(2 * window.Length);
        double[] samples = new double[padded.Length], re = new double[padded.Bins], im = new double[padded.Bins];
        window.Samples.CopyTo(samples);
        padded.Forward(samples, re, im);
        for (int k = 0; k < re.Length; k++)
        {
            double power = (re[k] * re[k]) + (im[k] * im[k]);
            (samples[k], samples[(padded.Length - k) % padded.Length]) = (power, power);
        }

        padded.Forward(samples, re, im);
        return [.. re.Take(window.Length).Select(sum => sum / padded.Length)];
    }

    private sealed record Line(double[] Re, double[] Im)
    {
        internal Line(int length)
            : this(new double[length], new double[length])
        {
        }
    }
}
