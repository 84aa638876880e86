using System.Numerics;

namespace PrinterMath.Tension;

/// <summary>Mean square of a recording in frames of 5 ms, and what the samples themselves say: mean, extremes, runs at the extremes.</summary>
internal sealed class PluckEnvelope
{
    internal const double FrameSeconds = 0.005;

    private PluckEnvelope(double[] meanSquares, int frameLength, double mean, double lowest, double highest)
    {
        MeanSquares = meanSquares;
        FrameLength = frameLength;
        Mean = mean;
        Lowest = lowest;
        Highest = highest;
    }

    internal double[] MeanSquares { get; }

    internal int FrameLength { get; }

    internal double Mean { get; }

    internal double Lowest { get; }

    internal double Highest { get; }

    internal int LoudestFrame => MeanSquares.Length == 0 ? 0 : Array.IndexOf(MeanSquares, MeanSquares.Max());

    internal static PluckEnvelope Of(ReadOnlySpan<double> samples, double rate)
    {
        (double sum, double lowest, double highest) = Extremes(samples);
        double mean = sum / samples.Length;
        int length = Math.Max(1, (int)Math.Round(FrameSeconds * rate));
        double[] squares = new double[samples.Length / length];
        for (int f = 0; f < squares.Length; f++)
        {
            double energy = SumOfSquares(samples.Slice(f * length, length), mean);
            squares[f] = energy / length;
        }

        return new PluckEnvelope(squares, length, mean, lowest, highest);
    }

    /// <summary>Samples that stand in a run of three or more at either extreme: a converter's or a recorder's limit.</summary>
    internal ClippedStretch Clipped(ReadOnlySpan<double> samples)
    {
        int clipped = 0, run = 0, place = -1;
        double last = double.NaN;
        double high = Highest - ((Highest - Lowest) * 1e-9), low = Lowest + ((Highest - Lowest) * 1e-9);
        Vector<double> highs = new(high), lows = new(low);
        for (int i = 0; i < samples.Length; i++)
        {
            while (i + Vector<double>.Count <= samples.Length && IsBetween(new Vector<double>(samples[i..]), lows, highs))
            {
                run = 0;
                i += Vector<double>.Count;
            }

            if (i == samples.Length)
            {
                break;
            }

            double sample = samples[i];
            if (sample < high && sample > low)
            {
                run = 0;
                continue;
            }

            run = run > 0 && sample >= high == last >= high ? run + 1 : 1;
            clipped += run == 3 ? 3 : run > 3 ? 1 : 0;
            place = run >= 3 ? i : place;
            last = sample;
        }

        return new ClippedStretch(clipped, place);
    }

    private static bool IsBetween(Vector<double> samples, Vector<double> lows, Vector<double> highs) =>
        Vector.LessThanAll(samples, highs) && Vector.GreaterThanAll(samples, lows);

    private static (double Sum, double Lowest, double Highest) Extremes(ReadOnlySpan<double> samples)
    {
        Vector<double> sums = Vector<double>.Zero, lows = new(samples[0]), highs = lows;
        int i = 0;
        for (int step = Vector<double>.Count; i + step <= samples.Length; i += step)
        {
            Vector<double> x = new(samples[i..]);
            sums += x;
            lows = Vector.Min(lows, x);
            highs = Vector.Max(highs, x);
        }

        double sum = Vector.Sum(sums), lowest = samples[0], highest = samples[0];
        for (int lane = 0; lane < Vector<double>.Count; lane++)
        {
            lowest = Math.Min(lowest, lows[lane]);
            highest = Math.Max(highest, highs[lane]);
        }

        for (; i < samples.Length; i++)
        {
            sum += samples[i];
            lowest = Math.Min(lowest, samples[i]);
            highest = Math.Max(highest, samples[i]);
        }

        return (sum, lowest, highest);
    }

    private static double SumOfSquares(ReadOnlySpan<double> samples, double mean)
    {
        Vector<double> sums = Vector<double>.Zero, origin = new(mean);
        int i = 0;
        for (int step = Vector<double>.Count; i + step <= samples.Length; i += step)
        {
            Vector<double> x = new Vector<double>(samples[i..]) - origin;
            sums += x * x;
        }

        double sum = Vector.Sum(sums);
        for (; i < samples.Length; i++)
        {
            sum += (samples[i] - mean) * (samples[i] - mean);
        }

        return sum;
    }
}
