namespace PrinterMath.Tramming;

/// <summary>
/// The pattern of four support heights that no plane contains, and the saddle over the bed that takes it: the null vector n of [1 x y]ᵀ,
/// nᵢ = ±area of the triangle of the other three, scaled to a largest |n| of 1; the saddle is the product of the coordinates along the bisectors of the diagonals.
/// </summary>
internal readonly record struct TwistPattern(bool IsSaddle, double CentreX, double CentreY, double E1X, double E1Y, double E2X, double E2Y, double Scale)
{
    internal static TwistPattern Of(ReadOnlySpan<AdjustingScrew> s)
    {
        Span<double> n = [Area(s[1], s[2], s[3]), -Area(s[0], s[2], s[3]), Area(s[0], s[1], s[3]), -Area(s[0], s[1], s[2])];
        double largest = 0;
        int positive = 0;
        foreach (double value in n)
        {
            largest = Math.Max(largest, Math.Abs(value));
            positive += value * n[0] > 0 ? 1 : 0;
        }

        int negative = 0;
        double sign = n[0] < 0 ? -1 : 1;
        for (int i = 0; i < n.Length; i++)
        {
            n[i] *= sign / largest;
            negative += n[i] < 0 ? 1 : 0;
        }

        return positive == 2 && negative == 2 ? Saddle(s, n) : default;
    }

    /// <summary>Height of the saddle that stands for a pattern amplitude of 1; a plane apart, 1 at the support where the pattern is largest.</summary>
    internal double At(double x, double y)
    {
        double dx = x - CentreX;
        double dy = y - CentreY;
        return Scale * ((dx * E1X) + (dy * E1Y)) * ((dx * E2X) + (dy * E2Y));
    }

    private static TwistPattern Saddle(ReadOnlySpan<AdjustingScrew> s, ReadOnlySpan<double> n)
    {
        (double ux, double uy) = Diagonal(s, n, 1);
        (double vx, double vy) = Diagonal(s, n, -1);
        double plus = Math.Sqrt(((ux + vx) * (ux + vx)) + ((uy + vy) * (uy + vy)));
        double minus = Math.Sqrt(((ux - vx) * (ux - vx)) + ((uy - vy) * (uy - vy)));
        var unscaled = new TwistPattern(
            true,
            (s[0].XMeters + s[1].XMeters + s[2].XMeters + s[3].XMeters) / 4,
            (s[0].YMeters + s[1].YMeters + s[2].YMeters + s[3].YMeters) / 4,
            (ux + vx) / plus,
            (uy + vy) / plus,
            (ux - vx) / minus,
            (uy - vy) / minus,
            1);
        double squares = 0, projection = 0;
        for (int i = 0; i < n.Length; i++)
        {
            squares += n[i] * n[i];
            projection += n[i] * unscaled.At(s[i].XMeters, s[i].YMeters);
        }

        return unscaled with { Scale = squares / projection };
    }

    /// <summary>Direction of the diagonal between the two supports whose pattern has the given sign.</summary>
    private static (double X, double Y) Diagonal(ReadOnlySpan<AdjustingScrew> s, ReadOnlySpan<double> n, int sign)
    {
        int first = -1, second = -1;
        for (int i = 0; i < n.Length; i++)
        {
            if (Math.Sign(n[i]) == sign)
            {
                (first, second) = first < 0 ? (i, second) : (first, i);
            }
        }

        double dx = s[second].XMeters - s[first].XMeters;
        double dy = s[second].YMeters - s[first].YMeters;
        double length = Math.Sqrt((dx * dx) + (dy * dy));
        return (dx / length, dy / length);
    }

    private static double Area(AdjustingScrew a, AdjustingScrew b, AdjustingScrew c) =>
        ((b.XMeters - a.XMeters) * (c.YMeters - a.YMeters)) - ((c.XMeters - a.XMeters) * (b.YMeters - a.YMeters));
}
