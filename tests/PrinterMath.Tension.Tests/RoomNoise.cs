using System.Numerics;

namespace PrinterMath.Tension.Tests;

/// <summary>White noise, or a sum of three low-passed noises whose density falls by about 10 dB per decade.</summary>
internal static class RoomNoise
{
    private static readonly double[] Corners = [20, 200, 2000];
    private static readonly double[] Weights = [1, 0.33, 0.11];

    internal static double[] Make(bool pink, int count, double rate, Random random)
    {
        double[] x = new double[count], states = new double[Corners.Length];
        for (int i = 0; i < count; i++)
        {
            double white = SimulatedSpan.Gauss(random);
            x[i] = pink ? 0.02 * white : white;
            for (int k = 0; k < Corners.Length && pink; k++)
            {
                states[k] += (white - states[k]) * Share(k, rate);
                x[i] += states[k] * Weights[k];
            }
        }

        return x;
    }

    /// <summary>One-sided density per hertz.</summary>
    internal static double Density(bool pink, double frequency, double rate)
    {
        Complex response = pink ? 0.02 : 1;
        Complex delay = Complex.Exp(-Complex.ImaginaryOne * 2 * Math.PI * frequency / rate);
        for (int k = 0; k < Corners.Length && pink; k++)
        {
            response += Weights[k] * Share(k, rate) / (1 - ((1 - Share(k, rate)) * delay));
        }

        return response.Magnitude * response.Magnitude * 2 / rate;
    }

    /// <summary>Mean square between 20 and 2000 Hz.</summary>
    internal static double Power(bool pink, double rate) => Enumerable.Range(0, 396).Sum(i => 5 * Density(pink, 22.5 + (5 * i), rate));

    private static double Share(int k, double rate) => 1 - Math.Exp(-2 * Math.PI * Corners[k] / rate);
}
