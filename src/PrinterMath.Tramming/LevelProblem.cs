namespace PrinterMath.Tramming;

/// <summary>
/// Changes of height at the adjustable supports that leave the smallest tilt, Σw(r·(p − p̄))² over the probed places, r the slopes after them. With K the tilts that are possible, scaled so that this sum is r*ᵀMr* + |q|²
/// for r = r* + K·q, the wanted q is nearest to the origin; r* is the tilt that no support reaches.
/// Changes are Δᵢ = c + r·dᵢ − Hᵢ, H the heights as measured, d places from the reference, c the height that the reference is brought to.
/// </summary>
internal sealed class LevelProblem
{
    private readonly SupportMotion _motion;
    private readonly double[] _dx;
    private readonly double[] _dy;
    private readonly double[] _k = new double[4];

    // r* = A·g for the slopes g as measured
    private readonly double[] _a = new double[4];

    internal LevelProblem(in SupportMotion motion, ReadOnlySpan<AdjustableSupport> supports, in PrincipalAxes probed)
    {
        _motion = motion;
        _dx = new double[supports.Length];
        _dy = new double[supports.Length];
        for (int i = 0; i < supports.Length; i++)
        {
            _dx[i] = supports[i].XMeters - motion.X;
            _dy[i] = supports[i].YMeters - motion.Y;
        }

        double along = Math.Sqrt(probed.AlongMoment);
        double across = Math.Sqrt(probed.AcrossMoment);
        (double c, double s) = (probed.Cosine, probed.Sine);
        if (motion.Tilts == 2)
        {
            _k[0] = c / along;
            _k[1] = -s / across;
            _k[2] = s / along;
            _k[3] = c / across;
            return;
        }

        (double ex, double ey) = (motion.EX, motion.EY);
        double ux = (c * ex) + (s * ey), uy = (c * ey) - (s * ex);
        double norm = Math.Sqrt((ux * ux * along * along) + (uy * uy * across * across));
        _k[0] = ex / norm;
        _k[2] = ey / norm;

        // A = I − e(eᵀM)/(eᵀMe)
        double mx = ((c * ux * along * along) - (s * uy * across * across)) / (norm * norm);
        double my = ((s * ux * along * along) + (c * uy * across * across)) / (norm * norm);
        _a[0] = 1 - (ex * mx);
        _a[1] = -ex * my;
        _a[2] = -ey * mx;
        _a[3] = 1 - (ey * my);
    }

    internal int Count => _dx.Length;

    internal bool IsAnchored => _motion.IsAnchored;

    /// <summary>Slopes after the changes, last solved.</summary>
    internal double SlopeX { get; private set; }

    internal double SlopeY { get; private set; }

    /// <summary>Height that the reference was brought to, last solved.</summary>
    internal double Height { get; private set; }

    /// <summary>The slopes that no support reaches.</summary>
    internal (double X, double Y) Unreached(double gx, double gy) => ((_a[0] * gx) + (_a[1] * gy), (_a[2] * gx) + (_a[3] * gy));

    /// <summary>Changes for heights and slopes as measured.</summary>
    /// <param name="heights">Heights at the supports.</param>
    /// <param name="reference">Height that the reference is brought to, unless a support is at its limit.</param>
    /// <param name="gx">Slope along x as measured.</param>
    /// <param name="gy">Slope along y as measured.</param>
    /// <param name="edges">Limits that bind the tilt, with the values of <paramref name="bounds"/>.</param>
    /// <param name="pinned">Support whose change is given by its value in <paramref name="pin"/>; −1 for none.</param>
    /// <param name="bounds">Value of each edge.</param>
    /// <param name="pin">The given change.</param>
    /// <param name="changes">The changes.</param>
    internal void Solve(
        ReadOnlySpan<double> heights, double reference, double gx, double gy, ReadOnlySpan<HalfPlane> edges, int pinned, ReadOnlySpan<double> bounds, double pin, Span<double> changes)
    {
        double rx = (_a[0] * gx) + (_a[1] * gy);
        double ry = (_a[2] * gx) + (_a[3] * gy);
        if (edges.Length > 0)
        {
            (double q1, double q2) = OnEdges(heights, reference, rx, ry, edges, bounds);
            rx += (_k[0] * q1) + (_k[1] * q2);
            ry += (_k[2] * q1) + (_k[3] * q2);
        }

        double c = pinned >= 0 && !_motion.IsAnchored ? pin + heights[pinned] - Rise(pinned, rx, ry) : reference;
        for (int i = 0; i < changes.Length; i++)
        {
            changes[i] = c + Rise(i, rx, ry) - heights[i];
        }

        (SlopeX, SlopeY, Height) = (rx, ry, c);
    }

