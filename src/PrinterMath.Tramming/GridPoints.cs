using System.Numerics;

namespace PrinterMath.Tramming;

/// <summary>
/// Points rounded to a grid of 2⁻⁵⁶ and moved on it, each by an amount of its own below 2⁻⁴³, so that no four lie in a plane and no two in one place. On which side of a plane a point
/// lies is decided exactly: in doubles where these are certain, else in whole numbers.
/// </summary>
internal sealed class GridPoints
{
    private const int Bits = 56;
    private const int MovedBits = 13;

    private readonly long[] _x;
    private readonly long[] _y;
    private readonly long[] _z;

    /// <summary>Points with coordinates from −1 to 1.</summary>
    internal GridPoints(double[] x, double[] y, double[] z)
    {
        _x = Grid(x, 1);
        _y = Grid(y, 2);
        _z = Grid(z, 3);
    }

    internal int Count => _x.Length;

    /// <summary>All indices, mixed: in this order a hull grows in about n·log n steps, whatever the shape.</summary>
    internal int[] MixedOrder()
    {
        int[] order = new int[Count];
        ulong[] keys = new ulong[Count];
        for (int i = 0; i < order.Length; i++)
        {
            (order[i], keys[i]) = (i, Mixed((ulong)i * 4));
        }

        Array.Sort(keys, order);
        return order;
    }

    internal HullFace Face(int a, int b, int c)
    {
        (double X, double Y, double Z) n = Product(a, b, a, c, out double doubt);
        return new HullFace(a, b, c, n.X, n.Y, n.Z, doubt);
    }

    /// <summary>Sign of N·(to − from), N the outward normal of the face.</summary>
    internal int Side(in HullFace f, int from, int to)
    {
        int sign = Sign((f.NormalX, f.NormalY, f.NormalZ), f.Doubt, from, to);
        return sign != 0 ? sign : ExactSide(f.A, f.B, f.A, f.C, from, to);
    }

    /// <summary>Sign of (b − a) × (d − c)·(to − from).</summary>
    internal int Side(int a, int b, int c, int d, int from, int to)
    {
        int sign = Sign(Product(a, b, c, d, out double doubt), doubt, from, to);
        return sign != 0 ? sign : ExactSide(a, b, c, d, from, to);
    }

    /// <summary>(b − a) × (d − c), exact before it is rounded: nearly parallel lines lose no digits.</summary>
    internal (double X, double Y, double Z) Cross(int a, int b, int c, int d)
    {
        (Int128 x, Int128 y, Int128 z) = ExactProduct(a, b, c, d);
        return (Math.ScaleB((double)x, -2 * Bits), Math.ScaleB((double)y, -2 * Bits), Math.ScaleB((double)z, -2 * Bits));
    }

    /// <summary>N·(to − from).</summary>
    internal double Along((double X, double Y, double Z) n, int from, int to)
    {
        (double x, double y, double z) = Between(from, to);
        return Math.ScaleB((n.X * x) + (n.Y * y) + (n.Z * z), -Bits);
    }

    private (double X, double Y, double Z) Between(int from, int to) => (_x[to] - _x[from], _y[to] - _y[from], _z[to] - _z[from]);

    /// <summary>(b − a) × (d − c) in doubles, and a bound of what each component may be off by.</summary>
    private (double X, double Y, double Z) Product(int a, int b, int c, int d, out double doubt)
    {
        (double ux, double uy, double uz) = Between(a, b);
        (double vx, double vy, double vz) = Between(c, d);
        doubt = 1e-15 * (Math.Abs(uy * vz) + Math.Abs(uz * vy) + Math.Abs(uz * vx) + Math.Abs(ux * vz) + Math.Abs(ux * vy) + Math.Abs(uy * vx));
        return ((uy * vz) - (uz * vy), (uz * vx) - (ux * vz), (ux * vy) - (uy * vx));
    }

    /// <summary>Sign of n·(to − from) where doubles make it certain, else zero.</summary>
    private int Sign((double X, double Y, double Z) n, double doubt, int from, int to)
    {
        (double x, double y, double z) = Between(from, to);
        double side = (n.X * x) + (n.Y * y) + (n.Z * z);
        double bound = 8 * doubt * Math.Max(Math.Abs(x), Math.Max(Math.Abs(y), Math.Abs(z)));
        return side > bound ? 1 : side < -bound ? -1 : 0;
    }

    private int ExactSide(int a, int b, int c, int d, int from, int to)
    {
        (Int128 x, Int128 y, Int128 z) = ExactProduct(a, b, c, d);
        return (((BigInteger)x * (_x[to] - _x[from])) + ((BigInteger)y * (_y[to] - _y[from])) + ((BigInteger)z * (_z[to] - _z[from]))).Sign;
    }

    private (Int128 X, Int128 Y, Int128 Z) ExactProduct(int a, int b, int c, int d)
    {
        Int128 ux = _x[b] - _x[a], uy = _y[b] - _y[a], uz = _z[b] - _z[a];
        Int128 vx = _x[d] - _x[c], vy = _y[d] - _y[c], vz = _z[d] - _z[c];
        return ((uy * vz) - (uz * vy), (uz * vx) - (ux * vz), (ux * vy) - (uy * vx));
    }

    private static long[] Grid(double[] values, int axis)
    {
        long[] grid = new long[values.Length];
        for (int i = 0; i < values.Length; i++)
        {
            ulong h = Mixed(((ulong)i * 4) + (ulong)axis);
            grid[i] = (long)Math.Round(Math.ScaleB(values[i], Bits)) + (long)(h & ((1UL << (MovedBits + 1)) - 1)) - (1L << MovedBits);
        }

        return grid;
    }

    /// <summary>SplitMix64: Steele, Lea, Flood 2014, OOPSLA (from memory).</summary>
    private static ulong Mixed(ulong h)
    {
        h = (h + 1) * 0x9E3779B97F4A7C15;
        h = (h ^ (h >> 30)) * 0xBF58476D1CE4E5B9;
        h = (h ^ (h >> 27)) * 0x94D049BB133111EB;
        return h ^ (h >> 31);
    }
}
