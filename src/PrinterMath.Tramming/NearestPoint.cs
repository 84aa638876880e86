namespace PrinterMath.Tramming;

/// <summary>
/// The point nearest to the origin within half-planes, exactly, or the two or three of them that exclude each other. Half-planes are added one at a time: one that the nearest point of those before
/// it violates has the new nearest point on its edge, which is a search along a line.
/// </summary>
/// <remarks>
/// Seidel 1991, Small-dimensional linear programming and convex hulls made easy, Discrete and Computational Geometry 6, 423, here with the distance as the strictly convex objective (from memory). Where half-planes exclude
/// each other, Σλa = 0 with λ ≥ 0 and Σλb below 0 proves it (Farkas), and every limit has to give by at least −Σλb/Σλg; with that much given, another set may still exclude itself, so the search
/// goes on until none does: the last value is the least, since each of them is needed.
/// </remarks>
internal sealed class NearestPoint
{
    private const double Rounding = 1e-12;
    private const int MostRounds = 1000;

    private readonly HalfPlane[] _planes;
    private readonly double[] _b;
    private readonly double _tolerance;
    private readonly int[] _set = [-1, -1, -1];
    private double _q1;
    private double _q2;

    private NearestPoint(HalfPlane[] planes)
    {
        _planes = planes;
        _b = new double[planes.Length];
        double largest = 0;
        for (int k = 0; k < planes.Length; k++)
        {
            double length = Math.Sqrt((planes[k].A1 * planes[k].A1) + (planes[k].A2 * planes[k].A2));
            if (length > 0)
            {
                _planes[k] = planes[k] with { A1 = planes[k].A1 / length, A2 = planes[k].A2 / length, B = planes[k].B / length, Gives = planes[k].Gives / length };
            }

            _b[k] = _planes[k].B;
            largest = Math.Max(largest, Math.Abs(_b[k]));
        }

        _tolerance = Rounding * largest;
    }

    /// <summary>Whether there is a point.</summary>
    internal bool Exists { get; private set; }

    /// <summary>By how much every limit would have to give, when there is none.</summary>
    internal double LeastExcess { get; private set; }

    /// <summary>The half-planes at whose edge the point lies, two at most; or those that exclude each other, three at most.</summary>
    internal IEnumerable<HalfPlane> Set => _set.Where(k => k >= 0).Select(k => _planes[k]);

    /// <param name="planes">The half-planes; a row of zeros stands for a limit that does not depend on the point.</param>
    internal static NearestPoint Of(HalfPlane[] planes)
    {
        var search = new NearestPoint(planes);
        search.Exists = search.TrySolve();
        double excess = 0;
        int[] conflict = [.. search._set];
        for (int round = 0; round < MostRounds && !search.Exists; round++)
        {
            excess = Math.Max(excess, search.Needed());
            for (int k = 0; k < planes.Length; k++)
            {
                search._b[k] = planes[k].B + (excess * planes[k].Gives) + search._tolerance;
            }

            conflict = [.. search._set];
            if (search.TrySolve())
            {
                break;
            }
        }

        if (!search.Exists)
        {
            search.LeastExcess = excess;
            conflict.CopyTo(search._set, 0);
        }

        return search;
    }

    private bool TrySolve()
    {
        (_q1, _q2) = (0, 0);
        Mark(-1, -1, -1);
        for (int k = 0; k < _planes.Length; k++)
        {
            HalfPlane plane = _planes[k];
            if ((plane.A1 * _q1) + (plane.A2 * _q2) <= _b[k] + _tolerance)
            {
                continue;
            }

            if ((plane.A1 == 0 && plane.A2 == 0) || !TryOnEdge(k))
            {
                if (plane.A1 == 0 && plane.A2 == 0)
                {
                    Mark(k, -1, -1);
                }

                return false;
            }
        }

        return true;
    }

    /// <summary>The nearest point on the edge of one half-plane within those before it.</summary>
    private bool TryOnEdge(int k)
    {
        HalfPlane edge = _planes[k];
        (double p1, double p2) = (edge.A1 * _b[k], edge.A2 * _b[k]);
        double low = double.NegativeInfinity, high = double.PositiveInfinity;
        int lowest = -1, highest = -1;
        for (int j = 0; j < k; j++)
        {
            HalfPlane other = _planes[j];
            double along = (other.A2 * edge.A1) - (other.A1 * edge.A2);
            double room = _b[j] - (other.A1 * p1) - (other.A2 * p2);
            if (Math.Abs(along) <= Rounding)
            {
                if (room < -_tolerance && (other.A1 != 0 || other.A2 != 0))
                {
                    Mark(k, j, -1);
                    return false;
                }
            }
            else if (along > 0 && room / along < high)
            {
                (high, highest) = (room / along, j);
            }
            else if (along < 0 && room / along > low)
            {
                (low, lowest) = (room / along, j);
            }
        }

        if (low > high + _tolerance)
        {
            Mark(k, lowest, highest);
            return false;
        }

        double t = low > 0 ? low : high < 0 ? high : 0;
        Mark(k, low > 0 ? lowest : high < 0 ? highest : -1, -1);
        (_q1, _q2) = (p1 - (t * edge.A2), p2 + (t * edge.A1));
        return true;
    }

    private double Needed()
    {
        Span<double> share = [1, 1, 0];
        if (_set[2] >= 0)
        {
            share[0] = Math.Abs(Cross(_set[1], _set[2]));
            share[1] = Math.Abs(Cross(_set[2], _set[0]));
            share[2] = Math.Abs(Cross(_set[0], _set[1]));
        }

        double missing = 0, gives = 0;
        for (int m = 0; m < 3; m++)
        {
            if (_set[m] >= 0)
            {
                missing -= share[m] * _planes[_set[m]].B;
                gives += share[m] * _planes[_set[m]].Gives;
            }
        }

        return missing / gives;
    }

    private double Cross(int a, int b) => (_planes[a].A1 * _planes[b].A2) - (_planes[a].A2 * _planes[b].A1);

    private void Mark(int first, int second, int third) => (_set[0], _set[1], _set[2]) = (first, second, third);
}
