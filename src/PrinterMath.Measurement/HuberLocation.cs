namespace PrinterMath.Measurement;

/// <summary>Huber's M-estimate of location, with the scaled median absolute deviation as spread.</summary>
/// <remarks>
/// Solves Σψ((xᵢ − m)/S) = 0 with ψ(r) = max(−k, min(k, r)) and S = 1.4826 MAD, by m ← m + S·mean ψ. At least half of the
/// readings count in full, so that every step at least halves the distance left. Its uncertainty is u² = S²·Σψ²/((n − 1)·n·(mean ψ′)²), where mean ψ′ is the part of the readings counted in full; it holds for
/// many readings, say 10 or more, from a symmetric distribution.
/// Source: Huber 1964, Robust estimation of a location parameter, Annals of Mathematical Statistics 35; Huber, Ronchetti 2009,
/// Robust Statistics, 2nd ed., chapter 6 (equations from memory).
/// </remarks>
/// <example><code>RobustLocation centre = HuberLocation.Of([24.140, 20.155, 19.500, 20.300, 20.705]);</code></example>
public static class HuberLocation
{
    private const double NormalEfficiency95 = 1.345;

    /// <summary>Robust location of readings.</summary>
    /// <param name="readings">At least three finite readings, in any one unit and order.</param>
    /// <param name="options">How to find it; null for the defaults.</param>
    /// <returns>The location; when more than half of the readings are alike, a blocking finding.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than three readings, one is not finite, or an option is out of range.</exception>
    public static RobustLocation Of(ReadOnlySpan<double> readings, RobustLocationOptions? options = null)
    {
        LimitedMean search = new(readings, options ?? new RobustLocationOptions(), NormalEfficiency95);
        if (!search.HasSpread)
        {
            return search.WithoutSpread();
        }

        double center = 0, spread = search.Spread, change = double.PositiveInfinity;
        int steps = 0;
        while (steps < search.MaximumIterations && change > search.Tolerance)
        {
            double next = search.Mean(center, spread);
            change = Math.Abs(next - center) / spread;
            center = next;
            steps++;
        }

        double full = search.FullShare(center, spread);
        double u = search.StandardDeviation(center, spread, about: center) / (Math.Sqrt(readings.Length) * full);
        return search.Result(center, spread, u, steps, change);
    }
}
