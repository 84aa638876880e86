namespace PrinterMath.SurfaceMesh.Tests;

/// <summary>What a split move is compared with: the model's own heights, densely, and the fewest chords by trying all. Shares no formula with the package.</summary>
internal sealed class MoveProfile(IHeightModel model, SurfacePosition from, SurfacePosition to)
{
    internal double Length { get; } = Math.Sqrt(Math.Pow(to.XMeters - from.XMeters, 2) + Math.Pow(to.YMeters - from.YMeters, 2));

    internal double Height(double share)
    {
        double x = from.XMeters + (share * (to.XMeters - from.XMeters)), y = from.YMeters + (share * (to.YMeters - from.YMeters));
        return model.EstimateAt(UnitsNet.Length.FromMeters(x), UnitsNet.Length.FromMeters(y)).Meters;
    }

    /// <summary>Largest distance of the heights from the chord between two shares of the way.</summary>
    internal double Deviation(double first, double last, int samples)
    {
        double a = Height(first), b = Height(last), largest = 0;
        for (int k = 1; k < samples; k++)
        {
            double u = (double)k / samples;
            largest = Math.Max(largest, Math.Abs(Height(first + (u * (last - first))) - a - (u * (b - a))));
        }

        return largest;
    }

    internal double Deviation(FollowedMove move, int samples)
    {
        double largest = 0, at = 0;
        foreach (MoveSegment piece in move.Segments)
        {
            double next = at + (piece.Length.Meters / Length);
            largest = Math.Max(largest, Deviation(at, Math.Min(1, next), samples));
            at = next;
        }

        return largest;
    }

    /// <summary>Fewest chords between candidates (shares of the way, 0 and 1 among them).</summary>
    internal int Fewest(double[] candidates, double tolerance, int samples)
    {
        int[] count = new int[candidates.Length];
        for (int b = 1; b < count.Length; b++)
        {
            count[b] = int.MaxValue;
            for (int a = 0; a < b; a++)
            {
                if (count[a] + 1 < count[b] && Deviation(candidates[a], candidates[b], samples) <= tolerance * (1 + 1e-9))
                {
                    count[b] = count[a] + 1;
                }
            }
        }

        return count[^1];
    }
}
