using System.Numerics;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>The response K(p) = 1/(jω − p) of a pole at lines, and dK/dp; for lines estimated from segments as their window shows it.</summary>
/// <remarks>
/// The mean of an estimated response to a level, random input is the transform of the impulse response times the autocorrelation of the window, Σ e^(pn/rate)·r(n)·e^(−jωn/rate)/rate with half of the first
/// term: derived from E[S_ab] = Σ R_ab(n)·r(n)·e^(−jωn).
/// </remarks>
internal sealed class PoleSpectrum
{
    private readonly double[] _omegas;
    private readonly double[]? _lags;
    private readonly double _rate;
    private readonly int _first;
    private readonly FourierTransform? _transform;

    internal PoleSpectrum(double[] frequencies, PowerSpectrum? source)
    {
        _omegas = [.. frequencies.Select(hertz => 2 * Math.PI * hertz)];
        if (source is null)
        {
            return;
        }

        WindowProperties window = source.Segments.Window;
        _rate = source.SampleRateHertz;
        double[] products = WindowKernel.Autocorrelation(window);
        _lags = [.. products.Select(product => product / products[0])];
        _first = (int)Math.Round(frequencies[0] / source.ResolutionHertz);
        _transform = new FourierTransform(window.Length);
    }

    /// <summary>K and dK/dp of the pole, and both of its conjugate.</summary>
    internal void Evaluate(Complex pole, Values own, Values conjugate)
    {
        if (_lags is null)
        {
            Plain(pole, own);
            Plain(Complex.Conjugate(pole), conjugate);
            return;
        }

        (double[] re, double[] im, double[] lagRe, double[] lagIm) = Windowed(pole);
        int length = re.Length;
        for (int k = 0; k < _omegas.Length; k++)
        {
            int line = _first + k, mirror = (length - line) % length;
            own.Plain[k] = new Complex(re[line], im[line]);
            own.ByPole[k] = new Complex(lagRe[line], lagIm[line]);

            // The series of p* is the conjugate one of p, whose transform is the conjugate at the mirrored line.
            conjugate.Plain[k] = new Complex(re[mirror], -im[mirror]);
            conjugate.ByPole[k] = new Complex(lagRe[mirror], -lagIm[mirror]);
        }
    }

    private void Plain(Complex pole, Values values)
    {
        for (int k = 0; k < _omegas.Length; k++)
        {
            Complex inverse = 1 / (new Complex(0, _omegas[k]) - pole);
            values.Plain[k] = inverse;
            values.ByPole[k] = inverse * inverse;
        }
    }

    private (double[] Re, double[] Im, double[] LagRe, double[] LagIm) Windowed(Complex pole)
    {
        int length = _lags!.Length;
        double[] re = new double[length], im = new double[length], lagRe = new double[length], lagIm = new double[length];
        Complex step = Complex.Exp(pole / _rate), value = Complex.One;
        for (int n = 0; n < length; n++)
        {
            Complex term = value * ((n == 0 ? 0.5 : 1) * _lags[n] / _rate);
            (re[n], im[n]) = (term.Real, term.Imaginary);
            (lagRe[n], lagIm[n]) = (term.Real * n / _rate, term.Imaginary * n / _rate);
            value = (n & 255) == 255 ? Complex.Exp(pole * (n + 1) / _rate) : value * step;
        }

        double[] outRe = new double[length], outIm = new double[length], outLagRe = new double[length], outLagIm = new double[length];
        _transform!.Forward(re, im, outRe, outIm);
        _transform.Forward(lagRe, lagIm, outLagRe, outLagIm);
        return (outRe, outIm, outLagRe, outLagIm);
    }

    /// <summary>K and dK/dp at each line.</summary>
    internal sealed record Values(Complex[] Plain, Complex[] ByPole)
    {
        internal Values(int count)
            : this(new Complex[count], new Complex[count])
        {
        }
    }
}
