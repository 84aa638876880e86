using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>Weighted least squares of z = a + b·x + c·y in the principal frame of the places.</summary>
internal static class PlaneEstimator
{
    private const int Coefficients = 3;

    /// <summary>Places nearer to one line than this fraction of their extent are one line to the arithmetic.</summary>
    private const double Rounding = 1e-9;

    internal static PlaneFit Fit(ProbePoint[] points, double repeatability, double placement, PlaneFitOptions options)
    {
        ProbeLimits.Check(points);
        bool widen = options.WidenForMisfit;
        var places = new Place[points.Length];
        int withUncertainty = 0;
        foreach (ProbePoint point in points)
        {
            withUncertainty += point.HasUncertainty ? 1 : 0;
        }

        bool stated = repeatability > 0 || withUncertainty == points.Length;
        for (int i = 0; i < places.Length; i++)
        {
            double u = !stated ? 1 : points[i].HasUncertainty ? points[i].StandardUncertaintyMeters : repeatability;
            places[i] = new Place(points[i].XMeters, points[i].YMeters, 1 / (u * u));
        }

        var axes = PrincipalAxes.Of(places);
        double limit = Math.Max(3 * placement, Rounding * axes.LongestAlong);
        if (axes.LongestAcross <= limit)
        {
            return PlaneFit.Blocked(points, PlaneFindings.Collinear(points.Length, axes.LongestAcross, limit));
        }

        if (options.Method != PlaneMethod.LeastSquares)
        {
            return RobustPlane.Fit(points, places, axes, stated, stated ? 0 : withUncertainty, options);
        }

        PlaneSolution plane = Solve(points, places, axes);
        var table = new PlaneResidual[points.Length];
        double squares = ResidualTable.Fill(table, points, places, plane);
        int degreesOfFreedom = points.Length - Coefficients;
        var noise = NoiseScale.Of(stated, widen, squares, degreesOfFreedom, LargestHeight(points));
        if (!noise.IsKnown)
        {
            return PlaneFit.Blocked(points, PlaneFindings.UncertaintyUnknown(points.Length));
        }

        plane = plane with { UnitVariance = noise.UnitVariance, DegreesOfFreedom = noise.DegreesOfFreedom };
        NoiseScale scatter = noise.IsMisfit ? NoiseScale.Of(stated, true, squares, degreesOfFreedom, 0) : noise;
        int outliers = ResidualTable.Standardise(table, places, scatter);
        Finding[] findings = Notices(points, table, noise, squares, outliers, stated ? 0 : withUncertainty, plane, degreesOfFreedom);
        return new PlaneFit(points, places, table, plane, new PlaneNoise(stated, widen, squares, points.Length), findings);
    }

    internal static Finding[] Notices(IReadOnlyList<ProbePoint> points, PlaneResidual[] table, NoiseScale noise, double squares, int outliers, int setAside, in PlaneSolution plane, int free)
    {
        bool level = !TiltSpread.IsTilted(plane.SlopeX, plane.SlopeY, plane.SlopeCovariance, plane.DegreesOfFreedom);
        Finding? units = UnitSuspicion.Of(plane, table);
        if (!noise.IsMisfit && outliers == 0 && setAside == 0 && !level && units is null)
        {
            return [];
        }

        Finding?[] all =
        [
            noise.IsMisfit ? PlaneFindings.Misfit(Math.Sqrt(squares / free), free) : null,
            outliers > 0 ? PlaneFindings.Outliers(points, table) : null,
            setAside > 0 ? PlaneFindings.Mixed(setAside, table.Length) : null,
            level ? PlaneFindings.Level() : null,
            units,
        ];
        return [.. all.OfType<Finding>()];
    }

    internal static double LargestHeight(ReadOnlySpan<ProbePoint> points)
    {
        double largest = 0;
        foreach (ProbePoint point in points)
        {
            largest = Math.Max(largest, Math.Abs(point.ZMeters));
        }

        return largest;
    }

    internal static PlaneSolution Solve(ReadOnlySpan<ProbePoint> points, ReadOnlySpan<Place> places, PrincipalAxes axes)
    {
        double shift = 0;
        for (int i = 0; i < places.Length; i++)
        {
            shift += places[i].Weight * (points[i].ZMeters - points[0].ZMeters);
        }

        double mean = points[0].ZMeters + (shift / axes.Weight);
        double along = 0, across = 0;
        for (int i = 0; i < places.Length; i++)
        {
            (double u, double v) = axes.Local(places[i].X, places[i].Y);
            double z = places[i].Weight * (points[i].ZMeters - mean);
            along += z * u;
            across += z * v;
        }

        return new PlaneSolution(axes, mean, along / axes.AlongMoment, across / axes.AcrossMoment, 0, 0);
    }
}
