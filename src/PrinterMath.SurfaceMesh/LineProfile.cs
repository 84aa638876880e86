namespace PrinterMath.SurfaceMesh;

/// <summary>
/// The height of a model along a straight line, as short intervals in each of which p = (1 − u)z₀ + u z₁ + g u(1 − u) + r, |r| ≤ ρ. For cells that are bilinear ρ is zero. The
/// ends of the intervals are the candidates for the knots of a split move.
/// </summary>
internal sealed class LineProfile
{
    /// <summary>How many candidates there are in the longest stretch that one piece can cover.</summary>
    private const int Fineness = 16;

    /// <summary>Straight stretches have candidates within them too, since a piece may begin beside a crease.</summary>
    private const int Least = 4;

    private readonly List<double> _distances = [0];
    private readonly List<double> _heights = [];
    private readonly List<double> _bulges = [];
    private readonly List<double> _remainders = [];

    private LineProfile(ProfileLine line)
    {
        Line = line;
        _heights.Add(line.Height(0));
    }

    internal ProfileLine Line { get; }

    internal bool IsProven { get; private init; }

    internal int Intervals => _bulges.Count;

    /// <summary>Distance of a candidate from the start, in metres.</summary>
    internal double Distance(int candidate) => _distances[candidate];

    internal double Height(int candidate) => _heights[candidate];

    /// <summary>g of the interval that begins at a candidate, positive where the surface bulges upwards.</summary>
    internal double Bulge(int interval) => _bulges[interval];

    internal double Remainder(int interval) => _remainders[interval];

    internal static LineProfile Of(IHeightModel model, SurfacePosition from, SurfacePosition to, double tolerance)
    {
        var line = new ProfileLine(model, from, to);
        List<ProfileStretch> stretches = line.Stretches(tolerance, out bool proven);
        var profile = new LineProfile(line) { IsProven = proven };
        double pieces = 0;
        foreach (ProfileStretch stretch in stretches)
        {
            double ratio = Math.Sqrt(BernsteinForm.LargestCurvature(stretch.Coefficients) / (8 * tolerance));
            pieces += ratio;
            if (!(pieces <= FollowedMove.MostSegments))
            {
                throw Guard.Out("maximumDeviation", tolerance, FormattableString.Invariant($"large enough for the move to need no more than {FollowedMove.MostSegments} pieces, in metres"));
            }

            profile.Append(stretch, Count(ratio));
        }

        return profile;
    }

    /// <summary>Largest distance of the model from the chord between two candidates; exact where ρ is zero.</summary>
    internal double Deviation(int first, int last)
    {
        double slope = (_heights[last] - _heights[first]) / (_distances[last] - _distances[first]);
        double largest = 0, before = 0;
        for (int i = first; i < last; i++)
        {
            double after = i + 1 == last ? 0 : _heights[first] + (slope * (_distances[i + 1] - _distances[first])) - _heights[i + 1];
            double g = _bulges[i], top = g == 0 ? 0 : (g + before - after) / (2 * g);
            double within = top is > 0 and < 1 ? Math.Abs(before - (g * top * top)) : 0;
            largest = Math.Max(largest, Math.Max(Math.Abs(before), within) + _remainders[i]);
            before = after;
        }

        return largest;
    }

    /// <summary>r is the length of a stretch over the length that one piece can cover; equal division into as few pieces as the stretch needs is always possible.</summary>
    private static int Count(double ratio) => ratio > 1 ? Fineness * (int)Math.Ceiling(ratio) : Math.Max(Least, (int)Math.Ceiling(Fineness * ratio));

    private void Append(ProfileStretch stretch, int count)
    {
        int n = stretch.Coefficients.Length - 1;
        Span<double> part = stackalloc double[n + 1];
        double end = stretch.To;
        for (int i = 0; i < count; i++)
        {
            BernsteinForm.Part(stretch.Coefficients, (double)i / count, (i + 1.0) / count, part);
            double chord = part[n] - part[0], middle = (double)(n / 2) * (n - (n / 2)) / (n * (n - 1));
            double bulge = (part[n / 2] - part[0] - (chord * (n / 2) / n)) / middle, remainder = stretch.Error;
            for (int j = 1; j < n; j++)
            {
                double e = part[j] - part[0] - (chord * j / n);
                remainder = Math.Max(remainder, Math.Abs(e - (bulge * j * (n - j) / (n * (n - 1)))) + stretch.Error);
            }

            double at = i + 1 == count ? end : stretch.From + ((end - stretch.From) * (i + 1) / count);
            _distances.Add(at);
            _heights.Add(Line.Height(at));
            _bulges.Add(bulge);
            _remainders.Add(n == 2 ? stretch.Error : remainder);
        }
    }
}
