namespace PrinterMath.SurfaceMesh;

/// <summary>Readings as kriging takes them: places about their middle, heights, trend, and noise as variances or, where it is not known, as shares of it.</summary>
internal sealed class KrigingReadings
{
    private readonly PooledPoints _points;
    private readonly CovarianceShape _shape;

    internal KrigingReadings(PooledPoints points, SurfaceRectangle rectangle, CovarianceShape shape, KrigingTrend trend, bool noiseKnown)
    {
        _points = points;
        _shape = shape;
        NoiseKnown = noiseKnown;
        MiddleX = (rectangle.LeftMeters + rectangle.RightMeters) / 2;
        MiddleY = (rectangle.FrontMeters + rectangle.RearMeters) / 2;
        Longest = double.Hypot(rectangle.RightMeters - rectangle.LeftMeters, rectangle.RearMeters - rectangle.FrontMeters);
        Noise = [.. points.Weights.Select(weight => 1 / weight)];
        Trend = trend == KrigingTrend.Level
            ? [[.. points.X.Select(_ => 1.0)]]
            : [[.. points.X.Select(_ => 1.0)], [.. points.X.Select(x => (x - MiddleX) / Longest)], [.. points.Y.Select(y => (y - MiddleY) / Longest)]];
        Shortest = double.PositiveInfinity;
        for (int i = 0; i < points.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                Shortest = Math.Min(Shortest, double.Hypot(points.X[i] - points.X[j], points.Y[i] - points.Y[j]));
            }
        }

        Spread = Math.Max(About(points.Z), 1e-12);
    }

    internal bool NoiseKnown { get; }

    internal double MiddleX { get; }

    internal double MiddleY { get; }

    internal double Longest { get; }

    internal double Shortest { get; }

    /// <summary>Standard deviation about the trend.</summary>
    internal double Spread { get; }

    internal double[] Noise { get; }

    internal double[][] Trend { get; }

    internal double[] Z => _points.Z;

    internal double[] X => _points.X;

    internal double[] Y => _points.Y;

    internal int Count => _points.Count;

    /// <summary>Whether the places tell the coefficients of the trend apart.</summary>
    internal bool TellTheTrend { get; private set; }

    internal int Freedom => Count - Trend.Length;

    internal CovarianceShape Shape => _shape;

    /// <summary>Lower triangle of the correlations of the places.</summary>
    internal double[][] Correlations(double length)
    {
        double[][] rows = new double[Count][];
        for (int i = 0; i < rows.Length; i++)
        {
            rows[i] = new double[i + 1];
            for (int j = 0; j <= i; j++)
            {
                rows[i][j] = _shape.Value(Squared(X[i] - X[j], Y[i] - Y[j]), length);
            }
        }

        return rows;
    }

    internal static double Squared(double dx, double dy) => (dx * dx) + (dy * dy);

    private double About(double[] z)
    {
        double[] left = [.. z];
        List<double[]> basis = [];
        foreach (double[] column in Trend)
        {
            double[] own = [.. column];
            basis.ForEach(other => Remove(own, other));
            double norm = Math.Sqrt(PositiveDefinite.Dot(own, own));
            if (norm > 1e-9 * Math.Sqrt(Count))
            {
                basis.Add([.. own.Select(value => value / norm)]);
            }
        }

        TellTheTrend = basis.Count == Trend.Length;
        basis.ForEach(column => Remove(left, column));
        return Math.Sqrt(PositiveDefinite.Dot(left, left) / Math.Max(1, Freedom));
    }

    private static void Remove(double[] from, double[] column)
    {
        double part = PositiveDefinite.Dot(from, column);
        for (int i = 0; i < from.Length; i++)
        {
            from[i] -= part * column[i];
        }
    }
}
