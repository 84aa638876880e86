namespace PrinterMath.Tramming;

/// <summary>
/// Width of a set of points: the least distance of two parallel planes that enclose it. It is reached with a face of the convex hull against a vertex or an edge against an
/// edge; all such antipodal pairs are visited by walking the normals of one side of the hull over those of the other.
/// Houle, Toussaint 1988, Computing the width of a set, IEEE Transactions on Pattern Analysis and Machine Intelligence 10, 761 (from memory).
/// </summary>
/// <remarks>
/// Coordinates are (x, y, r): places of order one, and r = z less a plane, over its largest value; a true distance is (N·Δ)/|M·N|, M the map of normals back to millimetres' space.
/// The search runs on points moved by less than 2⁻⁴³, in exact decisions, which finds the width of the moved set. A width changes by no more than twice the largest move, so the normal found
/// there, measured on the points themselves, gives their width to 10⁻¹² of their extent, however many faces, edges or points coincide.
/// </remarks>
internal sealed class HullWidth
{
    /// <summary>Pairs within this fraction of the least width may change places when the points go back to where they were.</summary>
    private const double Near = 1e-11;

    private const int MostMeasured = 500;

    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _r;
    private readonly Func<double, double, double, double> _length;
    private readonly GridPoints _moved;
    private readonly List<ZonePair> _pairs = [];
    private double _least = double.PositiveInfinity;

    private HullWidth(double[] x, double[] y, double[] r, Func<double, double, double, double> length)
    {
        _x = x;
        _y = y;
        _r = r;
        _length = length;
        _moved = new GridPoints(x, y, r);
    }

    /// <summary>The narrowest pair of planes; null for fewer than four points.</summary>
    /// <param name="x">Coordinates from −1 to 1.</param>
    /// <param name="y">Coordinates from −1 to 1.</param>
    /// <param name="r">Coordinates from −1 to 1.</param>
    /// <param name="length">True length of the normal whose components in these coordinates are given.</param>
    internal static ZonePair? Of(double[] x, double[] y, double[] r, Func<double, double, double, double> length)
    {
        var search = new HullWidth(x, y, r, length);
        if (ConvexHull.Of(search._moved) is not ConvexHull hull)
        {
            return null;
        }

        search.Walk(hull.Faces);
        return search.Measure();
    }

    private void Walk(HullFace[] faces)
    {
        Dictionary<int, List<int>> neighbours = Neighbours(faces);
        Dictionary<(int, int), int> faceOf = [];
        int[] opposite = new int[faces.Length];
        int last = faces[0].A;
        for (int f = 0; f < faces.Length; f++)
        {
            HullFace face = faces[f];
            faceOf[(face.A, face.B)] = faceOf[(face.B, face.C)] = faceOf[(face.C, face.A)] = f;
            opposite[f] = last = Lowest(face, last, neighbours);
            Add(false, face.A, face.B, face.C, last, _moved.Cross(face.A, face.B, face.A, face.C));
        }

        foreach (((int a, int b), int f) in faceOf)
        {
            if (a < b)
            {
                WalkEdge(a, b, faces[faceOf[(b, a)]], opposite[f], neighbours);
            }
        }
    }

    /// <summary>The vertex farthest inwards from a face: downhill along edges, which on a convex body leads to the lowest.</summary>
    private int Lowest(in HullFace face, int start, Dictionary<int, List<int>> neighbours)
    {
        int best = start;
        for (bool moved = true; moved;)
        {
            moved = false;
            foreach (int w in neighbours[best])
            {
                if (_moved.Side(face, best, w) < 0)
                {
                    (best, moved) = (w, true);
                    break;
                }
            }
        }

        return best;
    }

    /// <summary>
    /// From the normal of one face beside the edge a–b to that of the other, which turns it counterclockwise about b − a. The lowest vertex changes where an edge of its own
    /// becomes level; that edge is antipodal to this one, and the normal is then (b − a) × (next − vertex).
    /// </summary>
    private void WalkEdge(int a, int b, in HullFace to, int vertex, Dictionary<int, List<int>> neighbours)
    {
        for (int step = 0; step <= neighbours.Count; step++)
        {
            int next = -1;
            foreach (int w in neighbours[vertex])
            {
                if (_moved.Side(to, vertex, w) < 0 && (next < 0 || _moved.Side(a, b, vertex, w, vertex, next) > 0))
                {
                    next = w;
                }
            }

            if (next < 0)
            {
                return;
            }

            Add(true, a, b, vertex, next, _moved.Cross(a, b, vertex, next));
            vertex = next;
        }
    }

    private void Add(bool edges, int a, int b, int c, int d, (double X, double Y, double Z) normal)
    {
        double width = Math.Abs(_moved.Along(normal, d, a)) / _length(normal.X, normal.Y, normal.Z);
        if (width <= _least * (1 + Near))
        {
            _least = Math.Min(_least, width);
            _pairs.Add(new ZonePair(edges, a, b, c, d, normal.X, normal.Y, normal.Z, width));
        }
    }

    /// <summary>The narrowest pairs, measured on the points where they are: with the normal of the moved points, and with that of the points themselves, which is the better one unless these lie in one line.</summary>
    private ZonePair Measure()
    {
        ZonePair best = default;
        double least = double.PositiveInfinity;
        foreach (ZonePair pair in _pairs.Where(p => p.Width <= _least * (1 + Near)).OrderBy(p => p.Width).Take(MostMeasured))
        {
            foreach (ZonePair candidate in new[] { pair, OwnNormal(pair) })
            {
                double width = Extent(candidate) / _length(candidate.NormalX, candidate.NormalY, candidate.NormalZ);
                if (double.IsFinite(width) && width < least)
                {
                    least = width;
                    best = candidate with { Width = width };
                }
            }
        }

        return best;
    }

    private ZonePair OwnNormal(ZonePair p)
    {
        (double ux, double uy, double ur) = (_x[p.B] - _x[p.A], _y[p.B] - _y[p.A], _r[p.B] - _r[p.A]);
        int from = p.IsEdges ? p.C : p.A;
        int to = p.IsEdges ? p.D : p.C;
        (double vx, double vy, double vr) = (_x[to] - _x[from], _y[to] - _y[from], _r[to] - _r[from]);
        return p with { NormalX = (uy * vr) - (ur * vy), NormalY = (ur * vx) - (ux * vr), NormalZ = (ux * vy) - (uy * vx) };
    }

    private double Extent(in ZonePair pair)
    {
        double low = double.MaxValue, high = double.MinValue;
        for (int i = 0; i < _x.Length; i++)
        {
            double d = (pair.NormalX * _x[i]) + (pair.NormalY * _y[i]) + (pair.NormalZ * _r[i]);
            low = Math.Min(low, d);
            high = Math.Max(high, d);
        }

        return high - low;
    }

    private static Dictionary<int, List<int>> Neighbours(HullFace[] faces)
    {
        var neighbours = new Dictionary<int, List<int>>();
        foreach (HullFace face in faces)
        {
            Link(face.A, face.B);
            Link(face.B, face.C);
            Link(face.C, face.A);
        }

        return neighbours;

        void Link(int a, int b)
        {
            if (!neighbours.TryGetValue(a, out List<int>? list))
            {
                neighbours[a] = list = [];
            }

            list.Add(b);
        }
    }
}
