using System.Diagnostics;
using System.Globalization;
using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>What repeated triggers at one place say about a probe: scatter, range, drift, outliers, warm-up, and how many readings a wanted uncertainty needs.</summary>
/// <remarks>
/// <para>In this order, each at a risk of 5 %. Warm-up: the first k readings, up to a third, against the straight line through the rest (t test, Bonferroni over k; from eight readings on).
/// Outliers: residuals about the line through the others, externally studentised, one at a time (Bonferroni; up to a fifth of the readings, from six on). Drift: slope of the line through what is
/// left, t test, at 0.1 % where readings were left out. Warm-up readings and outliers are named and left out of all numbers but <see cref="Range"/>; a drift that is found is left out of <see cref="StandardDeviation"/>.</para>
/// <para>A drift that is not seen hides in the scatter: readings that all drift look like a probe ten times worse.</para>
/// <para>Findings: <c>repeatability.alike</c> (blocking: the scatter, about a drift if there is one, hides behind the resolution), <c>repeatability.warmUp</c>, <c>repeatability.outlier</c>,
/// <c>repeatability.drift</c>, <c>repeatability.unit.suspect</c>
/// (cautions), <c>repeatability.few</c> (note: fewer than eight readings).</para>
/// <para>Source: JCGM 100:2008, 4.2 and E.4.3; Draper, Smith 1998, Applied Regression Analysis, 3rd ed., chapters 1 and 8 (t test of a slope, studentised residuals; from memory).</para>
/// </remarks>
/// <example><code>
/// Repeatability probe = Repeatability.Of(triggers);
/// int readings = probe.ReadingsFor(Length.FromMicrometers(1));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Repeatability
{
    /// <summary>Risk of the drift test where readings were left out: what is left was chosen to lie on a line. A simulated choice, which keeps false alarms near 5 %.</summary>
    private const double RiskAfterSieve = 0.001;

    /// <summary>Scatter below this fraction of the heights is rounding of the numbers.</summary>
    private const double Rounding = 1e-13;

    private readonly Finding[] _findings;
    private readonly int[] _outliers;
    private readonly TrendLine? _line;
    private readonly double _range;
    private readonly bool _drifts;

    private Repeatability(int count, double range, TrendLine? line, bool drifts, int warmUp, int[] outliers, Finding?[] findings)
    {
        Count = count;
        _range = range;
        _line = line;
        _drifts = drifts;
        WarmUpReadings = warmUp;
        _outliers = outliers;
        _findings = [.. findings.OfType<Finding>()];
    }

    /// <summary>Number of readings given.</summary>
    public int Count { get; }

    /// <summary>What was noticed.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>How many of the first readings differ from what follows and are left out; often zero.</summary>
    public int WarmUpReadings { get; }

    /// <summary>Indices, from 0, of the readings that stand out and are left out; often empty.</summary>
    public IReadOnlyList<int> Outliers => Array.AsReadOnly(_outliers);

    /// <summary>Highest minus lowest of all readings given.</summary>
    public Length Range => Length.FromMeters(_range);

    /// <summary>Standard deviation s of one reading, about the drift where one is found, else about the mean; with its standard uncertainty s/√(2ν) and ν degrees of freedom.</summary>
    /// <remarks>Source: JCGM 100:2008, E.4.3, note to table E.1.</remarks>
    /// <exception cref="IndeterminateException">The readings are all alike.</exception>
    public Measured<Length> StandardDeviation => ScatterOf(_drifts ? Line.AboutLine : Line.AboutMean, DegreesOfFreedom);

    /// <summary>Standard deviation about the mean, drift included: what the scatter would be taken for if nobody looked.</summary>
    /// <exception cref="IndeterminateException">The readings are all alike.</exception>
    public Measured<Length> StandardDeviationWithDrift => ScatterOf(Line.AboutMean, Line.Count - 1);

    /// <summary>Lower 95 % limit of the standard deviation, s√(ν/χ²₀.₉₇₅).</summary>
    /// <exception cref="IndeterminateException">The readings are all alike.</exception>
    public Length StandardDeviationLower => Length.FromMeters(StandardDeviation.SiValue * Math.Sqrt(DegreesOfFreedom / ChiSquared.InvCDF(DegreesOfFreedom, 0.975)));

    /// <summary>Upper 95 % limit of the standard deviation, s√(ν/χ²₀.₀₂₅).</summary>
    /// <exception cref="IndeterminateException">The readings are all alike.</exception>
    public Length StandardDeviationUpper => Length.FromMeters(StandardDeviation.SiValue * Math.Sqrt(DegreesOfFreedom / ChiSquared.InvCDF(DegreesOfFreedom, 0.025)));

    /// <summary>Whether a drift can be told from none at 95 %, or at 99.9 % where readings were left out.</summary>
    /// <exception cref="IndeterminateException">The readings are all alike.</exception>
    public bool HasDrift => Line.Count > 0 && _drifts;

    /// <summary>Slope of the readings over their number, for each reading; positive when they rise. It is given whether or not it can be told from none.</summary>
    /// <exception cref="IndeterminateException">The readings are all alike, or there are only two.</exception>
    public Measured<Length> DriftPerReading => Line.Count > 2
        ? Measured<Length>.FromSi(Line.Slope, Line.SlopeUncertainty, Line.Count - 2)
        : throw new IndeterminateException("Two readings always lie on a line; drift needs three.");

    /// <summary>Probability of such a slope, or a larger one of either sign, from readings that do not drift.</summary>
    /// <exception cref="IndeterminateException">The readings are all alike, or there are only two.</exception>
    public double DriftProbability => DriftPerReading.SiStandardUncertainty > 0
        ? TwoSidedTest.ProbabilityBeyond(Line.Slope / Line.SlopeUncertainty, Line.Count - 2)
        : 0;

    /// <summary>Mean of the readings that count, u = s/√n; where the readings drift it is the height in the middle of the series.</summary>
    /// <exception cref="IndeterminateException">The readings are all alike.</exception>
    public Measured<Length> Mean => Measured<Length>.FromSi(Line.Mean, StandardDeviation.SiValue / Math.Sqrt(Line.Count), DegreesOfFreedom);

    private int DegreesOfFreedom => Line.Count - (_drifts ? 2 : 1);

    private TrendLine Line => _line ?? throw new IndeterminateException(_findings[0]);

    /// <summary>Evaluates repeated triggers.</summary>
    /// <param name="readings">At least three heights read at one place, in the order they were read.</param>
    /// <returns>The repeatability, or a result whose findings say why there is none.</returns>
    /// <exception cref="ArgumentException">Fewer than three readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite.</exception>
    public static Repeatability Of(IReadOnlyList<Length> readings) => OfMeters([.. Guard.NotNull(readings).Select(r => r.Meters)]);

    /// <summary>Evaluates repeated triggers given in metres.</summary>
    /// <param name="readings">At least three heights in metres, in the order they were read.</param>
    /// <returns>The repeatability, or a result whose findings say why there is none.</returns>
    /// <exception cref="ArgumentException">Fewer than three readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite.</exception>
    public static Repeatability OfMeters(ReadOnlySpan<double> readings)
    {
        if (readings.Length < 3)
        {
            throw Guard.Refused(nameof(readings), $"There are {readings.Length} readings; scatter and drift need at least 3.");
        }

        Guard.AllFinite(readings);
        double[] z = readings.ToArray();
        double range = z.Max() - z.Min();
        double rounding = Rounding * Math.Max(Math.Abs(z.Max()), Math.Abs(z.Min()));
        if (range <= rounding)
        {
            return new Repeatability(z.Length, 0, null, false, 0, [], [RepeatabilityFindings.Alike(z.Length)]);
        }

        int warmUp = ReadingSieve.WarmUp(z);
        int[] outliers = ReadingSieve.Outliers(z, warmUp);
        var line = TrendLine.Through(z, warmUp, outliers);
        Finding? first = warmUp > 0 ? RepeatabilityFindings.WarmUp(warmUp) : null, beside = outliers.Length > 0 ? RepeatabilityFindings.Outliers(outliers, z) : null;
        if (line.AboutMean <= rounding || (line.Count > 3 && line.AboutLine <= rounding))
        {
            Finding alike = line.AboutMean <= rounding ? RepeatabilityFindings.Alike(line.Count) : RepeatabilityFindings.AlikeAboutDrift(line.Count, line.Slope);
            return new Repeatability(z.Length, range, null, false, warmUp, outliers, [alike, first, beside]);
        }

        bool drifts = line.Count > 3
            && TwoSidedTest.ProbabilityBeyond(line.Slope / line.SlopeUncertainty, line.Count - 2) < (line.Count < z.Length ? RiskAfterSieve : TwoSidedTest.Risk);
        return new Repeatability(
            z.Length,
            range,
            line,
            drifts,
            warmUp,
            outliers,
            [
                first,
                beside,
                drifts ? RepeatabilityFindings.Drift(line.Slope, line.SlopeUncertainty) : null,
                z.Length < 8 ? RepeatabilityFindings.Few(z.Length) : null,
                RepeatabilityFindings.Units("repeatability.unit.suspect", drifts ? line.AboutLine : line.AboutMean),
            ]);
    }

    /// <summary>One standard deviation from several that were found apart, s² = Σνᵢsᵢ²/Σνᵢ: a probe tried on several places or days.</summary>
    /// <param name="standardDeviations">Standard deviations with finite degrees of freedom, at least one.</param>
    /// <returns>The pooled standard deviation with Σνᵢ degrees of freedom.</returns>
    /// <remarks>Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 2.4.4, pooling of repeatability standard deviations.</remarks>
    /// <exception cref="ArgumentException">There are none, one is not greater than zero, or one has infinite degrees of freedom.</exception>
    public static Measured<Length> Pool(IReadOnlyList<Measured<Length>> standardDeviations)
    {
        Guard.AtLeast(Guard.NotNull(standardDeviations).Count, 1, nameof(standardDeviations));
        double squares = 0, free = 0;
        foreach (Measured<Length> s in standardDeviations)
        {
            double here = double.IsFinite(s.DegreesOfFreedom)
                ? s.DegreesOfFreedom
                : throw Guard.Refused(nameof(standardDeviations), "A standard deviation with infinite degrees of freedom leaves nothing to pool.");
            double value = Guard.Positive(s.SiValue, nameof(standardDeviations));
            squares += here * value * value;
            free += here;
        }

        return ScatterOf(Math.Sqrt(squares / free), free);
    }

    /// <summary>How many readings to average at one point for a wanted standard uncertainty of their mean: ⌈(s/u)²⌉.</summary>
    /// <param name="standardUncertainty">The wanted u, greater than zero.</param>
    /// <returns>The number, 1 or more. It takes s as known: with few readings the upper limit of s asks for more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is not positive, or asks for more than a million readings.</exception>
    /// <exception cref="IndeterminateException">The readings are all alike.</exception>
    public int ReadingsFor(Length standardUncertainty)
    {
        double u = Guard.Positive(standardUncertainty.Meters, nameof(standardUncertainty));
        double wanted = Math.Pow(StandardDeviation.SiValue / u, 2);
        return wanted <= 1e6
            ? Math.Max(1, (int)Math.Ceiling(wanted * (1 - 1e-12)))
            : throw Guard.Out(nameof(standardUncertainty), standardUncertainty, "at least a thousandth of the standard deviation");
    }

    /// <summary>The standard deviation, where the readings scatter.</summary>
    /// <param name="standardDeviation">s of one reading.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetStandardDeviation(out Measured<Length> standardDeviation)
    {
        standardDeviation = _line is null ? default : StandardDeviation;
        return _line is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Scatter, range and drift, or why there is none.</returns>
    public override string ToString() => _line is null
        ? _findings[0].ToString()
        : string.Create(CultureInfo.InvariantCulture, $"s = {StandardDeviation}, range {_range * 1e6:0.##} µm{(_drifts ? $", drift {DriftPerReading} each" : string.Empty)}");

    private static Measured<Length> ScatterOf(double s, double degreesOfFreedom) =>
        Measured<Length>.FromSi(s, s / Math.Sqrt(2 * degreesOfFreedom), degreesOfFreedom);
}
