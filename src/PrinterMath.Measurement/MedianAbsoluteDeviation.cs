namespace PrinterMath.Measurement;

/// <summary>The median absolute deviation from the median, a measure of spread that up to half of the readings cannot carry away.</summary>
/// <remarks>
/// MAD = median|xᵢ − median(x)|. <see cref="Of"/> multiplies by 1/Φ⁻¹(¾) so that it estimates the standard deviation of normal readings.
/// It is zero as soon as more than half of the readings are alike, which coarse resolution brings about.
/// Not to be confused with the mean absolute deviation.
/// Source: Hampel 1974, The influence curve and its role in robust estimation, Journal of the American Statistical Association 69.
/// </remarks>
/// <example><code>double spread = MedianAbsoluteDeviation.Of([0.10, 0.11, 0.12, 0.55, 0.13]);</code></example>
public static class MedianAbsoluteDeviation
{
    /// <summary>1/Φ⁻¹(¾), the factor that makes the MAD of normal readings their standard deviation.</summary>
    public const double NormalConsistency = 1.482602218505602;

    /// <summary>1.4826 MAD, an estimate of the standard deviation of normal readings.</summary>
    /// <param name="readings">At least one finite reading, in any one unit and order.</param>
    /// <returns>The scaled deviation, zero or more, in the unit of the readings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are no readings, or one is not finite or more than 8·10³⁰⁷ from the median.</exception>
    public static double Of(ReadOnlySpan<double> readings) => NormalConsistency * Unscaled(readings);

    /// <summary>MAD itself, not scaled.</summary>
    /// <param name="readings">At least one finite reading, in any one unit and order.</param>
    /// <returns>The median absolute deviation, zero or more, in the unit of the readings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are no readings, or one is not finite or more than 8·10³⁰⁷ from the median.</exception>
    public static double Unscaled(ReadOnlySpan<double> readings) => About(readings, Median.Of(readings));

    internal static double About(ReadOnlySpan<double> readings, double center)
    {
        double[] deviations = new double[readings.Length];
        for (int i = 0; i < deviations.Length; i++)
        {
            deviations[i] = Math.Abs(readings[i] - center);
            if (deviations[i] > double.MaxValue / 2)
            {
                throw Guard.Out(nameof(readings), readings[i], "within 8e307 of the median");
            }
        }

        return Median.OfOwned(deviations);
    }
}
