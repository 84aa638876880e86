namespace PrinterMath.SurfaceMesh;

/// <summary>Heights of a model on a lattice, and the lines of equal height through it.</summary>
internal sealed class ContourLattice
{
    /// <summary>A corner of a line lies this near to the level, in metres, or at the nearest place that can be told.</summary>
    private const double Near = 1e-12;
    private const int MostSteps = 60;

    private readonly IHeightModel _model;
    private readonly double[] _xs;
    private readonly double[] _ys;
    private readonly double[] _heights;

    private ContourLattice(IHeightModel model, double[] xs, double[] ys)
    {
        (_model, _xs, _ys) = (model, xs, ys);
        _heights = new double[xs.Length * ys.Length];
        double[] row = new double[xs.Length];
        for (int j = 0; j < ys.Length; j++)
        {
            Array.Fill(row, ys[j]);
            model.Heights(xs, row, _heights.AsSpan(j * xs.Length, xs.Length));
        }
    }

    internal double Lowest => _heights.Min();

    internal double Highest => _heights.Max();

    internal static ContourLattice Over(IHeightModel model, double largestStep)
    {
        Guard.Positive(largestStep);
        var cells = model as ICellwiseModel;
        SurfaceRectangle domain = model.Domain;
        double[] columns = cells is null ? [domain.LeftMeters, domain.RightMeters] : cells.Columns.Nodes.ToArray();
        double[] rows = cells is null ? [domain.FrontMeters, domain.RearMeters] : cells.Rows.Nodes.ToArray();
        return Count(columns, largestStep) * Count(rows, largestStep) <= Contours.MostCorners
            ? new ContourLattice(model, Divide(columns, largestStep), Divide(rows, largestStep))
            : throw Guard.Out(nameof(largestStep), largestStep, FormattableString.Invariant($"large enough for a lattice of at most {Contours.MostCorners} corners, in metres"));
    }

    internal List<ContourLine> Lines(double level)
    {
        Dictionary<int, int> next = Joins(level);
        HashSet<int> begun = [.. next.Keys];
        begun.ExceptWith(next.Values);
        List<ContourLine> lines = [];
        foreach (int first in begun.Order().Concat(next.Keys.Order()).ToList())
        {
            if (next.ContainsKey(first))
            {
                Follow(first, next, level, lines);
            }
        }

        return lines;
    }

    private static double Count(double[] nodes, double step) => 1 + nodes.Zip(nodes.Skip(1), (a, b) => Math.Ceiling((b - a) / step)).Sum();

    private static double[] Divide(double[] nodes, double step)
    {
        List<double> places = [nodes[0]];
        for (int i = 0; i + 1 < nodes.Length; i++)
        {
            int parts = (int)Math.Ceiling((nodes[i + 1] - nodes[i]) / step);
            for (int k = 1; k <= parts; k++)
            {
                places.Add(k == parts ? nodes[i + 1] : nodes[i] + ((nodes[i + 1] - nodes[i]) * k / parts));
            }
        }

        return [.. places];
    }

    /// <summary>
    /// From each side of the lattice where a line enters a square to the side where it leaves. Round a square against the clock, a line enters where the corners go from above to
    /// below, and leaves where they go from below to above; so the ground above lies to its left, and a side that two squares share is left in one and entered in the other.
    /// </summary>
    private Dictionary<int, int> Joins(double level)
    {
        Dictionary<int, int> next = [];
        int n = _xs.Length;
        Span<int> corners = stackalloc int[4], sides = stackalloc int[4];
        for (int j = 0; j + 1 < _ys.Length; j++)
        {
            for (int i = 0; i + 1 < n; i++)
            {
                int a = (j * n) + i;
                (corners[0], corners[1], corners[2], corners[3]) = (a, a + 1, a + n + 1, a + n);
                (sides[0], sides[1], sides[2], sides[3]) = (2 * a, (2 * (a + 1)) + 1, 2 * (a + n), (2 * a) + 1);
                Join(corners, sides, level, next);
            }
        }

        return next;
    }

