using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>Replaces each height by the mean of those within a radius: with less noise, and never with a wider range than the heights have.</summary>
internal sealed class LocalMeans
{
    /// <summary>Radii in typical spacings √(area/n): the point alone, then its neighbours, and two wider circles.</summary>
    private static readonly double[] Radii = [0, 1.6, 2.4, 3.7];

    private readonly int[][] _neighbours;

    private LocalMeans(int[][] neighbours) => _neighbours = neighbours;

    internal static LocalMeans[] Of(ProbePoint[] points)
    {
        SurfaceRectangle bounds = PointBounds.Of(points);
        double spacing = Math.Sqrt((bounds.RightMeters - bounds.LeftMeters) * (bounds.RearMeters - bounds.FrontMeters)) / Math.Max(1, Math.Sqrt(points.Length) - 1);
        return [.. Radii.Select(radius => new LocalMeans([.. points.Select((_, i) => Within(points, i, radius * spacing))]))];
    }

    internal double PeakToValley(ReadOnlySpan<double> heights)
    {
        double high = double.NegativeInfinity, low = double.PositiveInfinity;
        foreach (int[] members in _neighbours)
        {
            double sum = 0;
            foreach (int k in members)
            {
                sum += heights[k];
            }

            double mean = sum / members.Length;
            high = Math.Max(high, mean);
            low = Math.Min(low, mean);
        }

        return high - low;
    }

    private static int[] Within(ProbePoint[] points, int i, double radius) =>
        [.. Enumerable.Range(0, points.Length).Where(k =>
            k == i || double.Hypot(points[k].XMeters - points[i].XMeters, points[k].YMeters - points[i].YMeters) <= radius)];
}
