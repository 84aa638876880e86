using FsCheck.Xunit;

namespace PrinterMath.SurfaceMesh.Tests;

/// <summary>Laws on random grids with uneven spacings, nodes of up to 1 mm scattered at will, and random moves and tolerances: far rougher than a print surface.</summary>
[Properties(Arbitrary = [typeof(SurfaceArbitrary)], MaxTest = 100)]
public sealed class MoveSplittingProperties
{
    /// <summary>Rounding of heights up to 1 mm, and of the places at which they are compared.</summary>
    private const double Rounding = 1e-15;

    [Property]
    public bool Deviation_never_passes_the_tolerance(AnySurface s, byte choice) => Moves(s, choice).All(m =>
    {
        double dense = m.Profile.Deviation(m.Move, 200);
        return dense <= m.Move.LargestDeviation.Meters + Rounding && m.Move.LargestDeviation <= m.Move.MaximumDeviation;
    });

    [Property]
    public bool Bilinear_deviation_is_exact(AnySurface s, byte choice)
    {
        (FollowedMove move, MoveProfile profile, _, _) = Moves(s, choice)[0];

        // 3000 places in a piece miss the top of a parabola by its height/3000² at most, and a crease by its step in slope, below 0.2, times a 3000th of the piece.
        double stated = move.LargestDeviation.Meters, dense = profile.Deviation(move, 3000);
        return dense > stated - (0.2 * profile.Length / 3000) - (stated * 1e-6);
    }

    [Property]
    public bool Pieces_join_and_their_ends_lie_on_the_model(AnySurface s, byte choice) => Moves(s, choice).All(m =>
        m.Move.Segments[0].Start == m.From && m.Move.Segments[^1].End == m.To
        && m.Move.Segments.Zip(m.Move.Segments.Skip(1)).All(pair => pair.First.End == pair.Second.Start && pair.First.EndHeight.Equals(pair.Second.StartHeight, UnitsNet.Length.Zero))
        && m.Move.Segments.All(piece => piece.Length > UnitsNet.Length.Zero)
        && Math.Abs(m.Move.Segments.Sum(piece => piece.Length.Meters) - m.Move.Length.Meters) < Rounding);

    // Bilinear cells, the stated candidates, all chords tried with 32 places in each interval between candidates. A sampled chord may be allowed that the exact bound
    // refuses by (1/32)²/4 of an interval's own bulge, a thousandth of the tolerance at most; the law asked for is one more.
    [Property(MaxTest = 60)]
    public bool Pieces_are_within_one_of_the_fewest_over_the_same_candidates(AnySurface s, byte choice)
    {
        (FollowedMove move, MoveProfile profile, SurfacePosition from, SurfacePosition to) = Moves(s, choice, 2)[0];
        double[] candidates = [.. Candidates(s, from, to, profile.Length, move.MaximumDeviation.Meters)];
        return candidates.Length > 150 || move.Segments.Count <= profile.Fewest(candidates, move.MaximumDeviation.Meters, 200) + 1;
    }

    // Against 60 even candidates and all crossings, for bicubic cells as well, while the fewest are at most eight: a knot that may only stand at a sixteenth costs
    // less than one piece in that many.
    [Property(MaxTest = 60)]
    public bool Few_pieces_are_within_one_of_the_fewest_over_other_candidates(AnySurface s, byte choice) => Moves(s, choice, 4).All(m =>
    {
        double[] candidates = [.. Crossings(s.Columns, m.From.XMeters, m.To.XMeters).Concat(Crossings(s.Rows, m.From.YMeters, m.To.YMeters))
            .Concat(Enumerable.Range(0, 61).Select(k => k / 60.0)).Distinct().Order()];
        int fewest = m.Profile.Fewest(candidates, m.Move.MaximumDeviation.Meters, 60);
        return fewest > 8 || m.Move.Segments.Count <= fewest + 1;
    });

    private static List<double> Candidates(AnySurface s, SurfacePosition from, SurfacePosition to, double length, double tolerance)
    {
        double[] borders = [0, .. Crossings(s.Columns, from.XMeters, to.XMeters).Concat(Crossings(s.Rows, from.YMeters, to.YMeters)).Order(), 1];
        List<double> candidates = [0];
        for (int i = 0; i + 1 < borders.Length; i++)
        {
            double middle = (borders[i] + borders[i + 1]) / 2, dx = to.XMeters - from.XMeters, dy = to.YMeters - from.YMeters;
            int column = Array.FindLastIndex(s.Columns, x => x <= from.XMeters + (middle * dx)), row = Array.FindLastIndex(s.Rows, y => y <= from.YMeters + (middle * dy));
            int n = s.Columns.Length, corner = (row * n) + column;
            if (column < 0 || row < 0 || column == n - 1 || row == s.Rows.Length - 1)
            {
                continue;
            }

            double twist = (s.Heights[corner + n + 1] - s.Heights[corner + 1] - s.Heights[corner + n] + s.Heights[corner])
                / (s.Columns[column + 1] - s.Columns[column]) / (s.Rows[row + 1] - s.Rows[row]);
            double curvature = 2 * twist * dx * dy / length / length;
            double r = (borders[i + 1] - borders[i]) * length * Math.Sqrt(Math.Abs(curvature) / (8 * tolerance));
            int parts = r > 1 ? 16 * (int)Math.Ceiling(r) : Math.Max(4, (int)Math.Ceiling(16 * r));
            candidates.AddRange(Enumerable.Range(1, parts).Select(k => borders[i] + ((borders[i + 1] - borders[i]) * k / parts)));
        }

        candidates[^1] = 1;
        return candidates;
    }

    private static IEnumerable<double> Crossings(double[] nodes, double from, double to) =>
        nodes.Select(node => (node - from) / (to - from)).Where(share => share is > 0 and < 1);

    private static List<(FollowedMove Move, MoveProfile Profile, SurfacePosition From, SurfacePosition To)> Moves(AnySurface s, byte choice, int coarser = 0)
    {
        double tolerance = 1e-6 * Math.Pow(3, (choice % 5) + coarser);
        SurfacePosition from = SurfacePosition.FromMeters(s.X, s.Y);
        SurfacePosition to = SurfacePosition.FromMeters(s.Columns[(choice / 5) % s.Columns.Length], s.Rows[0] + (choice / 255.0 * (s.Rows[^1] - s.Rows[0])));
        to = from == to ? SurfacePosition.FromMeters(s.Columns[0], s.Rows[^1]) : to;
        ProbedGrid grid = ProbedGrid.FromHeights(s.Columns, s.Rows, s.Heights);

        // The places compared at are rounded, and may lie beyond the border by it.
        var clamp = new HeightModelOptions { Outside = OutsideRule.Clamp };
        return
        [
            .. new IHeightModel[] { BilinearModel.Through(grid, clamp), BicubicModel.Through(grid, clamp) }
                .Select(model => (model.Follow(from, to, UnitsNet.Length.FromMeters(tolerance)), new MoveProfile(model, from, to), from, to)),
        ];
    }
}