    private void Join(ReadOnlySpan<int> corners, ReadOnlySpan<int> sides, double level, Dictionary<int, int> next)
    {
        int entered = 0, only = 0;
        for (int k = 0; k < 4; k++)
        {
            if (Above(corners[k], level) && !Above(corners[(k + 1) % 4], level))
            {
                entered++;
                only = k;
            }
        }

        for (int k = 0; entered == 1 && k < 4; k++)
        {
            if (!Above(corners[k], level) && Above(corners[(k + 1) % 4], level))
            {
                next[sides[only]] = sides[k];
            }
        }

        if (entered == 2)
        {
            // Corners k and k + 2 are above. Where they are connected, lines cut off the corners below; else those above.
            int k = only % 2;
            double high = (_heights[corners[k]] - level) * (_heights[corners[k + 2]] - level);
            double low = (_heights[corners[k + 1]] - level) * (_heights[corners[(k + 3) % 4]] - level);
            int leave = high >= low ? 1 : 3;
            next[sides[k]] = sides[(k + leave) % 4];
            next[sides[k + 2]] = sides[(k + 2 + leave) % 4];
        }
    }

    private void Follow(int first, Dictionary<int, int> next, double level, List<ContourLine> lines)
    {
        List<SurfacePosition> points = [];
        int side = first;
        bool closed = false;
        while (true)
        {
            SurfacePosition point = Crossing(side, level);
            if (points.Count == 0 || points[^1] != point)
            {
                points.Add(point);
            }

            if (!next.Remove(side, out int after))
            {
                break;
            }

            side = after;
            if (side == first)
            {
                closed = true;
                break;
            }
        }

        if (closed && points.Count > 1 && points[0] == points[^1])
        {
            points.RemoveAt(points.Count - 1);
        }

        if (points.Count > (closed ? 2 : 1))
        {
            lines.Add(new ContourLine(level, [.. points], closed));
        }
    }

    /// <summary>Where the model passes through the level on a side: the chord first, then its own height (false position, as changed by Dowell and Jarratt 1971).</summary>
    private SurfacePosition Crossing(int side, double level)
    {
        int from = side / 2, to = side % 2 == 0 ? from + 1 : from + _xs.Length;
        double low = 0, high = 1, atLow = _heights[from] - level, atHigh = _heights[to] - level, share = 0;
        if (Math.Abs(atLow) <= Near || Math.Abs(atHigh) <= Near)
        {
            return Place(from, to, Math.Abs(atLow) <= Near ? 0 : 1);
        }

        for (int step = 0, held = 0; step < MostSteps; step++)
        {
            share = low + ((high - low) * (atLow / (atLow - atHigh)));
            SurfacePosition place = Place(from, to, share);
            double at = _model.EstimateAt(place.X, place.Y).Meters - level;
            if (Math.Abs(at) <= Near || share <= low || share >= high)
            {
                break;
            }

            if (at > 0 == atHigh > 0)
            {
                (high, atHigh, atLow) = (share, at, held == 1 ? atLow / 2 : atLow);
                held = 1;
            }
            else
            {
                (low, atLow, atHigh) = (share, at, held == -1 ? atHigh / 2 : atHigh);
                held = -1;
            }
        }

        return Place(from, to, share);
    }

    private SurfacePosition Place(int from, int to, double share)
    {
        int n = _xs.Length;
        double x0 = _xs[from % n], y0 = _ys[from / n], x1 = _xs[to % n], y1 = _ys[to / n];
        return SurfacePosition.FromMeters(share == 1 ? x1 : x0 + (share * (x1 - x0)), share == 1 ? y1 : y0 + (share * (y1 - y0)));
    }

    private bool Above(int corner, double level) => _heights[corner] >= level;
}
