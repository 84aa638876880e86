using MathNet.Numerics.IntegralTransforms;

namespace PrinterMath.Resonance;

/// <summary>The windowed, detrended segments of a signal and their transforms, as Welch averages them.</summary>
internal sealed class Segments
{
    private readonly Detrending _detrend;

    private Segments(WindowProperties window, int step, int count, Detrending detrend)
    {
        Window = window;
        Step = step;
        Count = count;
        _detrend = detrend;
    }

    internal WindowProperties Window { get; }

    internal int Step { get; }

    internal int Count { get; }

    internal int Bins => (Window.Length / 2) + 1;

    internal static Segments Of(int samples, WelchOptions options)
    {
        int length = Guard.AtLeast(options.SegmentLength, 2, nameof(options));
        double overlap = options.Overlap is >= 0 and < 1 ? options.Overlap : throw Guard.Out(nameof(options), options.Overlap, "an overlap of at least 0 and less than 1");
        if (length > samples)
        {
            throw Guard.Out(nameof(options), length, FormattableString.Invariant($"a segment length of at most the {samples} samples of the signal"));
        }

        int step = length - (int)(overlap * length);
        return new Segments(
            WindowProperties.Of(options.Window, length),
            step,
            1 + ((samples - length) / step),
            Enum.IsDefined(options.Detrend) ? options.Detrend : throw Guard.Out(nameof(options), options.Detrend, "one of the named ways to detrend"));
    }

    /// <summary>K/(1 + 2·Σ(1 − j/K)·ρ²(j·step)): averages of independent segments that would scatter as little. Welch 1967.</summary>
    internal double EffectiveCount()
    {
        double sum = 1;
        for (int j = 1; j < Count && j * Step < Window.Length; j++)
        {
            double rho = Window.OverlapCorrelation(j * Step);
            sum += 2 * (1 - ((double)j / Count)) * rho * rho;
        }

        return Count / sum;
    }

    /// <summary>Spectrum of one segment as (re, im) pairs of the bins from 0 to half the rate.</summary>
    /// <param name="samples">The whole signal.</param>
    /// <param name="index">Which segment.</param>
    /// <param name="work">At least length + 2 numbers; on return holds 2·bins.</param>
    internal void Transform(ReadOnlySpan<double> samples, int index, double[] work)
    {
        int n = Window.Length;
        ReadOnlySpan<double> segment = samples.Slice(index * Step, n);
        (double level, double slope) = Trend(segment);
        ReadOnlySpan<double> window = Window.Samples;
        for (int i = 0; i < n; i++)
        {
            work[i] = window[i] * (segment[i] - level - (slope * i));
        }

        Fourier.ForwardReal(work, n, FourierOptions.NoScaling);
    }

    internal double[] Workspace() => new double[Window.Length + (Window.Length % 2 == 0 ? 2 : 1)];

    private (double Level, double Slope) Trend(ReadOnlySpan<double> segment)
    {
        if (_detrend == Detrending.None)
        {
            return (0, 0);
        }

        double mean = 0;
        foreach (double value in segment)
        {
            mean += value;
        }

        mean /= segment.Length;
        if (_detrend == Detrending.Mean)
        {
            return (mean, 0);
        }

        double middle = (segment.Length - 1) / 2.0;
        double product = 0, spread = 0;
        for (int i = 0; i < segment.Length; i++)
        {
            product += (i - middle) * (segment[i] - mean);
            spread += (i - middle) * (i - middle);
        }

        double slope = product / spread;
        return (mean - (slope * middle), slope);
    }
}
