using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>Robust fits of a plane: the weights come from a robust regression, the plane and its covariance from least squares with those weights.</summary>
internal static class RobustPlane
{
    private const int Coefficients = 3;

    /// <summary>Variance of Huber's estimate over that of least squares for normal readings, k = 1.345.</summary>
    private const double HuberEfficiency = 0.95;

    /// <summary>Variance of a standard deviation over that of 1.4826 MAD, for normal readings: the share of the degrees of freedom that the latter has.</summary>
    private const double MedianEfficiency = 0.37;

    internal static PlaneFit Fit(ProbePoint[] points, Place[] places, PrincipalAxes axes, bool stated, int setAside, PlaneFitOptions options)
    {
        int n = points.Length;
        bool huber = options.Method == PlaneMethod.Huber;
        (double[] design, double[] response) = Design(points, places, axes);
        RobustWeights? robust = n == Coefficients
            ? null
            : huber
                ? HuberRegression.Fit(design, Coefficients, response, options.TuningConstant)
                : TrimmedRegression.Fit(design, Coefficients, response, options.Seed);
        double limit = Math.Max(3 * options.PlacementUncertainty.Meters, 1e-9 * axes.LongestAlong);
        if (robust is null && n > Coefficients)
        {
            return PlaneFit.Blocked(points, PlaneFindings.KeptCollinear((n + Coefficients + 1) / 2, n, 0, limit));
        }

        double[] weights = robust?.Weights ?? [.. Enumerable.Repeat(1.0, n)];
        double mean = huber ? weights.Sum() / n : 1;
        var weighted = new Place[n];
        for (int i = 0; i < n; i++)
        {
            weighted[i] = places[i] with { Weight = places[i].Weight * weights[i] / mean };
        }

        var frame = PrincipalAxes.Of(weighted);
        int kept = weights.Count(w => w > 0);
        double across = Enumerable.Range(0, n).Where(i => weights[i] > 0).Max(i => Math.Abs(frame.Local(places[i].X, places[i].Y).V));
        if (!(across > limit))
        {
            return PlaneFit.Blocked(points, PlaneFindings.KeptCollinear(kept, n, across, limit));
        }

        int readings = huber ? n : kept;
        PlaneSolution plane = PlaneEstimator.Solve(points, weighted, frame);
        var table = new PlaneResidual[n];
        double squares = ResidualTable.Fill(table, points, weighted, plane);
        int free = readings - Coefficients;
        double variance = robust?.Variance ?? (free > 0 ? squares / free : 0);
        var noise = NoiseScale.Of(stated, options.WidenForMisfit, variance * free, free, PlaneEstimator.LargestHeight(points));
        if (!noise.IsKnown)
        {
            return PlaneFit.Blocked(points, PlaneFindings.UncertaintyUnknown(kept));
        }

        double widening = huber && double.IsPositiveInfinity(noise.DegreesOfFreedom) ? 1 / HuberEfficiency : 1;
        plane = plane with { UnitVariance = noise.UnitVariance * widening, DegreesOfFreedom = noise.DegreesOfFreedom };
        double scale = double.IsPositiveInfinity(noise.DegreesOfFreedom) && !noise.IsMisfit ? 1 : huber ? robust?.Scale ?? 0 : Math.Sqrt(variance);
        double scaleFreedom = double.IsPositiveInfinity(noise.DegreesOfFreedom) && !noise.IsMisfit
            ? double.PositiveInfinity
            : huber ? Math.Max(1, MedianEfficiency * free) : free;
        int outliers = Standardise(table, places, weights, frame, scale, scaleFreedom);
        Finding[] findings = PlaneEstimator.Notices(points, table, noise, variance * free, outliers, setAside, plane, free);
        return new PlaneFit(points, weighted, table, plane, new PlaneNoise(stated, options.WidenForMisfit, variance * free, readings), findings);
    }

    /// <summary>Rows √w·(1, u, v) and √w·z in the principal frame, u and v over the longest extent.</summary>
    private static (double[] Design, double[] Response) Design(ProbePoint[] points, Place[] places, PrincipalAxes axes)
    {
        double[] design = new double[points.Length * Coefficients];
        double[] response = new double[points.Length];
        for (int i = 0; i < points.Length; i++)
        {
            double root = Math.Sqrt(places[i].Weight);
            (double u, double v) = axes.Local(places[i].X, places[i].Y);
            design[Coefficients * i] = root;
            design[(Coefficients * i) + 1] = root * u / axes.LongestAlong;
            design[(Coefficients * i) + 2] = root * v / axes.LongestAcross;
            response[i] = root * (points[i].ZMeters - points[0].ZMeters);
        }

        return (design, response);
    }

    private static int Standardise(PlaneResidual[] table, Place[] places, double[] weights, PrincipalAxes frame, double scale, double degreesOfFreedom)
    {
        int outliers = 0;
        for (int i = 0; i < table.Length; i++)
        {
            double influence = Math.Min(1, places[i].Weight * frame.Influence(places[i].X, places[i].Y, places[i].X, places[i].Y));
            double free = weights[i] > 0 ? 1 - (weights[i] * influence) : 1 + influence;
            if (free < 1e-9 || scale == 0)
            {
                table[i] = table[i] with { RobustnessWeight = weights[i] };
                continue;
            }

            double standardised = table[i].SiValue * Math.Sqrt(places[i].Weight) / (scale * Math.Sqrt(free));
            bool outlier = degreesOfFreedom >= 1 && TwoSidedTest.ProbabilityBeyond(standardised, degreesOfFreedom) < TwoSidedTest.Risk / table.Length;
            outliers += outlier ? 1 : 0;
            table[i] = table[i] with { Standardised = standardised, IsOutlier = outlier, RobustnessWeight = weights[i] };
        }

        return outliers;
    }
}
