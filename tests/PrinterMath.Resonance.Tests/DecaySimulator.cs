using System.Numerics;

namespace PrinterMath.Resonance.Tests;

/// <summary>Free decays stepped by their recurrence, and noise of several kinds. Shares no formula code with the package.</summary>
internal static class DecaySimulator
{
    /// <summary>x(n+1) = 2·r·cos(θ)·x(n) − r²·x(n−1), the sampled decay of one mode; starts at amplitude·cos(phase).</summary>
    internal static double[] Decay(int count, double rate, double hertz, double zeta, double amplitude, double phase)
    {
        double fade = Math.Exp(-zeta * 2 * Math.PI * hertz / rate);
        double turn = 2 * Math.PI * hertz * Math.Sqrt(1 - (zeta * zeta)) / rate;
        double[] x = new double[count];
        x[0] = amplitude * Math.Cos(phase);
        x[1] = amplitude * fade * Math.Cos(turn + phase);
        for (int n = 2; n < count; n++)
        {
            x[n] = (2 * fade * Math.Cos(turn) * x[n - 1]) - (fade * fade * x[n - 2]);
        }

        return x;
    }

    /// <summary>The decay of one mode at any times: the real part of amplitude·exp(pole·t).</summary>
    internal static double[] DecayAt(double[] times, double hertz, double zeta, double amplitude, double phase)
    {
        double omega = 2 * Math.PI * hertz;
        var pole = new Complex(-zeta * omega, omega * Math.Sqrt(1 - (zeta * zeta)));
        return [.. times.Select(t => (Complex.FromPolarCoordinates(amplitude, phase) * Complex.Exp(pole * t)).Real)];
    }

    /// <summary>Times off the beat by a normal share of the period, in order.</summary>
    internal static double[] OffBeat(int count, double rate, double share, int seed)
    {
        double[] off = Noise("white", count, seed);
        return [.. Enumerable.Range(0, count).Select(n => (n + (share * off[n])) / rate).Order()];
    }

    /// <summary>Noise of unit variance.</summary>
    internal static double[] Noise(string kind, int count, int seed)
    {
        var random = new Random(seed);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double state = Gauss();
        double Next() => kind switch
        {
            "white" => Gauss(),
            "Laplace" => (random.NextDouble() < 0.5 ? -1 : 1) * -Math.Log(1 - random.NextDouble()) / Math.Sqrt(2),
            _ => state = (0.7 * state) + (Math.Sqrt(1 - 0.49) * Gauss()),
        };
        double[] noise = new double[count];
        for (int n = 0; n < count; n++)
        {
            noise[n] = Next();
        }

        return noise;
    }

    internal static double[] Add(double[] signal, double[] noise, double scale) => [.. signal.Zip(noise, (s, e) => s + (scale * e))];
}
