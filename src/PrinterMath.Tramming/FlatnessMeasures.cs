using System.Numerics;

namespace PrinterMath.Tramming;

/// <summary>Measures of residuals about the least-squares plane, and the points that each of them rests on.</summary>
internal static class FlatnessMeasures
{
    internal static double PeakToValley(ReadOnlySpan<double> residuals)
    {
        var extremes = LowestHighest.Nothing;
        for (int first = 0; first < residuals.Length; first += LowestHighest.Block)
        {
            extremes.Take(residuals.Slice(first, Math.Min(LowestHighest.Block, residuals.Length - first)), first);
        }

        return extremes.Highest - extremes.Lowest;
    }

    internal static double PeakToValley(double[] residuals) => PeakToValley(residuals.AsSpan());

    internal static double RootMeanSquare(double[] residuals)
    {
        double sum = 0;
        foreach (double r in residuals)
        {
            sum += r * r;
        }

        return Math.Sqrt(sum / residuals.Length);
    }

    /// <summary>Sums e + k·s.</summary>
    internal static void Add(ReadOnlySpan<double> noise, double size, ReadOnlySpan<double> shape, Span<double> sums)
    {
        int vectors = noise.Length - (noise.Length % Vector<double>.Count);
        for (int i = 0; i < vectors; i += Vector<double>.Count)
        {
            (new Vector<double>(noise[i..]) + (size * new Vector<double>(shape[i..]))).CopyTo(sums[i..]);
        }

        for (int i = vectors; i < noise.Length; i++)
        {
            sums[i] = noise[i] + (size * shape[i]);
        }
    }

    internal static double ZoneWidth(double[] residuals, MinimaxPlane zone)
    {
        zone.Solve(residuals);
        return 2 * zone.HalfWidth;
    }

    /// <summary>One at the highest point, minus one at the lowest, zero elsewhere.</summary>
    internal static double[] Extremes(double[] residuals)
    {
        double[] shape = new double[residuals.Length];
        shape[Array.IndexOf(residuals, residuals.Max())] = 1;
        shape[Array.IndexOf(residuals, residuals.Min())] -= 1;
        return shape;
    }

    /// <summary>One above the middle of the range, minus one below.</summary>
    internal static double[] Plateaus(double[] residuals)
    {
        double middle = (residuals.Max() + residuals.Min()) / 2;
        return [.. residuals.Select(r => r >= middle ? 1.0 : -1.0)];
    }

    /// <summary>One at the points that pin the upper limit of the zone, minus one at those of the lower, zero elsewhere.</summary>
    internal static double[] Pins(double[] residuals, MinimaxPlane zone)
    {
        zone.Solve(residuals);
        double[] shape = new double[residuals.Length];
        for (int k = 0; k < zone.Reference.Length; k++)
        {
            if (zone.Levels[k] > 1e-9)
            {
                shape[zone.Reference[k]] = zone.Signs[k];
            }
        }

        return shape;
    }
}
