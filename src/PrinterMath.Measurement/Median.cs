namespace PrinterMath.Measurement;

/// <summary>The median: the middle reading, or the mean of the middle two; up to half of the readings may be wrong without carrying it away.</summary>
/// <remarks>Follows the readings through any shift and scale. Source: Huber, Ronchetti 2009, Robust Statistics, 2nd ed., section 1.3 (from memory).</remarks>
/// <example><code>double middle = Median.Of([20.1, 20.3, 57.0]); // 20.3</code></example>
public static class Median
{
    /// <summary>Median of readings.</summary>
    /// <param name="readings">At least one finite reading, in any one unit and order.</param>
    /// <returns>The median, in the unit of the readings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are no readings, or one is not finite.</exception>
    public static double Of(ReadOnlySpan<double> readings)
    {
        Guard.AtLeast(readings.Length, 1, nameof(readings));
        Guard.AllFinite(readings);
        double[] sorted = readings.ToArray();
        return OfOwned(sorted);
    }

    /// <summary>Median of readings known to be finite; sorts them in place.</summary>
    internal static double OfOwned(double[] readings)
    {
        Array.Sort(readings);
        int half = readings.Length / 2;
        return readings.Length % 2 == 1 ? readings[half] : Midpoint(readings[half - 1], readings[half]);
    }

    private static double Midpoint(double low, double high) =>
        double.IsFinite(low + high) ? (low + high) / 2 : (low / 2) + (high / 2);
}
