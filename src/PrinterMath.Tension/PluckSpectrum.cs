using System.Buffers;
using System.Numerics;
using PrinterMath.Measurement;

namespace PrinterMath.Tension;

/// <summary>Tapered, zero-padded power spectrum of one pluck, with its noise floor over frequency. Its memory is rented: dispose of it.</summary>
internal sealed class PluckSpectrum : IDisposable
{
    private const double FloorQuantile = 0.35;

    private readonly double[] _power;
    private readonly int _bins;
    private readonly double[] _floor;
    private readonly int _floorStep;

    private PluckSpectrum(double[] power, int bins, double binHertz, double resolution, double[] floor, int floorStep)
    {
        _power = power;
        _bins = bins;
        BinHertz = binHertz;
        Resolution = resolution;
        _floor = floor;
        _floorStep = floorStep;
    }

    /// <summary>|X|² for bins up to the highest usable frequency.</summary>
    internal ReadOnlySpan<double> Power => _power.AsSpan(0, _bins);

    internal double BinHertz { get; }

    /// <summary>1/T of the window, in Hz; the taper's main lobe is four times as wide.</summary>
    internal double Resolution { get; }

    internal static PluckSpectrum Of(ReadOnlySpan<double> samples, double rate, double highest)
    {
        int size = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(1024, (samples.Length * 3) / 2));
        double bin = rate / size;
        double[] padded = ArrayPool<double>.Shared.Rent(size);
        padded.AsSpan(samples.Length, size - samples.Length).Clear();
        PluckTaper.Apply(samples, padded);
        int bins = Math.Min(size / 2, (int)(highest / bin) + 1);
        double[] power = ArrayPool<double>.Shared.Rent(bins);
        Powers(padded.AsSpan(0, size), power.AsSpan(0, bins));
        ArrayPool<double>.Shared.Return(padded);
        double resolution = rate / samples.Length * PluckTaper.NoiseBandwidth / 1.5;
        int step = Math.Max(8, (int)(Math.Max(50, 8 * resolution) / bin));
        return new PluckSpectrum(power, bins, bin, resolution, FloorOf(power.AsSpan(0, bins), step), step);
    }

    private static void Powers(ReadOnlySpan<double> x, Span<double> power)
    {
        var transform = new RealFourierTransform(x.Length);
        double[] rented = ArrayPool<double>.Shared.Rent(2 * transform.Bins);
        Span<double> re = rented.AsSpan(0, transform.Bins), im = rented.AsSpan(transform.Bins, transform.Bins);
        transform.Forward(x, re, im);
        for (int k = 0; k < power.Length; k++)
        {
            power[k] = (re[k] * re[k]) + (im[k] * im[k]);
        }

        ArrayPool<double>.Shared.Return(rented);
    }

    public void Dispose() => ArrayPool<double>.Shared.Return(_power);

    /// <summary>Mean noise power at a bin, interpolated between the places where it was estimated.</summary>
    internal double FloorAt(double bin)
    {
        double place = Math.Clamp((bin / _floorStep) - 0.5, 0, _floor.Length - 1);
        int left = Math.Min((int)place, _floor.Length - 1);
        int right = Math.Min(left + 1, _floor.Length - 1);
        return _floor[left] + ((place - left) * (_floor[right] - _floor[left]));
    }

    /// <summary>
    /// For exponentially distributed |X|² of mean m the p-quantile is −m·ln(1 − p); a low quantile is little moved by peaks. Each place takes
    /// the bins of itself and two neighbours on either side.
    /// </summary>
    private static double[] FloorOf(ReadOnlySpan<double> power, int step)
    {
        int places = Math.Max(1, power.Length / step);
        double[] floor = new double[places];
        double[] sample = new double[5 * step];
        double largest = 0;
        foreach (double value in power)
        {
            largest = Math.Max(largest, value);
        }

        for (int p = 0; p < places; p++)
        {
            int from = Math.Max(0, (p - 2) * step);
            int count = Math.Min(power.Length, (p + 3) * step) - from;
            int stride = Math.Max(1, count / 160);
            int kept = 0;
            for (int i = 0; i < count; i += stride)
            {
                sample[kept++] = power[from + i];
            }

            double low = OrderStatistic.Select(sample.AsSpan(0, kept), (int)(FloorQuantile * kept));
            floor[p] = Math.Max(low / -Math.Log(1 - FloorQuantile), largest * 1e-12);
        }

        return floor;
    }
}
