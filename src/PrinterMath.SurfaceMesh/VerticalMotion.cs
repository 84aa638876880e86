namespace PrinterMath.SurfaceMesh;

/// <summary>Slopes of the pieces of a move and their steps, and what follows from them for the Z axis.</summary>
internal sealed class VerticalMotion(IReadOnlyList<MoveSegment> segments)
{
    internal double Steepest => segments.Max(piece => Math.Abs(piece.Slope));

    internal double LargestStep => Enumerable.Range(0, segments.Count - 1).Select(k => Math.Abs(Step(k))).DefaultIfEmpty(0).Max();

    /// <summary>From piece k to the next.</summary>
    internal double Step(int k) => segments[k + 1].Slope - segments[k].Slope;

    internal ZAxisDemand At(double feed, double along)
    {
        double acceleration = along * Steepest;
        for (int k = 0; k + 1 < segments.Count; k++)
        {
            acceleration = Math.Max(acceleration, (feed * feed * Curvature(k)) + (along * SteeperAt(k)));
        }

        return new ZAxisDemand(feed, feed * Steepest, acceleration, feed * LargestStep);
    }

    internal FeedLimit Largest(ZAxisLimits limits, double along)
    {
        double acceleration = limits.MaximumAcceleration.MetersPerSecondSquared;
        var limit = new FeedLimit(double.PositiveInfinity, ZAxisLimitKind.Speed, 0);
        double feed = double.PositiveInfinity;
        for (int k = 0; k < segments.Count; k++)
        {
            double slope = Math.Abs(segments[k].Slope);
            Lower(limits.MaximumSpeed.MetersPerSecond / slope, ZAxisLimitKind.Speed, k);
            if (along * slope > acceleration)
            {
                Lower(0, ZAxisLimitKind.Acceleration, k);
            }

            if (k + 1 < segments.Count)
            {
                Lower(Math.Sqrt(Math.Max(0, acceleration - (along * SteeperAt(k))) / Curvature(k)), ZAxisLimitKind.Acceleration, k);
                Lower((limits.MaximumSpeedStep?.MetersPerSecond ?? double.PositiveInfinity) / Math.Abs(Step(k)), ZAxisLimitKind.SpeedStep, k);
            }
        }

        return limit;

        void Lower(double to, ZAxisLimitKind kind, int segment)
        {
            if (to < feed)
            {
                feed = to;
                limit = new FeedLimit(to, kind, segment);
            }
        }
    }

    /// <summary>Mean |z″| from the middle of piece k to that of the next.</summary>
    private double Curvature(int k) => 2 * Math.Abs(Step(k)) / (segments[k].LengthMeters + segments[k + 1].LengthMeters);

    private double SteeperAt(int k) => Math.Max(Math.Abs(segments[k].Slope), Math.Abs(segments[k + 1].Slope));
}
