namespace PrinterMath.SurfaceMesh;

/// <summary>Keeps each bicubic cell within the heights of its four nodes.</summary>
/// <remarks>
/// A bicubic cell lies in the hull of its sixteen Bézier ordinates. Those on the sides are held by slopes of the monotone rule; the inner one beside a node
/// is z ± hₓz_x/3 ± h_y z_y/3 ± hₓh_y z_xy/9. At each node the slopes are shortened by one common factor, no more than needed, so that a twist exists that keeps
/// the inner ordinates of all its cells in range (at a factor of ½ none is needed: the ordinate is then a mean of nodes); the twist is moved into that range.
/// Source: the hull property, G. Farin 2002, Curves and Surfaces for CAGD, 5th edition, chapter 14 (from memory); the conditions are derived here.
/// </remarks>
internal static class CellRange
{
    /// <summary>Of the range; keeps rounding on the safe side.</summary>
    private const double Slack = 1e-14;

    internal static void Limit(GridAxis x, GridAxis y, double[] heights, double[] alongX, double[] alongY, double[] twist)
    {
        Span<Bound> bounds = stackalloc Bound[4];
        for (int i = 0; i < heights.Length; i++)
        {
            int count = 0;
            for (int quadrant = 0; quadrant < 4; quadrant++)
            {
                int right = (2 * (quadrant & 1)) - 1, up = (quadrant & 2) - 1;
                int column = (i % x.Count) + right, row = (i / x.Count) + up;
                if (column >= 0 && column < x.Count && row >= 0 && row < y.Count)
                {
                    double stepX = x.Nodes[column] - x.Nodes[column - right], stepY = y.Nodes[row] - y.Nodes[row - up];
                    double a = heights[i], b = heights[i + right], c = heights[i + (up * x.Count)], d = heights[i + right + (up * x.Count)];
                    double low = Math.Min(Math.Min(a, b), Math.Min(c, d)) - a, high = Math.Max(Math.Max(a, b), Math.Max(c, d)) - a;
                    double perTwist = 9 / (stepX * stepY), slopes = ((stepX * alongX[i]) + (stepY * alongY[i])) / 3;
                    bounds[count++] = perTwist > 0
                        ? new Bound(low * perTwist, high * perTwist, -slopes * perTwist)
                        : new Bound(high * perTwist, low * perTwist, -slopes * perTwist);
                }
            }

            double factor = Factor(bounds[..count]);
            alongX[i] *= factor;
            alongY[i] *= factor;
            double least = double.NegativeInfinity, most = double.PositiveInfinity;
            foreach (Bound bound in bounds[..count])
            {
                least = Math.Max(least, bound.Low + (factor * bound.PerFactor));
                most = Math.Min(most, bound.High + (factor * bound.PerFactor));
            }

            twist[i] = most > least ? Math.Clamp(twist[i], least, most) : (least + most) / 2;
        }
    }

    /// <summary>Largest factor up to 1 at which all ranges of the twist still meet; they do at 0.</summary>
    private static double Factor(ReadOnlySpan<Bound> bounds)
    {
        double factor = 1;
        foreach (Bound below in bounds)
        {
            foreach (Bound above in bounds)
            {
                double room = above.High - below.Low, closing = below.PerFactor - above.PerFactor;
                if (closing > 0 && room < factor * closing)
                {
                    factor = room * (1 - Slack) / closing;
                }
            }
        }

        return factor;
    }

    /// <summary>The twist lies from Low + PerFactor·s to High + PerFactor·s when the slopes are shortened to s.</summary>
    private readonly record struct Bound(double Low, double High, double PerFactor);
}
