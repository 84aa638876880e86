using System.Numerics;

namespace PrinterMath.Tension;

/// <summary>Fits a decaying sinusoid to each partial that was followed: its frequency, decay and amplitude with the uncertainty that noise leaves.</summary>
/// <remarks>
/// <para>Under a block's taper a decaying sinusoid gives a geometric sequence of block amplitudes, D·e^(zj), z = (−α + iδ)·hop, α the decay rate and δ the
/// frequency less the one followed. D and z follow by complex Gauss-Newton, weighted by 1/(σ² + φ²·|D·e^(zj)|²); what the neighbours leak into the blocks has
/// a closed form and is taken off, in a few sweeps over all partials. φ, the misfit of a partial that beats or glides, is raised until the residuals are as large as expected, so
/// that a clean pluck is weighed by its noise and a crooked one evenly over its length.</para>
/// <para>Source: DerSimonian and Laird 1986, Meta-analysis in clinical trials, Controlled Clinical Trials 7, for the moment estimate of φ² (from memory).</para>
/// </remarks>
internal sealed class DecayFit
{
    private const int Sweeps = 3;
    private const int Steps = 2;
    private const int Neighbours = 3;

    /// <summary>Variance that half-overlapping Hann blocks add by their correlation of 1/6 to either side.</summary>
    private const double Overlap = 4.0 / 3;

    private readonly PartialTracker _track;
    private readonly double[] _followed;
    private readonly double[] _noise;
    private readonly double _rate;
    private readonly int _half;
    private readonly Complex[] _amplitude;
    private readonly Complex[] _exponent;
    private readonly double[] _misfit;

    private DecayFit(PartialTracker track, double[] followed, double[] noise, double rate)
    {
        _track = track;
        _followed = followed;
        _noise = noise;
        _rate = rate;
        _half = (int)Math.Round(track.HopSeconds * rate);
        _amplitude = new Complex[followed.Length];
        _exponent = new Complex[followed.Length];
        _misfit = new double[followed.Length];
        Frequencies = [.. followed];
        Uncertainties = new double[followed.Length];
    }

    /// <summary>Fitted frequencies in Hz, in the order followed.</summary>
    internal double[] Frequencies { get; }

    /// <summary>Standard uncertainty of each frequency in Hz; 0 for a partial that did not let itself be fitted.</summary>
    internal double[] Uncertainties { get; }

    /// <param name="track">What was followed.</param>
    /// <param name="followed">Frequencies that were followed, in Hz.</param>
    /// <param name="noise">Mean |amplitude|² that noise leaves in a block, for each partial.</param>
    /// <param name="rate">Samples per second.</param>
    internal static DecayFit Of(PartialTracker track, double[] followed, double[] noise, double rate)
    {
        DecayFit fit = new(track, followed, noise, rate);
        if (track.Blocks < 4)
        {
            return fit;
        }

        Complex[] own = new Complex[track.Blocks];
        for (int p = 0; p < followed.Length; p++)
        {
            fit.Begin(p);
        }

        for (int sweep = 0; sweep < Sweeps; sweep++)
        {
            for (int p = 0; p < followed.Length; p++)
            {
                fit.WithoutNeighbours(p, own);
                fit.Improve(p, own, sweep == Sweeps - 1);
            }
        }

        return fit;
    }

    /// <summary>First guess: the ratio of successive blocks in the least-squares sense.</summary>
    private void Begin(int p)
    {
        Complex cross = 0;
        double power = 0;
        for (int j = 0; j + 1 < _track.Blocks; j++)
        {
            Complex a = _track.At(j, p);
            cross += _track.At(j + 1, p) * Complex.Conjugate(a);
            power += (a.Real * a.Real) + (a.Imaginary * a.Imaginary);
        }

        double ratio = Math.Clamp(cross.Magnitude / power, 0.05, 1);
        _exponent[p] = new Complex(Math.Log(ratio), cross.Phase);
        _amplitude[p] = _track.At(0, p);
    }

