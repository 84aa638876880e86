namespace PrinterMath.Tension;

/// <summary>Finds the significant peaks of a spectrum.</summary>
/// <remarks>
/// Threshold: noise bins have exponentially distributed power, so among K independent bins the largest passes m·ln(K/α) with probability α.
/// Interpolation: parabola through three points of the log spectrum; Source: Smith and Serra 1987, PARSHL (from memory).
/// </remarks>
internal static class PeakFinder
{
    private const double FalseAlarm = 0.01;
    private const double Cluster = 0.01;
    private const double DynamicRange = 1e-7;

    internal static List<SpectralPeak> Find(PluckSpectrum spectrum, double lowest, int atMost)
    {
        ReadOnlySpan<double> power = spectrum.Power;
        double independent = power.Length * spectrum.BinHertz / spectrum.Resolution;
        double threshold = Math.Log(Math.Max(2, independent) / FalseAlarm);
        int from = Math.Max(2, (int)(lowest / spectrum.BinHertz));
        int reach = Math.Max(1, (int)(1.5 * spectrum.Resolution / spectrum.BinHertz));
        double largest = 0;
        foreach (double value in power[Math.Min(from, power.Length)..])
        {
            largest = Math.Max(largest, value);
        }

        List<SpectralPeak> peaks = [];
        for (int k = from; k + 1 < power.Length; k++)
        {
            if (power[k] <= power[k - 1] || power[k] < power[k + 1] || power[k] < DynamicRange * largest)
            {
                continue;
            }

            double ratio = power[k] / spectrum.FloorAt(k);
            if (ratio > threshold && IsHighest(power, k, reach))
            {
                (double bin, double top) = Interpolate(power, k);
                peaks.Add(new SpectralPeak(bin * spectrum.BinHertz, top, 10 * Math.Log10(ratio / threshold), ratio));
            }
        }

        List<SpectralPeak> separate = [.. peaks.Where(p => !peaks.Exists(q => q.Power > p.Power && Math.Abs(q.Frequency - p.Frequency) < Cluster * p.Frequency))];
        return separate.Count <= atMost
            ? separate
            : [.. separate.OrderByDescending(p => p.Excess).Take(atMost).OrderBy(p => p.Frequency)];
    }

    private static bool IsHighest(ReadOnlySpan<double> power, int k, int reach)
    {
        for (int j = Math.Max(0, k - reach); j <= Math.Min(power.Length - 1, k + reach); j++)
        {
            if (power[j] > power[k])
            {
                return false;
            }
        }

        return true;
    }

    private static (double Bin, double Power) Interpolate(ReadOnlySpan<double> power, int k)
    {
        double a = Math.Log(Math.Max(power[k - 1], power[k] * 1e-12)), b = Math.Log(power[k]), c = Math.Log(Math.Max(power[k + 1], power[k] * 1e-12));
        double curvature = a - (2 * b) + c;
        double p = curvature < 0 ? Math.Clamp(0.5 * (a - c) / curvature, -0.5, 0.5) : 0;
        return (k + p, Math.Exp(b - (0.25 * (a - c) * p)));
    }
}
