namespace PrinterMath.Tramming;

/// <summary>
/// Convex hull of points with integer coordinates below 2⁴⁰ in size, by insertion of one point after the other; all decisions are exact. Faces are triangles whose corners run
/// counterclockwise as seen from outside. de Berg et al. 2008, Computational Geometry, 3rd ed., chapter 11 (from memory).
/// </summary>
internal sealed class ConvexHull
{
    private readonly long[] _x;
    private readonly long[] _y;
    private readonly long[] _z;
    private readonly List<Face> _faces = [];
    private readonly List<int> _visible = [];

    private ConvexHull(long[] x, long[] y, long[] z)
    {
        _x = x;
        _y = y;
        _z = z;
    }

    internal IEnumerable<HullFace> Faces => _faces.Where(f => f.Alive).Select(f => new HullFace(f.A, f.B, f.C));

    /// <summary>The hull, or null when all points lie in one plane.</summary>
    internal static ConvexHull? Of(long[] x, long[] y, long[] z)
    {
        var hull = new ConvexHull(x, y, z);
        return hull.Build() ? hull : null;
    }

    private bool Build()
    {
        int n = _x.Length;
        int[] corner = Tetrahedron();
        if (corner.Length < 4)
        {
            return false;
        }

        Start(corner);
        foreach (int extreme in Extremes())
        {
            Insert(extreme);
        }

        for (int i = 0; i < n; i++)
        {
            Insert(i);
        }

        return true;
    }

    private void Insert(int p)
    {
        _visible.Clear();
        for (int f = 0; f < _faces.Count; f++)
        {
            if (_faces[f].Alive && Sees(_faces[f], p))
            {
                _visible.Add(f);
            }
        }

        if (_visible.Count == 0)
        {
            return;
        }

        // Directed edges of visible faces whose reverse is not one of theirs run around the horizon.
        var edges = new HashSet<(int, int)>();
        foreach (int f in _visible)
        {
            Face face = _faces[f];
            edges.Add((face.A, face.B));
            edges.Add((face.B, face.C));
            edges.Add((face.C, face.A));
        }

        int reuse = 0;
        foreach ((int a, int b) in edges)
        {
            if (!edges.Contains((b, a)))
            {
                Face face = Make(a, b, p);
                if (reuse < _visible.Count)
                {
                    _faces[_visible[reuse++]] = face;
                }
                else
                {
                    _faces.Add(face);
                }
            }
        }

        for (; reuse < _visible.Count; reuse++)
        {
            _faces[_visible[reuse]] = default;
        }
    }

    private Face Make(int a, int b, int c)
    {
        double ux = _x[b] - _x[a], uy = _y[b] - _y[a], uz = _z[b] - _z[a];
        double vx = _x[c] - _x[a], vy = _y[c] - _y[a], vz = _z[c] - _z[a];
        double size = (Math.Abs(uy * vz) + Math.Abs(uz * vy)) + (Math.Abs(uz * vx) + Math.Abs(ux * vz)) + (Math.Abs(ux * vy) + Math.Abs(uy * vx));
        return new Face(a, b, c, (uy * vz) - (uz * vy), (uz * vx) - (ux * vz), (ux * vy) - (uy * vx), size * 1e-15, true);
    }

    /// <summary>Whether the point lies strictly outside the plane of the face: in doubles where that is certain, else in integers of 128 bits.</summary>
    private bool Sees(in Face f, int p)
    {
        double dx = _x[p] - _x[f.A], dy = _y[p] - _y[f.A], dz = _z[p] - _z[f.A];
        double side = (f.NormalX * dx) + (f.NormalY * dy) + (f.NormalZ * dz);
        double bound = f.Doubt * Math.Max(Math.Abs(dx), Math.Max(Math.Abs(dy), Math.Abs(dz))) * 8;
        return side > bound || (side >= -bound && Determinant(f.A, f.B, f.C, p) > 0);
    }

    private Int128 Determinant(int a, int b, int c, int p)
    {
        Int128 ux = _x[b] - _x[a], uy = _y[b] - _y[a], uz = _z[b] - _z[a];
        Int128 vx = _x[c] - _x[a], vy = _y[c] - _y[a], vz = _z[c] - _z[a];
        Int128 wx = _x[p] - _x[a], wy = _y[p] - _y[a], wz = _z[p] - _z[a];
        return (((uy * vz) - (uz * vy)) * wx) + (((uz * vx) - (ux * vz)) * wy) + (((ux * vy) - (uy * vx)) * wz);
    }

    private void Start(int[] t)
    {
        if (Determinant(t[0], t[1], t[2], t[3]) > 0)
        {
            (t[1], t[2]) = (t[2], t[1]);
        }

        _faces.Add(Make(t[0], t[1], t[2]));
        _faces.Add(Make(t[0], t[3], t[1]));
        _faces.Add(Make(t[1], t[3], t[2]));
        _faces.Add(Make(t[2], t[3], t[0]));
    }

    private int[] Tetrahedron()
    {
        int n = _x.Length;
        int second = -1, third = -1;
        for (int i = 1; i < n && second < 0; i++)
        {
            second = _x[i] != _x[0] || _y[i] != _y[0] || _z[i] != _z[0] ? i : -1;
        }

        for (int i = 1; i < n && second >= 0 && third < 0; i++)
        {
            third = IsOnLine(second, i) ? -1 : i;
        }

        for (int i = 1; i < n && third >= 0; i++)
        {
            if (Determinant(0, second, third, i) != 0)
            {
                return [0, second, third, i];
            }
        }

        return [];
    }

    private bool IsOnLine(int b, int c)
    {
        Int128 ux = _x[b] - _x[0], uy = _y[b] - _y[0], uz = _z[b] - _z[0];
        Int128 vx = _x[c] - _x[0], vy = _y[c] - _y[0], vz = _z[c] - _z[0];
        return (uy * vz) == (uz * vy) && (uz * vx) == (ux * vz) && (ux * vy) == (uy * vx);
    }

    /// <summary>The farthest points along the axes and diagonals of the cube: once they stand, most others lie inside.</summary>
    private IEnumerable<int> Extremes()
    {
        for (int d = 0; d < 27; d++)
        {
            int a = (d % 3) - 1, b = (d / 3 % 3) - 1, c = (d / 9) - 1;
            int best = 0;
            long most = long.MinValue;
            for (int i = 0; i < _x.Length; i++)
            {
                long along = (a * _x[i]) + (b * _y[i]) + (c * _z[i]);
                (most, best) = along > most ? (along, i) : (most, best);
            }

            yield return best;
        }
    }

    private readonly record struct Face(int A, int B, int C, double NormalX, double NormalY, double NormalZ, double Doubt, bool Alive);
}
