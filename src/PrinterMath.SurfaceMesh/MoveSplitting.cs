namespace PrinterMath.SurfaceMesh;

/// <summary>
/// The fewest chords between candidates of a profile, each within the tolerance of it everywhere, and of those the most even ones: a shortest path over all chords
/// that are allowed. From one candidate the slopes of lines that keep within the tolerance form an interval that only shrinks on the way, in each interval of the profile by
/// a tangent to a parabola in closed form; a chord is allowed while its slope lies inside.
/// Source: Imai, Iri 1988, Polygonal approximations of a curve, in Computational Morphology (from memory).
/// </summary>
internal static class MoveSplitting
{
    internal static List<int> Knots(LineProfile profile, double tolerance)
    {
        int last = profile.Intervals;
        int[] count = new int[last + 1], previous = new int[last + 1];
        double[] unevenness = new double[last + 1];
        Array.Fill(count, int.MaxValue, 1, last);
        for (int a = 0; a < last; a++)
        {
            double lowest = double.NegativeInfinity, highest = double.PositiveInfinity;
            for (int b = a + 1; b <= last; b++)
            {
                Narrow(profile, a, b - 1, tolerance, ref lowest, ref highest);
                double length = profile.Distance(b) - profile.Distance(a);
                double slope = (profile.Height(b) - profile.Height(a)) / length;
                if (b == a + 1 || (slope >= lowest && slope <= highest))
                {
                    double uneven = unevenness[a] + (length * length);
                    if (count[a] + 1 < count[b] || (count[a] + 1 == count[b] && uneven < unevenness[b]))
                    {
                        (count[b], unevenness[b], previous[b]) = (count[a] + 1, uneven, a);
                    }
                }

                if (lowest > highest)
                {
                    break;
                }
            }
        }

        List<int> knots = [last];
        while (knots[^1] != 0)
        {
            knots.Add(previous[knots[^1]]);
        }

        knots.Reverse();
        return knots;
    }

    /// <summary>Lines from candidate a keep within the tolerance in interval i. With w = s − sₐ the profile less zₐ is A + Bw + Cw², and a slope is bounded by (A ± t)/w + B + Cw.</summary>
    private static void Narrow(LineProfile profile, int a, int i, double tolerance, ref double lowest, ref double highest)
    {
        double from = profile.Distance(i) - profile.Distance(a), to = profile.Distance(i + 1) - profile.Distance(a), step = to - from;
        double rise = profile.Height(i) - profile.Height(a), bulge = profile.Bulge(i), t = tolerance - profile.Remainder(i);
        double slope = (profile.Height(i + 1) - profile.Height(i) + bulge) / step;
        double c = -bulge / (step * step), b = slope - (2 * c * from), constant = rise - (slope * from) + (c * from * from);
        highest = Math.Min(highest, Smallest(constant + t, b, c, from, to));
        lowest = Math.Max(lowest, -Smallest(t - constant, -b, -c, from, to));
    }

    /// <summary>Smallest A/w + B + Cw from one w to another.</summary>
    private static double Smallest(double constant, double linear, double square, double from, double to)
    {
        double smallest = (constant / to) + linear + (square * to);
        if (from > 0)
        {
            smallest = Math.Min(smallest, (constant / from) + linear + (square * from));
        }

        if (constant > 0 && square > 0)
        {
            double at = Math.Sqrt(constant / square);
            smallest = at > from && at < to ? Math.Min(smallest, linear + (2 * Math.Sqrt(constant * square))) : smallest;
        }

        return smallest;
    }
}
