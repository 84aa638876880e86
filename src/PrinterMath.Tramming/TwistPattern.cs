namespace PrinterMath.Tramming;

/// <summary>
/// The saddle over the bed that takes what no plane contains of the heights at four or more supports: a product of coordinates along two directions.
/// Four: n is the null vector of [1 x y]ᵀ, nᵢ = ±area of the triangle of the other three, scaled to a largest |n| of 1; the directions are the bisectors of the diagonals.
/// More: the directions, square to each other, whose saddle is the farthest from any plane at the supports; n is that saddle there, a plane apart.
/// </summary>
internal readonly record struct TwistPattern(bool IsSaddle, double CentreX, double CentreY, double E1X, double E1Y, double E2X, double E2Y, double Scale)
{
    /// <summary>A saddle that is, a plane apart, below this part of itself at the supports is none.</summary>
    private const double LeastSaddle = 1e-3;

    internal static TwistPattern Of(ReadOnlySpan<Place> s) => s.Length == 4 ? OfFour(s) : OfMany(s);

    /// <summary>Height of the saddle that stands for a pattern amplitude of 1; a plane apart, 1 at the support where the pattern is largest.</summary>
    internal double At(double x, double y)
    {
        double dx = x - CentreX;
        double dy = y - CentreY;
        return Scale * ((dx * E1X) + (dy * E1Y)) * ((dx * E2X) + (dy * E2Y));
    }

    private static TwistPattern OfFour(ReadOnlySpan<Place> s)
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

    private static TwistPattern OfMany(ReadOnlySpan<Place> s)
    {
        var axes = PrincipalAxes.Of(s);
        double[] product = new double[s.Length];
        double[] difference = new double[s.Length];
        double size = 0;
        for (int i = 0; i < s.Length; i++)
        {
            double dx = s[i].X - axes.CentreX;
            double dy = s[i].Y - axes.CentreY;
            product[i] = dx * dy;
            difference[i] = ((dx * dx) - (dy * dy)) / 2;
            size += ((dx * dx) + (dy * dy)) * ((dx * dx) + (dy * dy)) / 4;
        }

        RemovePlane(product, s, axes);
        RemovePlane(difference, s, axes);
        double pp = 0, pd = 0, dd = 0;
        for (int i = 0; i < s.Length; i++)
        {
            pp += product[i] * product[i];
            pd += product[i] * difference[i];
            dd += difference[i] * difference[i];
        }

        // cos φ·xy + sin φ·(x² − y²)/2 is the product of coordinates along directions turned by −φ/2
        (double sine, double cosine) = Math.SinCos(Math.Atan2(2 * pd, pp - dd) / 2);
        (double sin, double cos) = Math.SinCos(-Math.Atan2(sine, cosine) / 2);
        double largest = 0, first = 0;
        for (int i = 0; i < s.Length; i++)
        {
            double n = (cosine * product[i]) + (sine * difference[i]);
            first = i == 0 ? n : first;
            largest = Math.Max(largest, Math.Abs(n));
        }

        return largest * largest > LeastSaddle * LeastSaddle * size / s.Length
            ? new TwistPattern(true, axes.CentreX, axes.CentreY, cos, sin, -sin, cos, (first < 0 ? -1 : 1) / largest)
            : default;
    }

    private static void RemovePlane(double[] heights, ReadOnlySpan<Place> s, in PrincipalAxes axes)
    {
        double mean = 0, along = 0, across = 0;
        for (int i = 0; i < heights.Length; i++)
        {
            (double u, double v) = axes.Local(s[i].X, s[i].Y);
            mean += heights[i] / heights.Length;
            along += heights[i] * u / axes.AlongMoment;
            across += heights[i] * v / axes.AcrossMoment;
        }

        for (int i = 0; i < heights.Length; i++)
        {
            (double u, double v) = axes.Local(s[i].X, s[i].Y);
            heights[i] -= mean + (along * u) + (across * v);
        }
    }

    private static TwistPattern Saddle(ReadOnlySpan<Place> s, ReadOnlySpan<double> n)
    {
        (double ux, double uy) = Diagonal(s, n, 1);
        (double vx, double vy) = Diagonal(s, n, -1);
        double plus = Math.Sqrt(((ux + vx) * (ux + vx)) + ((uy + vy) * (uy + vy)));
        double minus = Math.Sqrt(((ux - vx) * (ux - vx)) + ((uy - vy) * (uy - vy)));
        var unscaled = new TwistPattern(
            true,
            (s[0].X + s[1].X + s[2].X + s[3].X) / 4,
            (s[0].Y + s[1].Y + s[2].Y + s[3].Y) / 4,
            (ux + vx) / plus,
            (uy + vy) / plus,
            (ux - vx) / minus,
            (uy - vy) / minus,
            1);
        double squares = 0, projection = 0;
        for (int i = 0; i < n.Length; i++)
        {
            squares += n[i] * n[i];
            projection += n[i] * unscaled.At(s[i].X, s[i].Y);
        }

        return unscaled with { Scale = squares / projection };
    }

    /// <summary>Direction of the diagonal between the two supports whose pattern has the given sign.</summary>
    private static (double X, double Y) Diagonal(ReadOnlySpan<Place> s, ReadOnlySpan<double> n, int sign)
    {
        int first = -1, second = -1;
        for (int i = 0; i < n.Length; i++)
        {
            if (Math.Sign(n[i]) == sign)
            {
                (first, second) = first < 0 ? (i, second) : (first, i);
            }
        }

        double dx = s[second].X - s[first].X;
        double dy = s[second].Y - s[first].Y;
        double length = Math.Sqrt((dx * dx) + (dy * dy));
        return (dx / length, dy / length);
    }

    private static double Area(in Place a, in Place b, in Place c) =>
        ((b.X - a.X) * (c.Y - a.Y)) - ((c.X - a.X) * (b.Y - a.Y));
}
