namespace PrinterMath.Tramming;

/// <summary>Highest less lowest residual.</summary>
internal sealed class PeakToValleyMeasure : ConvexMeasure
{
    internal override double Of(double[] residuals) => FlatnessMeasures.PeakToValley(residuals);

    private protected override (double Value, double Slope) Along(double[] noise, double[] shape, double size)
    {
        Span<double> sums = stackalloc double[LowestHighest.Block];
        var extremes = LowestHighest.Nothing;
        for (int first = 0; first < noise.Length; first += LowestHighest.Block)
        {
            int count = Math.Min(LowestHighest.Block, noise.Length - first);
            FlatnessMeasures.Add(noise.AsSpan(first, count), size, shape.AsSpan(first, count), sums);
            extremes.Take(sums[..count], first);
        }

        return (extremes.Highest - extremes.Lowest, shape[extremes.HighestAt] - shape[extremes.LowestAt]);
    }
}
