namespace PrinterMath.Tension;

/// <summary>Looks for beats: a second string whose partials lie at (1 + δ) times those of the first.</summary>
/// <remarks>
/// <para>One string: the logarithm of the complex amplitude of partial n is a + (b + ic)·t + d·t², slow gliding and gain included. Two strings: r·exp(±2πi·δ·f_n·t)
/// is added, to first order in r, with one δ for all partials. Both are linear given δ, which is sought on a grid; the noise is that of the residual.</para>
/// <para>A common gain curve moves the amplitude alone and a glide the phase alone. Either is a real curve, of which one rotation explains at most half; the second
/// string is explained almost whole. This tells them apart once a partial has turned one and a half times. The first partial must turn 0.7 times within the window:
/// recorded strings beat more slowly by themselves, in their two planes of vibration. A nearer neighbour cannot be told.</para>
/// <para>Source: Fletcher and Rossing 1998, The Physics of Musical Instruments, beats of two strings (from memory).</para>
/// </remarks>
internal static class BeatSearch
{
    private const double LeastTurns = 1.5;
    private const double LeastFundamentalTurns = 0.7;
    private const double Largest = 0.06;
    private const double LeastOdds = 12;
    private const double LeastOwnOdds = 1;
    private const double LeastLevel = 0.06;
    private const double HighestTurn = 0.45;
    private const int LeastBlocks = 8;
    private const int MostPartials = 6;

    internal static Beat? Find(PartialTracker track, ReadOnlySpan<double> frequencies, double fundamental)
    {
        if (track.Blocks < LeastBlocks)
        {
            return null;
        }

        List<PartialCourse> courses = [];
        List<double> followed = [];
        int first = FirstFullBlock(track);
        for (int p = 0; p < Math.Min(MostPartials, frequencies.Length); p++)
        {
            if (PartialCourse.Of(track, p, first) is { } course)
            {
                courses.Add(course);
                followed.Add(frequencies[p]);
            }
        }

        return courses.Count < 2 || courses.Count(c => c.RestShare > LeastLevel * LeastLevel / 4) < 2 ? null : Best(courses, followed, fundamental, track.HopSeconds);
    }

    /// <summary>The block after the loudest of the first half: those before it hold the onset.</summary>
    private static int FirstFullBlock(PartialTracker track)
    {
        int loudest = 0;
        double most = 0;
        for (int b = 0; b < track.Blocks / 2; b++)
        {
            double power = 0;
            for (int p = 0; p < track.Partials; p++)
            {
                power += track.PowerAt(b, p);
            }

            (loudest, most) = power > most ? (b, power) : (loudest, most);
        }

        return loudest + 1;
    }

    private static Beat? Best(List<PartialCourse> courses, List<double> frequencies, double fundamental, double hop)
    {
        double seconds = courses.Max(c => c.Blocks) * hop, highest = frequencies.Max(), best = 0, odds = 0;
        double step = 0.2 / (highest * seconds);
        for (double d = LeastFundamentalTurns / (fundamental * seconds); d < Largest; d += step)
        {
            double sum = 0;
            for (int p = 0; p < courses.Count; p++)
            {
                double turn = d * frequencies[p] * hop;
                sum += turn < HighestTurn && turn * courses[p].Blocks >= LeastTurns ? courses[p].Turning(turn).Odds : 0;
            }

            (best, odds) = sum > odds ? (d, sum) : (best, odds);
        }

        if (odds < LeastOdds)
        {
            return null;
        }

        int agree = 0;
        double squares = 0;
        for (int p = 0; p < courses.Count; p++)
        {
            double turn = best * frequencies[p] * hop;
            (double own, double level) = turn < HighestTurn && turn * courses[p].Blocks >= LeastTurns ? courses[p].Turning(turn) : default;
            if (own > LeastOwnOdds && level > LeastLevel / 2)
            {
                agree++;
                squares += level * level;
            }
        }

        double ratio = Math.Sqrt(squares / Math.Max(1, agree));
        return agree >= 2 && ratio >= LeastLevel ? new Beat(best, ratio, odds) : null;
    }
}
