namespace PrinterMath.Tramming;

/// <summary>
/// Motion lost in a gap b: the driven side u follows the screw s by u = min(max(u, s − b/2), s + b/2), from u = s + c·b, −1/2 ≤ c ≤ 1/2 and 0 the middle of the gap: the turn before the first is not known.
/// Brokate, Sprekels 1996, Hysteresis and Phase Transitions, 2.1 (from memory).
/// </summary>
internal static class PlayOperator
{
    /// <summary>u − s − c·b after each pass, for demanded moves of a screw before each pass.</summary>
    internal static double[] Lost(ReadOnlySpan<double> moves, double gap, double start)
    {
        double[] lost = new double[moves.Length];
        double screw = 0, driven = start * gap;
        for (int p = 0; p < moves.Length; p++)
        {
            screw += moves[p];
            driven = Math.Min(Math.Max(driven, screw - (gap / 2)), screw + (gap / 2));
            lost[p] = driven - screw - (start * gap);
        }

        return lost;
    }

    internal static bool Reverses(ReadOnlySpan<double> moves)
    {
        int last = 0;
        foreach (double move in moves)
        {
            int sign = Math.Sign(move);
            if (sign != 0 && last != 0 && sign != last)
            {
                return true;
            }

            last = sign != 0 ? sign : last;
        }

        return false;
    }
}
