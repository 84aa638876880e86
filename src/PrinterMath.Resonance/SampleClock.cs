namespace PrinterMath.Resonance;

/// <summary>Uniform clock behind time stamps: t = start + period·n, with n counted across gaps.</summary>
internal sealed class SampleClock
{
    private const double NormalConsistency = 1.4826;
    private const int Passes = 20;

    private SampleClock(int[] places, double start, double period, double periodUncertainty, double jitter)
    {
        Places = places;
        Start = start;
        Period = period;
        PeriodUncertainty = periodUncertainty;
        Jitter = jitter;
    }

    /// <summary>Place n of each row in the count.</summary>
    internal int[] Places { get; }

    internal double Start { get; }

    internal double Period { get; }

    internal double PeriodUncertainty { get; }

    internal double Jitter { get; }

    /// <summary>Robust regression of time on count: Tukey's biweight at 4.685 standard deviations, scale from the median absolute deviation.</summary>
    internal static SampleClock Fit(ReadOnlySpan<double> times, bool countRows)
    {
        int[] places = new int[times.Length];
        double[] steps = new double[times.Length - 1];
        for (int i = 0; i < steps.Length; i++)
        {
            steps[i] = times[i + 1] - times[i];
        }

        double usual = Median((double[])steps.Clone());
        for (int i = 0; i < steps.Length; i++)
        {
            places[i + 1] = places[i] + (countRows ? 1 : Math.Max(1, (int)Math.Min(int.MaxValue / 2.0 / times.Length, Math.Round(steps[i] / usual))));
        }

        double period = (times[^1] - times[0]) / places[^1];
        double start = times[0];
        double[] weights = new double[times.Length];
        double[] residuals = new double[times.Length];
        Array.Fill(weights, 1);
        double uncertainty = 0;
        double scale = 0;
        for (int pass = 0; pass < Passes; pass++)
        {
            (start, period, double spread) = Line(times, places, weights);
            for (int i = 0; i < times.Length; i++)
            {
                residuals[i] = times[i] - start - (period * places[i]);
            }

            double middle = Median((double[])residuals.Clone());
            scale = NormalConsistency * Median([.. residuals.Select(r => Math.Abs(r - middle))]);
            uncertainty = scale / Math.Sqrt(spread);
            if (scale <= 1e-9 * period)
            {
                break;
            }

            for (int i = 0; i < times.Length; i++)
            {
                double u = (residuals[i] - middle) / (4.685 * scale);
                weights[i] = Math.Abs(u) < 1 ? (1 - (u * u)) * (1 - (u * u)) : 0;
            }
        }

        return new SampleClock(places, start, period, uncertainty, scale);
    }

    /// <summary>The median; sorts what it is given.</summary>
    internal static double Median(double[] values)
    {
        Array.Sort(values);
        int half = values.Length / 2;
        return values.Length % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
    }

    private static (double Start, double Slope, double Spread) Line(ReadOnlySpan<double> times, int[] places, double[] weights)
    {
        double sum = 0, meanPlace = 0, meanTime = 0;
        for (int i = 0; i < places.Length; i++)
        {
            sum += weights[i];
            meanPlace += weights[i] * places[i];
            meanTime += weights[i] * (times[i] - times[0]);
        }

        meanPlace /= sum;
        meanTime /= sum;
        double spread = 0, product = 0;
        for (int i = 0; i < places.Length; i++)
        {
            double d = places[i] - meanPlace;
            spread += weights[i] * d * d;
            product += weights[i] * d * (times[i] - times[0] - meanTime);
        }

        double slope = product / spread;
        return (times[0] + meanTime - (slope * meanPlace), slope, spread);
    }
}
