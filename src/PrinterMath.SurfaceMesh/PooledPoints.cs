using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>Points with those of one place averaged, weighted by 1/u² where uncertainties are known, else by their number.</summary>
internal sealed class PooledPoints
{
    private PooledPoints(double[] x, double[] y, double[] z, double[] weights, int repeated, int readings)
    {
        X = x;
        Y = y;
        Z = z;
        Weights = weights;
        RepeatedPlaces = repeated;
        RepeatedReadings = readings;
    }

    internal double[] X { get; }

    internal double[] Y { get; }

    internal double[] Z { get; }

    /// <summary>1/u² in 1/m², or the number of readings.</summary>
    internal double[] Weights { get; }

    internal int RepeatedPlaces { get; }

    internal int RepeatedReadings { get; }

    internal int Count => X.Length;

    internal static PooledPoints Of(ProbePoint[] points, PointNoise? noise)
    {
        IGrouping<(double X, double Y), int>[] places = [.. Enumerable.Range(0, points.Length).GroupBy(i => (points[i].XMeters, points[i].YMeters))];
        double Weight(int i) => noise is null ? 1 : 1 / (noise.StandardUncertainties[i] * noise.StandardUncertainties[i]);
        double[] weights = [.. places.Select(place => place.Sum(Weight))];
        return new PooledPoints(
            [.. places.Select(place => place.Key.X)],
            [.. places.Select(place => place.Key.Y)],
            [.. places.Select((place, k) => place.Sum(i => Weight(i) * points[i].ZMeters) / weights[k])],
            weights,
            places.Count(place => place.Count() > 1),
            places.Where(place => place.Count() > 1).Sum(place => place.Count()));
    }
}
