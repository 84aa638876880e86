namespace PrinterMath.Tramming;

/// <summary>
/// Width of a set of points: the least distance of two parallel planes that enclose it. It is reached with a face of the convex hull against a vertex or an edge against an
/// edge; all such antipodal pairs are visited by walking the normals of one side of the hull over those of the other.
/// Houle, Toussaint 1988, Computing the width of a set, IEEE Transactions on Pattern Analysis and Machine Intelligence 10, 761 (from memory).
/// </summary>
/// <remarks>
/// Coordinates are (x, y, r): places of order one, and r = z less a plane, over its largest value; a true distance is (N·Δ)/|M·N|, M the map of normals back to millimetres' space.
/// Each point is moved by a fixed amount below 10⁻⁸ of the extents, so that no four lie in a plane; pairs found so are then measured on the points themselves.
/// </remarks>
internal sealed class HullWidth
{
    private const int Bits = 39;
    private const int MovedBits = 13;

    /// <summary>Pairs within this fraction of the least width may change places when the points go back to where they were.</summary>
    private const double Near = 1e-6;

    private const int MostMeasured = 500;

    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _r;
    private readonly Func<double, double, double, double> _length;
    private readonly long[] _ix;
    private readonly long[] _iy;
    private readonly long[] _ir;
    private readonly List<ZonePair> _pairs = [];
    private double _least = double.PositiveInfinity;

    private HullWidth(double[] x, double[] y, double[] r, Func<double, double, double, double> length)
    {
        _x = x;
        _y = y;
        _r = r;
        _length = length;
        _ix = Grid(x, 1);
        _iy = Grid(y, 2);
        _ir = Grid(r, 3);
    }

    /// <summary>The narrowest pair of planes; null when all points lie in one plane.</summary>
    /// <param name="x">Coordinates from −1 to 1.</param>
    /// <param name="y">Coordinates from −1 to 1.</param>
    /// <param name="r">Coordinates from −1 to 1.</param>
    /// <param name="length">True length of the normal whose components in these coordinates are given.</param>
    internal static ZonePair? Of(double[] x, double[] y, double[] r, Func<double, double, double, double> length)
    {
        var search = new HullWidth(x, y, r, length);
        if (ConvexHull.Of(search._ix, search._iy, search._ir) is not ConvexHull hull)
        {
            return null;
        }

        search.Walk(hull);
        return search.Measure();
    }

    private static long[] Grid(double[] values, int axis)
    {
        long[] grid = new long[values.Length];
        for (int i = 0; i < values.Length; i++)
        {
            // SplitMix64 of the index: Steele, Lea, Flood 2014, OOPSLA (from memory).
            ulong h = ((ulong)i * 3) + (ulong)axis;
            h = (h + 1) * 0x9E3779B97F4A7C15;
            h = (h ^ (h >> 30)) * 0xBF58476D1CE4E5B9;
            h = (h ^ (h >> 27)) * 0x94D049BB133111EB;
            h ^= h >> 31;
            grid[i] = (long)Math.Round(Math.ScaleB(values[i], Bits)) + (long)(h & ((1UL << (MovedBits + 1)) - 1)) - (1L << MovedBits);
        }

        return grid;
    }

    private void Walk(ConvexHull hull)
    {
        HullFace[] faces = [.. hull.Faces];
        Dictionary<int, List<int>> neighbours = Neighbours(faces);
        Dictionary<(int, int), int> faceOf = [];
        for (int f = 0; f < faces.Length; f++)
        {
            faceOf[(faces[f].A, faces[f].B)] = f;
            faceOf[(faces[f].B, faces[f].C)] = f;
            faceOf[(faces[f].C, faces[f].A)] = f;
        }

        var normals = new (double X, double Y, double Z)[faces.Length];
        int[] opposite = new int[faces.Length];
        int last = faces[0].A;
        for (int f = 0; f < faces.Length; f++)
        {
            HullFace face = faces[f];
            normals[f] = Unit(Cross(face.A, face.B, face.A, face.C));
            last = Lowest(normals[f], last, neighbours);
            opposite[f] = last;
            Add(new ZonePair(false, face.A, face.B, face.C, last, normals[f].X, normals[f].Y, normals[f].Z, 0));
        }

        foreach (((int a, int b), int f) in faceOf)
        {
            if (a < b)
            {
                int g = faceOf[(b, a)];
                WalkEdge(a, b, normals[f], normals[g], opposite[f], neighbours);
            }
        }
    }

