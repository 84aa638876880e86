using PrinterMath.Measurement;

namespace PrinterMath.Tramming.Tests;

/// <summary>
/// Widths of small sets by trying every plane that is parallel to two of the lines through pairs of points: every face against a vertex and every edge against an edge is
/// among them, so the least width is the minimum zone.
/// </summary>
internal static class ZoneBruteForce
{
    internal static (double InZ, double Orthogonal) Widths(IReadOnlyList<ProbePoint> points)
    {
        (int, int)[] pairs = [.. from i in Enumerable.Range(0, points.Count) from j in Enumerable.Range(0, i) select (j, i)];
        double inZ = double.PositiveInfinity, orthogonal = double.PositiveInfinity;
        for (int q = 0; q < pairs.Length; q++)
        {
            for (int r = 0; r < q; r++)
            {
                (double X, double Y, double Z) u = Between(points, pairs[q]), v = Between(points, pairs[r]);
                (double X, double Y, double Z) n = ((u.Y * v.Z) - (u.Z * v.Y), (u.Z * v.X) - (u.X * v.Z), (u.X * v.Y) - (u.Y * v.X));
                double length = Size(n), area = Size(u) * Size(v);
                if (!(length > 1e-9 * area))
                {
                    continue; // parallel lines or one place twice: no plane
                }

                double[] along = [.. points.Select(p => (n.X * p.XMeters) + (n.Y * p.YMeters) + (n.Z * p.ZMeters))];
                double extent = along.Max() - along.Min();
                orthogonal = Math.Min(orthogonal, extent / length);
                inZ = Math.Abs(n.Z) > 1e-9 * area ? Math.Min(inZ, extent / Math.Abs(n.Z)) : inZ;
            }
        }

        return (inZ, orthogonal);
    }

    private static (double X, double Y, double Z) Between(IReadOnlyList<ProbePoint> p, (int From, int To) pair) =>
        (p[pair.To].XMeters - p[pair.From].XMeters, p[pair.To].YMeters - p[pair.From].YMeters, p[pair.To].ZMeters - p[pair.From].ZMeters);

    private static double Size((double X, double Y, double Z) v) => Math.Sqrt((v.X * v.X) + (v.Y * v.Y) + (v.Z * v.Z));
}
