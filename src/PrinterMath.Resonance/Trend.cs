using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>Mean or least-squares line of samples: level + slope·index.</summary>
internal static class Trend
{
    internal static (double Level, double Slope) Of(ReadOnlySpan<double> samples, Detrending detrend)
    {
        if (detrend == Detrending.None)
        {
            return (0, 0);
        }

        double mean = Sum(samples) / samples.Length;
        if (detrend == Detrending.Mean)
        {
            return (mean, 0);
        }

        double middle = (samples.Length - 1) / 2.0;
        double product = 0, spread = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            product += (i - middle) * (samples[i] - mean);
            spread += (i - middle) * (i - middle);
        }

        double slope = product / spread;
        return (mean - (slope * middle), slope);
    }

    private static double Sum(ReadOnlySpan<double> values)
    {
        Vector<double> lanes = Vector<double>.Zero;
        int i = 0;
        for (; i + Vector<double>.Count <= values.Length; i += Vector<double>.Count)
        {
            lanes += new Vector<double>(values[i..]);
        }

        double sum = Vector.Sum(lanes);
        for (; i < values.Length; i++)
        {
            sum += values[i];
        }

        return sum;
    }
}
