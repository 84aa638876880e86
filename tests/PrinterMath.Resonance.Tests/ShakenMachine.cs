namespace PrinterMath.Resonance.Tests;

/// <summary>Modes under continuous white excitation, stepped exactly: the 2 × 2 transition and the Gaussian increment that keeps the stationary variance.</summary>
internal static class ShakenMachine
{
    /// <summary>Position of x″ + 2ζωx′ + ω²x = white noise, scaled to a root mean square; or its velocity over ω.</summary>
    internal static double[] Mode(int count, double rate, double hertz, double zeta, double rms, int seed, bool velocity = false)
    {
        var random = new Random(seed);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double w = 2 * Math.PI * hertz, dt = 1 / rate, wd = w * Math.Sqrt(1 - (zeta * zeta));
        double e = Math.Exp(-zeta * w * dt), c = Math.Cos(wd * dt), s = Math.Sin(wd * dt);

        // State (x, x′/ω): stationary covariance is the identity; increments have I − Φ·Φᵀ.
        double f11 = e * (c + (zeta * w / wd * s)), f12 = e * w / wd * s, f21 = -f12, f22 = e * (c - (zeta * w / wd * s));
        double q11 = 1 - (f11 * f11) - (f12 * f12), q12 = -(f11 * f21) - (f12 * f22), q22 = 1 - (f21 * f21) - (f22 * f22);
        double l11 = Math.Sqrt(Math.Max(0, q11)), l21 = l11 > 0 ? q12 / l11 : 0, l22 = Math.Sqrt(Math.Max(0, q22 - (l21 * l21)));
        double x = Gauss(), v = Gauss();
        double[] record = new double[count];
        for (int n = 0; n < count; n++)
        {
            record[n] = rms * (velocity ? v : x);
            double g1 = Gauss(), g2 = Gauss();
            (x, v) = ((f11 * x) + (f12 * v) + (l11 * g1), (f21 * x) + (f22 * v) + (l21 * g1) + (l22 * g2));
        }

        return record;
    }

    internal static double[] Tone(int count, double rate, double hertz, double amplitude, double phase) =>
        [.. Enumerable.Range(0, count).Select(n => amplitude * Math.Cos((2 * Math.PI * hertz * n / rate) + phase))];
}
