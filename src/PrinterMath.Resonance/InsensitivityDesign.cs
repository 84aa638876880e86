namespace PrinterMath.Resonance;

/// <summary>The shortest sequence of positive impulses that keeps a tolerance over ranges of modes.</summary>
internal static class InsensitivityDesign
{
    private const double Gap = 1e-6;
    private const double DurationAccuracy = 1e-9;
    private const double LongestPeriods = 40;

    internal static (double[] Amplitudes, double[] Times) Shortest(IReadOnlyList<ModeRange> ranges, double tolerance, CancellationToken cancellation)
    {
        double unit = 1 / Math.Sqrt(ranges.Min(range => range.Band.LowerHertz) * ranges.Max(range => range.Band.UpperHertz));
        RangeLine[] lines = RangeLine.Of(ranges, unit);
        var game = new RangeGame(lines, Gap * tolerance);
        double longest = LongestPeriods / (ranges.Min(range => range.Band.LowerHertz) * unit);
        double duration = Duration(game, tolerance, longest, cancellation);
        (double[] amplitudes, double[] times) = InsensitivityOptimum.Sharpened(lines, game, duration, tolerance);
        return (amplitudes, [.. times.Select(time => time * unit)]);
    }

    /// <summary>Where the value of the game, which falls with the duration, comes to the tolerance: bracketed, then false position of Illinois.</summary>
    private static double Duration(RangeGame game, double tolerance, double longest, CancellationToken cancellation)
    {
        double low = 0, atLow = 1 - tolerance;
        double high = 0.25, atHigh = game.Value(high, cancellation) - tolerance;
        while (atHigh > 0)
        {
            (low, atLow, high) = (high, atHigh, 1.3 * high);
            if (high > longest)
            {
                throw Guard.Refused("ranges", FormattableString.Invariant($"No sequence of up to {LongestPeriods} periods of the lowest frequency keeps {tolerance * 100:G3} % over all ranges."));
            }

            atHigh = game.Value(high, cancellation) - tolerance;
        }

        int side = 0;
        for (int i = 0; i < 60 && high - low > DurationAccuracy * high; i++)
        {
            double middle = high - (atHigh * (high - low) / (atHigh - atLow));
            double at = game.Value(middle, cancellation) - tolerance;
            if (Math.Abs(at) < Gap * tolerance)
            {
                return middle;
            }

            if (at > 0)
            {
                (low, atLow) = (middle, at);
                atHigh /= side == 1 ? 2 : 1;
                side = 1;
            }
            else
            {
                (high, atHigh) = (middle, at);
                atLow /= side == -1 ? 2 : 1;
                side = -1;
            }
        }

        _ = game.Value(high, cancellation);
        return high;
    }
}
