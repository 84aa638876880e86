using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>
/// Points as the zone searches want them: places in their principal frame over their longest extents, heights less the unweighted least-squares plane over the largest of them.
/// </summary>
internal sealed class ZoneFrame
{
    private const double Rounding = 1e-9;

    private ZoneFrame(PrincipalAxes axes, PlaneSolution plane, double[] u, double[] v, double[] r, double scale)
    {
        Axes = axes;
        Plane = plane;
        U = u;
        V = v;
        R = r;
        Scale = scale;
    }

    internal PrincipalAxes Axes { get; }

    internal PlaneSolution Plane { get; }

    internal double[] U { get; }

    internal double[] V { get; }

    /// <summary>Residuals over <see cref="Scale"/>, from −1 to 1.</summary>
    internal double[] R { get; }

    /// <summary>Largest residual in metres; zero when all points lie in one plane.</summary>
    internal double Scale { get; }

    /// <summary>The frame, or the finding that the points lie in one line.</summary>
    internal static ZoneFrame? Of(ProbePoint[] points, double placement, out Finding? blocking)
    {
        ProbeLimits.Check(points);
        int n = points.Length;
        var places = new Place[n];
        for (int i = 0; i < n; i++)
        {
            places[i] = new Place(points[i].XMeters, points[i].YMeters, 1);
        }

        var axes = PrincipalAxes.Of(places);
        double limit = Math.Max(3 * placement, Rounding * axes.LongestAlong);
        if (axes.LongestAcross <= limit)
        {
            blocking = PlaneFindings.Collinear(n, axes.LongestAcross, limit);
            return null;
        }

        blocking = null;
        PlaneSolution plane = PlaneEstimator.Solve(points, places, axes);
        double[] u = new double[n], v = new double[n], r = new double[n];
        double scale = 0;
        for (int i = 0; i < n; i++)
        {
            (double along, double across) = axes.Local(places[i].X, places[i].Y);
            u[i] = along / axes.LongestAlong;
            v[i] = across / axes.LongestAcross;
            r[i] = points[i].ZMeters - plane.MeanHeight - (plane.SlopeAlong * along) - (plane.SlopeAcross * across);
            scale = Math.Max(scale, Math.Abs(r[i]));
        }

        for (int i = 0; i < n && scale > 0; i++)
        {
            r[i] /= scale;
        }

        return new ZoneFrame(axes, plane, u, v, r, scale);
    }

    /// <summary>Normal (x, y, z) in metres' space of the normal whose components belong to (u, v, r); not of unit length.</summary>
    internal (double X, double Y, double Z) Normal(double nu, double nv, double nr)
    {
        double z = nr / Scale;
        double along = (nu / Axes.LongestAlong) - (Plane.SlopeAlong * z);
        double across = (nv / Axes.LongestAcross) - (Plane.SlopeAcross * z);
        return ((along * Axes.Cosine) - (across * Axes.Sine), (along * Axes.Sine) + (across * Axes.Cosine), z);
    }

    internal double NormalLength(double nu, double nv, double nr)
    {
        (double x, double y, double z) = Normal(nu, nv, nr);
        return Math.Sqrt((x * x) + (y * y) + (z * z));
    }
}
