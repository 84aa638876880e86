namespace PrinterMath.Measurement;

/// <summary>Finds readings that lie far from the rest, measured by the median and the median absolute deviation.</summary>
/// <remarks>
/// A reading is an outlier when |xᵢ − median| &gt; t·1.4826·MAD. Unlike a limit of three standard deviations this works with few readings
/// and with several outliers, since neither measure follows them.
/// For a time series it knows nothing of order: remove the trend first.
/// Source: Davies, Gather 1993, The identification of multiple outliers, Journal of the American Statistical Association 88; Hampel 1974.
/// </remarks>
/// <example><code>
/// OutlierReport report = HampelIdentifier.Find([0.10, 0.11, 0.12, 0.55, 0.13, 0.14, 0.12]);
/// // report.Indices holds 3
/// </code></example>
public static class HampelIdentifier
{
    /// <summary>Scores readings and lists the outliers.</summary>
    /// <param name="readings">At least three finite readings, in any one unit.</param>
    /// <param name="options">When a reading counts as an outlier; null for the defaults.</param>
    /// <returns>
    /// The report. When more than half of the readings are alike and the others are not, there is no spread to score by: a blocking finding
    /// says so, unless <see cref="HampelOptions.SmallestSpread"/> gives one.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than three readings, one is not finite, or an option is out of range.</exception>
    public static OutlierReport Find(ReadOnlySpan<double> readings, HampelOptions? options = null)
    {
        options ??= new HampelOptions();
        double threshold = Guard.Positive(options.Threshold);
        double smallest = Guard.NonNegative(options.SmallestSpread);
        Guard.AtLeast(readings.Length, 3, nameof(readings));
        double median = Median.Of(readings);
        double spread = Math.Max(smallest, MedianAbsoluteDeviation.NormalConsistency * MedianAbsoluteDeviation.About(readings, median));
        double[] scores = new double[readings.Length];
        int different = 0;
        for (int i = 0; i < scores.Length; i++)
        {
            double deviation = readings[i] - median;
            different += deviation != 0 ? 1 : 0;
            scores[i] = spread > 0 ? Math.Clamp(deviation / spread, -double.MaxValue, double.MaxValue) : 0;
        }

        return spread == 0 && different > 0
            ? new OutlierReport(median, spread, threshold, null, [RobustFindings.NoSpread(readings.Length - different, readings.Length)])
            : new OutlierReport(median, spread, threshold, scores, []);
    }
}
