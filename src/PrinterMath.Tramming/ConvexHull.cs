namespace PrinterMath.Tramming;

/// <summary>
/// Convex hull by insertion of points in mixed order; all decisions are exact, and every point that is still outside waits at one face that it sees.
/// de Berg et al. 2008, Computational Geometry, 3rd ed., chapter 11 (from memory).
/// </summary>
internal sealed class ConvexHull
{
    private readonly GridPoints _points;
    private readonly int[] _waitsAt;
    private readonly List<HullFace> _faces = [];
    private readonly List<List<int>?> _waiting = [];
    private readonly Dictionary<long, int> _faceAt = [];
    private readonly Stack<int> _free = new();
    private readonly List<int> _visible = [];
    private readonly HashSet<int> _seen = [];

    private ConvexHull(GridPoints points)
    {
        _points = points;
        _waitsAt = new int[points.Count];
        Array.Fill(_waitsAt, -1);
    }

    /// <summary>All faces.</summary>
    internal HullFace[] Faces => [.. _faces.Where((_, f) => _waiting[f] is not null)];

    /// <summary>The hull, or null for fewer than four points.</summary>
    internal static ConvexHull? Of(GridPoints points)
    {
        if (points.Count < 4)
        {
            return null;
        }

        var hull = new ConvexHull(points);
        hull.Start();
        foreach (int i in points.MixedOrder())
        {
            if (hull._waitsAt[i] >= 0)
            {
                hull.Insert(i);
            }
        }

        return hull;
    }

    private long Edge(int a, int b) => ((long)a * _points.Count) + b;

    private void Start()
    {
        int[] t = Tetrahedron();
        if (_points.Side(t[0], t[1], t[0], t[2], t[0], t[3]) > 0)
        {
            (t[1], t[2]) = (t[2], t[1]);
        }

        Add(t[0], t[1], t[2]);
        Add(t[0], t[3], t[1]);
        Add(t[1], t[3], t[2]);
        Add(t[2], t[3], t[0]);
        for (int i = 0; i < _points.Count; i++)
        {
            if (!t.Contains(i))
            {
                Wait(i, [0, 1, 2, 3]);
            }
        }
    }

    /// <summary>The faces that the point sees give way to a fan from their rim.</summary>
    private void Insert(int point)
    {
        int at = _waitsAt[point];
        _visible.Clear();
        _seen.Clear();
        _visible.Add(at);
        _seen.Add(at);
        var rim = new List<(int A, int B)>();
        for (int k = 0; k < _visible.Count; k++)
        {
            HullFace f = _faces[_visible[k]];
            Look(f.A, f.B);
            Look(f.B, f.C);
            Look(f.C, f.A);
        }

        var waiting = new List<int>();
        foreach (int f in _visible)
        {
            waiting.AddRange(_waiting[f]!);
            _waiting[f] = null;
            _free.Push(f);
            HullFace face = _faces[f];
            _faceAt.Remove(Edge(face.A, face.B));
            _faceAt.Remove(Edge(face.B, face.C));
            _faceAt.Remove(Edge(face.C, face.A));
        }

        int[] fan = [.. rim.Select(edge => Add(edge.A, edge.B, point))];
        foreach (int i in waiting)
        {
            if (i != point)
            {
                Wait(i, fan);
            }
        }

        void Look(int a, int b)
        {
            int beyond = _faceAt[Edge(b, a)];
            if (_seen.Contains(beyond))
            {
                return;
            }

            if (_points.Side(_faces[beyond], _faces[beyond].A, point) > 0)
            {
                _seen.Add(beyond);
                _visible.Add(beyond);
            }
            else
            {
                rim.Add((a, b));
            }
        }
    }

    private int Add(int a, int b, int c)
    {
        HullFace face = _points.Face(a, b, c);
        if (_free.TryPop(out int f))
        {
            (_faces[f], _waiting[f]) = (face, []);
        }
        else
        {
            f = _faces.Count;
            _faces.Add(face);
            _waiting.Add([]);
        }

        _faceAt[Edge(a, b)] = _faceAt[Edge(b, c)] = _faceAt[Edge(c, a)] = f;
        return f;
    }

    private void Wait(int point, int[] faces)
    {
        _waitsAt[point] = -1;
        foreach (int f in faces)
        {
            if (_points.Side(_faces[f], _faces[f].A, point) > 0)
            {
                _waiting[f]!.Add(point);
                _waitsAt[point] = f;
                return;
            }
        }
    }

    /// <summary>Two extremes along the first axis, the farthest from their line, and the farthest from the plane of the three.</summary>
    private int[] Tetrahedron()
    {
        int[] all = [.. Enumerable.Range(0, _points.Count)];
        int a = all.MinBy(i => _points.Along((1, 0, 0), 0, i)), b = all.MaxBy(i => _points.Along((1, 0, 0), 0, i));
        int c = all.Where(i => i != a && i != b).MaxBy(i => Square(_points.Cross(a, b, a, i)));
        (double X, double Y, double Z) normal = _points.Cross(a, b, a, c);
        return [a, b, c, all.Where(i => i != a && i != b && i != c).MaxBy(i => Math.Abs(_points.Along(normal, a, i)))];
    }

    private static double Square((double X, double Y, double Z) v) => (v.X * v.X) + (v.Y * v.Y) + (v.Z * v.Z);
}
