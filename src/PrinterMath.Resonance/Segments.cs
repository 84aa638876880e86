using System.Numerics;
using PrinterMath.Measurement;

namespace PrinterMath.Resonance;

/// <summary>The windowed, detrended segments of a signal and their transforms, as Welch averages them.</summary>
internal sealed class Segments
{
    private const int MostCorrelated = 6;
    private readonly Detrending _detrend;
    private readonly RealFourierTransform _transform;

    private Segments(WindowProperties window, int step, int count, Detrending detrend)
    {
        Window = window;
        Step = step;
        Count = count;
        _detrend = detrend;
        _transform = new RealFourierTransform(window.Length);
    }

    internal WindowProperties Window { get; }

    internal int Step { get; }

    internal int Count { get; }

    internal int Bins => _transform.Bins;

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

    /// <summary>Correlation of densities, and of responses, 0, 1, 2 ... lines apart: Σ over pairs of segments of |Σ w(n)·w(n + shift)·e^(−2πi·lines·n/N)|², relative to no lines apart.</summary>
    internal double[] LineCorrelations()
    {
        double[] correlation = new double[MostCorrelated + 1];
        ReadOnlySpan<double> w = Window.Samples;
        int n = w.Length;
        for (int lines = 0; lines < correlation.Length; lines++)
        {
            for (int j = 0; j < Count && j * Step < n; j++)
            {
                double re = 0, im = 0;
                for (int i = 0; i + (j * Step) < n; i++)
                {
                    (double sin, double cos) = Math.SinCos(2 * Math.PI * lines * i / n);
                    double product = w[i] * w[i + (j * Step)];
                    re += product * cos;
                    im -= product * sin;
                }

                correlation[lines] += (j == 0 ? 1 : 2 * (1 - ((double)j / Count))) * ((re * re) + (im * im));
            }
        }

        return [.. correlation.Select(c => c / correlation[0])];
    }

    /// <summary>Transform of one segment, detrended and windowed.</summary>
    internal void Transform(ReadOnlySpan<double> samples, int index, SegmentSpectrum spectrum)
    {
        ReadOnlySpan<double> segment = samples.Slice(index * Step, Window.Length);
        (double level, double slope) = Trend.Of(segment, _detrend);
        Fade(segment, level, slope, spectrum.Windowed);
        _transform.Forward(spectrum.Windowed, spectrum.Re, spectrum.Im);
    }

    /// <summary>Turns sums over the segments into one-sided densities: 2/(rate·Σw²·K), half of it where a bin has no mirror image.</summary>
    internal void Scale(Span<double> sums, double rateHertz)
    {
        double scale = 1 / (rateHertz * Window.SumOfSquares * Count);
        for (int i = 0; i < sums.Length; i++)
        {
            sums[i] *= i == 0 || 2 * i == Window.Length ? scale : 2 * scale;
        }
    }

    internal SegmentSpectrum Workspace() => new(Window.Length, Bins);

    private void Fade(ReadOnlySpan<double> segment, double level, double slope, Span<double> faded)
    {
        ReadOnlySpan<double> window = Window.Samples;
        int i = 0;
        for (int lanes = Vector<double>.Count; slope == 0 && i + lanes <= faded.Length; i += lanes)
        {
            (new Vector<double>(window[i..]) * (new Vector<double>(segment[i..]) - new Vector<double>(level))).CopyTo(faded[i..]);
        }

        for (; i < faded.Length; i++)
        {
            faded[i] = window[i] * (segment[i] - level - (slope * i));
        }
    }
}