    /// <summary>Everything that limits from low to high say about q: for a bed that is not anchored, each pair of a lowest and a highest change, since one height must do for both.</summary>
    internal HalfPlane[] HalfPlanes(ReadOnlySpan<double> heights, double reference, double gx, double gy, ReadOnlySpan<double> low, ReadOnlySpan<double> high)
    {
        var planes = new List<HalfPlane>();
        double rx = (_a[0] * gx) + (_a[1] * gy);
        double ry = (_a[2] * gx) + (_a[3] * gy);
        for (int i = 0; i < Count; i++)
        {
            if (_motion.IsAnchored)
            {
                double here = reference + Rise(i, rx, ry) - heights[i];
                (double n1, double n2) = Normal(_dx[i], _dy[i]);
                Add(new HalfPlane(n1, n2, high[i] - here, -1, i, 1));
                Add(new HalfPlane(-n1, -n2, here - low[i], i, -1, 1));
                continue;
            }

            for (int j = 0; j < Count; j++)
            {
                (double n1, double n2) = Normal(_dx[i] - _dx[j], _dy[i] - _dy[j]);
                double apart = Rise(i, rx, ry) - heights[i] - Rise(j, rx, ry) + heights[j];
                Add(new HalfPlane(-n1, -n2, apart - low[i] + high[j], i, j, 2));
            }
        }

        return [.. planes];

        void Add(in HalfPlane plane)
        {
            if (double.IsFinite(plane.B))
            {
                planes.Add(plane);
            }
        }
    }

    /// <summary>The value that an edge gives to Δ(lower) − Δ(upper), or to the one change of an anchored bed.</summary>
    internal static double Bound(in HalfPlane edge, ReadOnlySpan<double> low, ReadOnlySpan<double> high) =>
        (edge.Lower >= 0 ? low[edge.Lower] : 0) - (edge.Upper >= 0 ? (edge.Lower >= 0 ? 1 : -1) * high[edge.Upper] : 0);

    private (double Q1, double Q2) OnEdges(ReadOnlySpan<double> heights, double reference, double rx, double ry, ReadOnlySpan<HalfPlane> edges, ReadOnlySpan<double> bounds)
    {
        (double a1, double a2, double b) = Equation(edges[0], heights, reference, rx, ry, bounds[0]);
        if (edges.Length == 1)
        {
            double square = (a1 * a1) + (a2 * a2);
            return (a1 * b / square, a2 * b / square);
        }

        (double c1, double c2, double d) = Equation(edges[1], heights, reference, rx, ry, bounds[1]);
        double determinant = (a1 * c2) - (a2 * c1);
        return (((b * c2) - (a2 * d)) / determinant, ((a1 * d) - (b * c1)) / determinant);
    }

    private (double A1, double A2, double B) Equation(in HalfPlane edge, ReadOnlySpan<double> heights, double reference, double rx, double ry, double bound)
    {
        int i = edge.Lower, j = edge.Upper;
        if (i < 0 || j < 0)
        {
            int one = Math.Max(i, j);
            (double n1, double n2) = Normal(_dx[one], _dy[one]);
            return (n1, n2, bound - reference - Rise(one, rx, ry) + heights[one]);
        }

        (double m1, double m2) = Normal(_dx[i] - _dx[j], _dy[i] - _dy[j]);
        return (m1, m2, bound - Rise(i, rx, ry) + heights[i] + Rise(j, rx, ry) - heights[j]);
    }

    private double Rise(int i, double rx, double ry) => (rx * _dx[i]) + (ry * _dy[i]);

    private (double N1, double N2) Normal(double x, double y) => ((_k[0] * x) + (_k[2] * y), (_k[1] * x) + (_k[3] * y));
}
