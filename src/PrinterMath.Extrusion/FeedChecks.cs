using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Extrusion;

/// <summary>What a series of feed trials gives away about itself.</summary>
internal static class FeedChecks
{
    /// <summary>A constant loss shows only when the lengths differ by at least this factor.</summary>
    private const double DistinctLengths = 1.5;

    internal static IEnumerable<Finding> Find(double[] commanded, double[] measured, FeedModel model, FeedCalibrationOptions options)
    {
        if (model.Deviation == 0)
        {
            if (options.Resolution is null)
            {
                yield return new Finding(
                    ExtrusionFindings.FeedResolutionMissing,
                    FindingSeverity.Blocking,
                    string.Create(CultureInfo.InvariantCulture, $"All {measured.Length} trials agree exactly: state the step in which the length was read."),
                    new FindingNumber("trials", measured.Length, "1"));
            }
        }
        else
        {
            foreach (Finding finding in Tests(commanded, measured, model, options))
            {
                yield return finding;
            }
        }

        if (options.RulerUncertainty is null)
        {
            yield return new Finding(
                ExtrusionFindings.FeedRulerNotStated,
                FindingSeverity.Note,
                "The uncertainty counts scatter and resolution only: state what the ruler is worth, its error is the same in every trial.");
        }
    }

    private static IEnumerable<Finding> Tests(double[] commanded, double[] measured, FeedModel model, FeedCalibrationOptions options)
    {
        double step = options.Resolution?.Meters ?? 0;
        double[] order = [.. Enumerable.Range(1, measured.Length).Select(i => (double)i)];
        double[] ratios = [.. measured.Select((m, i) => m / commanded[i])];
        double[] residuals = [.. measured.Select((m, i) => m - (model.Ratio * commanded[i]))];
        if (TrendTest.Slope(order, ratios, options.Significance) is { } slope && Math.Abs(slope) * (order.Length - 1) * commanded.Average() > step)
        {
            yield return new Finding(
                ExtrusionFindings.FeedDrift,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"The feed ratio drifts by {slope * 100:G2} % from trial to trial: look for slip, a tangled spool, or a hot end that is not yet soaked."),
                new FindingNumber("driftPerTrial", slope, "1"));
        }

        if (TrendTest.Outlier(residuals, options.Significance) is { } outlier && Math.Abs(residuals[outlier]) > step)
        {
            yield return new Finding(
                ExtrusionFindings.FeedOutlier,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"Trial {outlier + 1} lies {residuals[outlier] * 1e3:G2} mm from the others: check it and repeat it."),
                new FindingNumber("trial", outlier + 1, "1"),
                new FindingNumber("deviation", residuals[outlier], "m"));
        }

        if (commanded.Max() > DistinctLengths * commanded.Min()
            && TrendTest.Intercept(commanded, measured, options.Significance) is { } offset
            && Math.Abs(offset) > step)
        {
            yield return new Finding(
                ExtrusionFindings.FeedOffset,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"Each trial is {offset * 1e3:G2} mm off whatever its length: look for play in the drive or a misplaced mark."),
                new FindingNumber("offset", offset, "m"));
        }
    }
}