    private void WithoutNeighbours(int p, Complex[] own)
    {
        for (int j = 0; j < own.Length; j++)
        {
            own[j] = _track.At(j, p);
        }

        for (int m = Math.Max(0, p - Neighbours); m <= Math.Min(_followed.Length - 1, p + Neighbours); m++)
        {
            if (m == p || _amplitude[m] == Complex.Zero)
            {
                continue;
            }

            Complex beside = new(0, 2 * Math.PI * (_followed[m] - _followed[p]) / _rate), within = _exponent[m] / _half;
            Complex leak = _amplitude[m] * Response(within + beside) / Response(within), step = Complex.Exp(_exponent[m] + (beside * _half));
            for (int j = 0; j < own.Length; j++)
            {
                own[j] -= leak;
                leak *= step;
            }
        }
    }

    /// <summary>Σ w_i·e^(σi) over a Hann block.</summary>
    private Complex Response(Complex sigma)
    {
        Complex turn = new(0, Math.PI / _half), shift = Complex.Exp(turn / 2);
        return (0.5 * Sum(sigma)) - (0.25 * ((shift * Sum(sigma + turn)) + (Sum(sigma - turn) / shift)));
    }

    private Complex Sum(Complex sigma)
    {
        Complex ratio = Complex.Exp(sigma);
        return Complex.Abs(ratio - 1) < 1e-9 ? 2 * _half : (Complex.Exp(2 * _half * sigma) - 1) / (ratio - 1);
    }

    private void Improve(int p, Complex[] own, bool last)
    {
        Complex d = _amplitude[p], z = _exponent[p];
        double misfit = _misfit[p], variance = 0;
        for (int step = 0; step < Steps + (last ? 1 : 0); step++)
        {
            double s0 = 0, s1 = 0, s2 = 0, squares = 0, powers = 0;
            Complex t0 = 0, t1 = 0, grown = 1, q = Complex.Exp(z);
            for (int j = 0; j < own.Length; j++)
            {
                Complex r = own[j] - (d * grown);
                double size = (grown.Real * grown.Real) + (grown.Imaginary * grown.Imaginary);
                double power = size * ((d.Real * d.Real) + (d.Imaginary * d.Imaginary)), w = 1 / (_noise[p] + (misfit * power));
                Complex back = Complex.Conjugate(grown) * r;
                s0 += w * size;
                s1 += w * size * j;
                s2 += w * size * j * j;
                t0 += w * back;
                t1 += w * j * back;
                squares += w * ((r.Real * r.Real) + (r.Imaginary * r.Imaginary));
                powers += w * power;
                grown *= q;
            }

            double determinant = (s0 * s2) - (s1 * s1);
            if (!(determinant > 0) || !double.IsFinite(determinant))
            {
                return;
            }

            // Unknowns ΔD and D·Δz.
            Complex change = ((s0 * t1) - (s1 * t0)) / determinant;
            d += ((s2 * t0) - (s1 * t1)) / determinant;
            z += change / OrOne(d);
            z = new Complex(Math.Clamp(z.Real, -6, 0.2), z.Imaginary);
            misfit = Math.Max(0, misfit + ((squares - (own.Length - 2)) / powers));
            variance = s0 / determinant / ((d.Real * d.Real) + (d.Imaginary * d.Imaginary));
        }

        if (!double.IsFinite(z.Real) || Math.Abs(z.Imaginary) > Math.PI / 2)
        {
            _amplitude[p] = 0;
            return;
        }

        (_amplitude[p], _exponent[p], _misfit[p]) = (d, z, misfit);
        double hertz = _rate / (2 * Math.PI * _half);
        Frequencies[p] = _followed[p] + (z.Imaginary * hertz);
        Uncertainties[p] = Math.Sqrt(variance * Overlap / 2) * hertz;

        static Complex OrOne(Complex d) => d == Complex.Zero ? Complex.One : d;
    }
}
