using System.Numerics;

namespace PrinterMath.Tension;

/// <summary>Fits a decaying sinusoid to each partial that was followed: its frequency with the uncertainty that noise leaves.</summary>
/// <remarks>
/// <para>Under a block's taper a decaying sinusoid gives a geometric sequence of block amplitudes, D·e^(zj), z = (−α + iδ)·hop, α the decay rate and δ the
/// frequency less the one followed; a steady line beside it gives H·e^(iθj) with a known θ. D, z and H follow by complex Gauss-Newton; what neighbouring partials leak
/// into the blocks has a closed form and is taken off, in a few sweeps over all partials.</para>
/// <para>Weights are 1/(σ² + φ²·|D·e^(zj)|²): σ² is what is left in the weaker half of the blocks, φ, the misfit of a partial that beats or glides, is raised until the
/// residuals are as large as expected, so that a clean pluck is weighed by its noise and a crooked one evenly over its length.</para>
/// <para>Source: DerSimonian and Laird 1986, Meta-analysis in clinical trials, Controlled Clinical Trials 7, for the moment estimate of φ² (from memory).</para>
/// </remarks>
internal sealed class DecayFit
{
    private const int Sweeps = 4;
    private const int ExactSweeps = 2;
    private const int Steps = 2;
    private const int LastSteps = 4;
    private const int Neighbours = 3;
    private const int LeastBlocks = 5;

    /// <summary>Variance that half-overlapping Hann blocks add by their correlation of 1/6 to either side.</summary>
    private const double Overlap = 4.0 / 3;

    private readonly PartialTracker _track;
    private readonly double[] _followed;
    private readonly double _rate;
    private readonly int _half;
    private readonly BlockModel[] _models;

    private DecayFit(PartialTracker track, double[] followed, IReadOnlyList<double> steady, double rate)
    {
        _track = track;
        _followed = followed;
        _rate = rate;
        _half = (int)Math.Round(track.HopSeconds * rate);
        _models = new BlockModel[followed.Length];
        Frequencies = [.. followed];
        Uncertainties = new double[followed.Length];
        Noise = new double[followed.Length];
        Widths = new double[followed.Length];
        for (int p = 0; p < followed.Length; p++)
        {
            _models[p] = Begin(p, steady);
        }
    }

    /// <summary>Fitted frequencies in Hz, in the order followed.</summary>
    internal double[] Frequencies { get; }

    /// <summary>Standard uncertainty of each frequency in Hz; 0 for a partial that did not let itself be fitted.</summary>
    internal double[] Uncertainties { get; }

    /// <summary>Half-power bandwidth α/π of each partial in Hz; 0 for one that did not let itself be fitted.</summary>
    internal double[] Widths { get; }

    /// <summary>Mean |amplitude|² of the noise in a block of each partial.</summary>
    internal double[] Noise { get; }

    /// <param name="track">What was followed.</param>
    /// <param name="followed">Frequencies that were followed, in Hz.</param>
    /// <param name="steady">Frequencies of steady lines, in Hz.</param>
    /// <param name="rate">Samples per second.</param>
    internal static DecayFit Of(PartialTracker track, double[] followed, IReadOnlyList<double> steady, double rate)
    {
        DecayFit fit = new(track, followed, steady, rate);
        Complex[] own = new Complex[track.Blocks];
        for (int sweep = 0; sweep < Sweeps && track.Blocks >= LeastBlocks; sweep++)
        {
            for (int p = 0; p < followed.Length; p++)
            {
                fit.WithoutNeighbours(p, own);
                fit._models[p].Improve(own, sweep < ExactSweeps ? Steps : LastSteps, sweep >= ExactSweeps);
            }
        }

        fit.Conclude();
        return fit;
    }

    /// <summary>First guess: the ratio of successive blocks in the least-squares sense.</summary>
    private BlockModel Begin(int p, IReadOnlyList<double> steady)
    {
        Complex cross = 0;
        double power = 0, turn = double.NaN;
        for (int j = 0; j + 1 < _track.Blocks; j++)
        {
            Complex a = _track.At(j, p);
            cross += _track.At(j + 1, p) * Complex.Conjugate(a);
            power += (a.Real * a.Real) + (a.Imaginary * a.Imaginary);
        }

        foreach (double line in steady)
        {
            double away = line - _followed[p];
            turn = Math.Abs(away) < 1 / _track.HopSeconds ? 2 * Math.PI * away * _track.HopSeconds : turn;
        }

        double ratio = power > 0 ? Math.Clamp(cross.Magnitude / power, 0.05, 0.99) : 0.5;
        return new BlockModel(_track.Blocks > 0 ? _track.At(0, p) : 0, new Complex(Math.Log(ratio), double.IsNaN(turn) ? cross.Phase : 0), turn);
    }

    private void WithoutNeighbours(int p, Complex[] own)
    {
        for (int j = 0; j < own.Length; j++)
        {
            own[j] = _track.At(j, p);
        }

        for (int m = Math.Max(0, p - Neighbours); m <= Math.Min(_followed.Length - 1, p + Neighbours); m++)
        {
            BlockModel other = _models[m];
            if (m == p || !other.IsSound)
            {
                continue;
            }

            Complex beside = new(0, 2 * Math.PI * (_followed[m] - _followed[p]) / _rate), within = other.Exponent / _half;
            Complex leak = other.Amplitude * Response(within + beside) / Response(within), step = Complex.Exp(other.Exponent + (beside * _half));
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

    private void Conclude()
    {
        double hertz = _rate / (2 * Math.PI * _half);
        for (int p = 0; p < _models.Length; p++)
        {
            BlockModel model = _models[p];
            Noise[p] = model.Noise;
            if (model.IsSound && model.Variance > 0)
            {
                Frequencies[p] = _followed[p] + (model.Exponent.Imaginary * hertz);
                Widths[p] = -2 * model.Exponent.Real * hertz;
                Uncertainties[p] = Math.Sqrt(model.Variance * Overlap / 2) * hertz;
            }
        }
    }
}
