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

    internal static PluckEnvelope Of(ReadOnlySpan<double> samples, double rate)
    {
        double sum = 0, lowest = samples[0], highest = samples[0];
        foreach (double sample in samples)
        {
            sum += sample;
            lowest = Math.Min(lowest, sample);
            highest = Math.Max(highest, sample);
        }

        double mean = sum / samples.Length;
        int length = Math.Max(1, (int)Math.Round(FrameSeconds * rate));
        double[] squares = new double[samples.Length / length];
        for (int f = 0; f < squares.Length; f++)
        {
            double energy = 0;
            foreach (double sample in samples.Slice(f * length, length))
            {
                energy += (sample - mean) * (sample - mean);
            }

            squares[f] = energy / length;
        }

        return new PluckEnvelope(squares, length, mean, lowest, highest);
    }

    /// <summary>Samples that stand in a run of three or more at either extreme: a converter's or a recorder's limit.</summary>
    internal int CountClipped(ReadOnlySpan<double> samples)
    {
        int clipped = 0, run = 0;
        double last = double.NaN;
        double tolerance = (Highest - Lowest) * 1e-9;
        foreach (double sample in samples)
        {
            bool atLimit = sample >= Highest - tolerance || sample <= Lowest + tolerance;
            run = atLimit && Math.Abs(sample - last) <= tolerance ? run + 1 : atLimit ? 1 : 0;
            clipped += run == 3 ? 3 : run > 3 ? 1 : 0;
            last = sample;
        }

        return clipped;
    }
}