    /// <summary>From the normal of one face beside an edge to that of the other; the lowest vertex changes at each edge that is antipodal to this one.</summary>
    private void WalkEdge(int a, int b, (double X, double Y, double Z) from, (double X, double Y, double Z) to, int vertex, Dictionary<int, List<int>> neighbours)
    {
        double t = 0;
        for (int step = 0; step <= neighbours.Count; step++)
        {
            int next = -1;
            double first = 1;
            foreach (int w in neighbours[vertex])
            {
                double before = Dot(from, vertex, w);
                double after = Dot(to, vertex, w);
                if (after >= 0 || after >= before)
                {
                    continue;
                }

                double crossing = Math.Max(t, before / (before - after));
                if (crossing < first)
                {
                    first = crossing;
                    next = w;
                }
            }

            if (next < 0)
            {
                return;
            }

            (double X, double Y, double Z) normal = Cross(a, b, vertex, next);
            double along = (normal.X * (from.X + to.X)) + (normal.Y * (from.Y + to.Y)) + (normal.Z * (from.Z + to.Z));
            double sign = along < 0 ? -1 : 1;
            Add(new ZonePair(true, a, b, vertex, next, sign * normal.X, sign * normal.Y, sign * normal.Z, 0));
            t = first;
            vertex = next;
        }
    }

    private void Add(ZonePair pair)
    {
        double width = Math.Abs(Dot((pair.NormalX, pair.NormalY, pair.NormalZ), pair.D, pair.A)) / Length(pair.NormalX, pair.NormalY, pair.NormalZ);
        if (double.IsFinite(width) && width <= _least * (1 + Near))
        {
            _least = Math.Min(_least, width);
            _pairs.Add(pair with { Width = width });
        }
    }

    /// <summary>The nearly narrowest pairs, measured on the points where they are.</summary>
    private ZonePair Measure()
    {
        ZonePair best = default;
        double least = double.PositiveInfinity;
        foreach (ZonePair pair in _pairs.Where(p => p.Width <= _least * (1 + Near)).OrderBy(p => p.Width).Take(MostMeasured))
        {
            foreach (ZonePair candidate in new[] { pair, OwnNormal(pair) })
            {
                double width = Extent(candidate) / Length(candidate.NormalX, candidate.NormalY, candidate.NormalZ);
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

    private double Length(double x, double y, double z) => _length(x, y, z);

    private int Lowest((double X, double Y, double Z) normal, int start, Dictionary<int, List<int>> neighbours)
    {
        // Heights are taken from one point, so that rounding cannot order three vertices in a circle.
        int best = start;
        double lowest = Dot(normal, 0, start);
        for (bool moved = true; moved;)
        {
            moved = false;
            foreach (int w in neighbours[best])
            {
                double height = Dot(normal, 0, w);
                if (height < lowest)
                {
                    (lowest, best, moved) = (height, w, true);
                    break;
                }
            }
        }

        return best;
    }

    /// <summary>N·(to − from) in the rounded coordinates, over 2³⁹.</summary>
    private double Dot((double X, double Y, double Z) n, int from, int to) =>
        Math.ScaleB((n.X * (_ix[to] - _ix[from])) + (n.Y * (_iy[to] - _iy[from])) + (n.Z * (_ir[to] - _ir[from])), -Bits);

    private (double X, double Y, double Z) Cross(int a, int b, int c, int d)
    {
        double ux = _ix[b] - _ix[a], uy = _iy[b] - _iy[a], uz = _ir[b] - _ir[a];
        double vx = _ix[d] - _ix[c], vy = _iy[d] - _iy[c], vz = _ir[d] - _ir[c];
        return ((uy * vz) - (uz * vy), (uz * vx) - (ux * vz), (ux * vy) - (uy * vx));
    }

    private static (double X, double Y, double Z) Unit((double X, double Y, double Z) n)
    {
        double length = Math.Sqrt((n.X * n.X) + (n.Y * n.Y) + (n.Z * n.Z));
        return (n.X / length, n.Y / length, n.Z / length);
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
