using System.Diagnostics;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>Discrete prolate spheroidal (Slepian) sequences: the orthonormal tapers of N samples that keep most of their energy within a band from −W to W.</summary>
/// <remarks>
/// Eigenvectors of the tridiagonal matrix with diagonal ((N − 1)/2 − i)²·cos 2πW and off-diagonal i·(N − i)/2. It is taken apart here into (N² − 1)/4 − (L + D), with L the Laplacian of a chain of weights i·(N − i)/2
/// and D = 2·sin²(πW)·((N − 1)/2 − i)²: the small eigenvalues of L + D, and their vectors by a twisted factorization, keep their digits however long the tapers are. Tapers of even index are symmetric with a
/// positive mean; of odd index antisymmetric with a positive first half.
/// Source: D. Slepian, 1978, "Prolate spheroidal wave functions, Fourier analysis, and uncertainty V", Bell Syst. Tech. J. 57(5), 1371-1430, equation (14) (number from memory); differential and twisted
/// factorizations: B. N. Parlett, I. S. Dhillon, 2000, Linear Algebra Appl. 309, 121-151 (from memory).
/// </remarks>
/// <example><code>SlepianTapers tapers = SlepianTapers.Of(length: 512, timeBandwidth: 4, count: 7);</code></example>
[DebuggerDisplay("{Count} tapers of {Length} samples, NW {TimeBandwidth}")]
public sealed class SlepianTapers
{
    private readonly double[][] _tapers;
    private readonly double[] _concentrations;

    private SlepianTapers(double[][] tapers, double timeBandwidth)
    {
        _tapers = tapers;
        TimeBandwidth = timeBandwidth;
        double halfBandwidth = timeBandwidth / tapers[0].Length;
        _concentrations = [.. tapers.Select(taper => Concentration(taper, halfBandwidth))];
    }

    /// <summary>Number of tapers K.</summary>
    public int Count => _tapers.Length;

    /// <summary>Number of samples N.</summary>
    public int Length => _tapers[0].Length;

    /// <summary>N·W, with W in cycles per sample.</summary>
    public double TimeBandwidth { get; }

    /// <summary>Share of each taper's energy within ±W, falling with the index: near 1 for the first 2·NW − 1.</summary>
    public ReadOnlySpan<double> Concentrations => _concentrations;

    /// <summary>Tapers.</summary>
    /// <param name="length">Number of samples N, 8 to 4 194 304.</param>
    /// <param name="timeBandwidth">N·W, at least 1, at most 64 and less than a quarter of the length.</param>
    /// <param name="count">Number of tapers, 1 to 2·NW.</param>
    /// <returns>The tapers.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static SlepianTapers Of(int length, double timeBandwidth, int count)
    {
        Guard.Between(length, 8, 1 << 22);
        Guard.Between(timeBandwidth, 1, Math.Min(64, length / 4.0));
        Guard.Between(count, 1, 2 * timeBandwidth);
        var chain = new SlepianChain(length, timeBandwidth / length);
        return new SlepianTapers([.. Enumerable.Range(0, count).Select(chain.Vector)], timeBandwidth);
    }

    /// <summary>One taper, Σw² = 1.</summary>
    /// <param name="index">Which, from 0, the best concentrated one.</param>
    /// <returns>Its samples.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public ReadOnlySpan<double> Taper(int index)
    {
        Guard.Between(index, 0, Count - 1);
        return _tapers[index];
    }

    /// <summary>Σ over lags of the taper's autocorrelation times sin(2πW·lag)/(π·lag), by way of the spectrum.</summary>
    private static double Concentration(double[] taper, double halfBandwidth)
    {
        var transform = new RealFourierTransform(2 * taper.Length);
        double[] padded = new double[transform.Length], re = new double[transform.Bins], im = new double[transform.Bins], kernel = new double[transform.Bins], none = new double[transform.Bins];
        taper.CopyTo(padded, 0);
        transform.Forward(padded, re, im);
        padded[0] = 2 * halfBandwidth;
        for (int lag = 1; lag < taper.Length; lag++)
        {
            padded[lag] = padded[^lag] = Math.Sin(2 * Math.PI * halfBandwidth * lag) / (Math.PI * lag);
        }

        padded[taper.Length] = 0;
        transform.Forward(padded, kernel, none);
        double sum = 0;
        for (int k = 0; k < re.Length; k++)
        {
            bool unpaired = k == 0 || k == re.Length - 1;
            sum += (unpaired ? 1 : 2) * kernel[k] * ((re[k] * re[k]) + (im[k] * im[k]));
        }

        return Math.Clamp(sum / transform.Length, 0, 1);
    }
}
