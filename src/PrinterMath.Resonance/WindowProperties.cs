using System.Diagnostics;

namespace PrinterMath.Resonance;

/// <summary>A window of a certain length: its samples and the figures by which windows are compared.</summary>
/// <remarks>
/// With S₁ = Σw and S₂ = Σw²: coherent gain S₁/N, noise bandwidth N·S₂/S₁² bins, scalloping loss |W(½ bin)|/S₁.
/// Source: F. J. Harris, 1978, Proc. IEEE 66(1), 51-83, sections IV.A-D and table I.
/// </remarks>
/// <example><code>double bins = WindowProperties.Of(SpectralWindow.Hann, 2048).NoiseBandwidthBins; // 1.5</code></example>
[DebuggerDisplay("{Window}, {Length} samples")]
public sealed class WindowProperties
{
    private readonly double[] _samples;

    private WindowProperties(SpectralWindow window, double[] samples)
    {
        Window = window;
        _samples = samples;
        double sum = 0;
        foreach (double w in samples)
        {
            sum += w;
            SumOfSquares += w * w;
        }

        CoherentGain = sum / samples.Length;
        NoiseBandwidthBins = samples.Length * SumOfSquares / (sum * sum);
    }

    /// <summary>Which window.</summary>
    public SpectralWindow Window { get; }

    /// <summary>Number of samples N.</summary>
    public int Length => _samples.Length;

    /// <summary>The window's samples.</summary>
    public ReadOnlySpan<double> Samples => _samples;

    /// <summary>Mean of the window, a ratio: what a steady tone's amplitude is multiplied by.</summary>
    public double CoherentGain { get; }

    /// <summary>Equivalent noise bandwidth in bins of rate/N.</summary>
    public double NoiseBandwidthBins { get; }

    /// <summary>Ratio by which a tone midway between two bins reads low, from 0 to 1.</summary>
    public double ScallopingRatio
    {
        get
        {
            double re = 0, im = 0;
            for (int n = 0; n < _samples.Length; n++)
            {
                re += _samples[n] * Math.Cos(Math.PI * n / _samples.Length);
                im -= _samples[n] * Math.Sin(Math.PI * n / _samples.Length);
            }

            return Math.Sqrt((re * re) + (im * im)) / (CoherentGain * _samples.Length);
        }
    }

    internal double SumOfSquares { get; }

    /// <summary>A window.</summary>
    /// <param name="window">Which.</param>
    /// <param name="length">Number of samples, 2 or more.</param>
    /// <returns>The window.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The window is not one of those named or the length is below 2.</exception>
    public static WindowProperties Of(SpectralWindow window, int length)
    {
        Guard.AtLeast(length, 2);
        double[] terms = window switch
        {
            SpectralWindow.Rectangular => [1],
            SpectralWindow.Hann => [0.5, -0.5],
            SpectralWindow.Hamming => [0.54, -0.46],
            SpectralWindow.Blackman => [0.42, -0.5, 0.08],
            SpectralWindow.BlackmanHarris => [0.35875, -0.48829, 0.14128, -0.01168],
            _ => throw Guard.Out(nameof(window), window, "one of the named windows"),
        };
        double[] samples = new double[length];
        for (int n = 0; n < length; n++)
        {
            for (int k = 0; k < terms.Length; k++)
            {
                samples[n] += terms[k] * Math.Cos(2 * Math.PI * k * n / length);
            }
        }

        return new WindowProperties(window, samples);
    }

    /// <summary>Correlation of two segments of white noise that share a part of their samples, Σw(n)w(n + shift)/Σw².</summary>
    /// <param name="shift">Samples from the start of one segment to the start of the other, zero or more.</param>
    /// <returns>The correlation, a ratio; zero when nothing is shared.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The shift is negative.</exception>
    /// <remarks>Source: Harris 1978, equation (16) and columns "overlap correlation" of table I.</remarks>
    public double OverlapCorrelation(int shift)
    {
        Guard.AtLeast(shift, 0);
        double sum = 0;
        for (int n = 0; n + shift < _samples.Length; n++)
        {
            sum += _samples[n] * _samples[n + shift];
        }

        return sum / SumOfSquares;
    }
}
