using System.Diagnostics;
using System.Globalization;
using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>How the readings of two instruments go along, second = a + b·first, when both have uncertainty: two calipers, a caliper and a microscope.</summary>
/// <remarks>
/// <para>Least squares by the errors of both readings (York). Not for lengths that are known exactly, as nominal ones are: see <see cref="DimensionalFit"/>. A line by least squares in one direction alone would come out too flat.</para>
/// <para>u: from the stated uncertainties, enlarged by the Birge ratio √(χ²/ν) where that is above 1; where χ² passes its 95 % quantile the enlarged u has the degrees of freedom of the residuals and a finding says so.</para>
/// Source: D. York, N. M. Evensen, M. L. Martínez, J. De Basabe Delgado 2004, Am. J. Phys. 72, 367-375 (from memory); checked with the data of Pearson with York's weights.
/// </remarks>
/// <example><code>
/// InstrumentComparison calipers = InstrumentComparison.Of(pairs);
/// if (calipers.TryGetSlope(out Measured&lt;double&gt; slope)) { Console.WriteLine($"second = {calipers.Intercept} + {slope} · first"); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class InstrumentComparison
{
    private const int FewestPairs = 3;
    private const double MisfitProbability = 0.05;
    private readonly JointEstimate? _joint;

    private InstrumentComparison(int pairs, JointEstimate? joint, double chiSquare, IReadOnlyList<Finding> findings)
    {
        PairCount = pairs;
        _joint = joint;
        ChiSquare = chiSquare;
        Findings = findings;
    }

    /// <summary>Number of pairs.</summary>
    public int PairCount { get; }

    /// <summary>What was noticed, see <see cref="ExtrusionFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>χ² of the line with <see cref="PairCount"/> less 2 degrees of freedom; zero where there is no line.</summary>
    public double ChiSquare { get; }

    /// <summary>a and b with their covariance; names <c>intercept</c>, <c>slope</c>.</summary>
    /// <exception cref="IndeterminateException">The readings hold no line.</exception>
    public JointEstimate Joint => _joint ?? throw new IndeterminateException(Findings.First(finding => finding.Severity == FindingSeverity.Blocking));

    /// <summary>a: what the second instrument reads where the first reads zero.</summary>
    /// <exception cref="IndeterminateException">The readings hold no line.</exception>
    public Measured<Length> Intercept => Joint.Estimate<Length>(0);

    /// <summary>b: how much the second reads more for each unit that the first does, a ratio.</summary>
    /// <exception cref="IndeterminateException">The readings hold no line.</exception>
    public Measured<double> Slope => Joint.Estimate<double>(1);

    /// <summary>Probability that two instruments which read alike (a = 0, b = 1) lie at least so far from it, by χ² or F with 2 degrees of freedom.</summary>
    /// <exception cref="IndeterminateException">The readings hold no line.</exception>
    public double AgreementProbability
    {
        get
        {
            double a = Intercept.SiValue, b = Slope.SiValue - 1, aa = Joint.Covariance(0, 0), ab = Joint.Covariance(0, 1), bb = Joint.Covariance(1, 1);
            double square = ((a * a * bb) - (2 * a * b * ab) + (b * b * aa)) / ((aa * bb) - (ab * ab)), freedom = Intercept.DegreesOfFreedom;
            return double.IsPositiveInfinity(freedom) ? 1 - ChiSquared.CDF(2, square) : 1 - FisherSnedecor.CDF(2, freedom, square / 2);
        }
    }

    /// <summary>Compares two instruments.</summary>
    /// <param name="pairs">Lengths read with both, three or more, of different size.</param>
    /// <returns>The line; when the readings hold none, a blocking finding says so.</returns>
    /// <exception cref="ArgumentException">A pair is the default, never measured.</exception>
    public static InstrumentComparison Of(IReadOnlyList<PairedReading> pairs)
    {
        PairedReading[] copy = [.. Guard.NotNull(pairs)];
        if (Array.FindIndex(copy, pair => !pair.First.HasValue) is var missing and >= 0)
        {
            throw Guard.Refused(nameof(pairs), $"Pair {missing} was never measured.");
        }

        YorkLine? found = copy.Length < FewestPairs ? null : YorkLine.Through(
            [.. copy.Select(pair => pair.First.SiValue)],
            [.. copy.Select(pair => pair.First.SiStandardUncertainty)],
            [.. copy.Select(pair => pair.Second.SiValue)],
            [.. copy.Select(pair => pair.Second.SiStandardUncertainty)]);
        if (found is not { } line)
        {
            return new InstrumentComparison(copy.Length, null, 0, [NoLine(copy.Length)]);
        }

        int freedom = copy.Length - 2;
        double birge = Math.Max(1, line.ChiSquare / freedom), chance = 1 - ChiSquared.CDF(freedom, line.ChiSquare);
        bool misfits = chance < MisfitProbability;
        var joint = JointEstimate.FromSi(
            ["intercept", "slope"],
            ["m", "1"],
            [line.Intercept, line.Slope],
            [line.InterceptVariance * birge, line.Covariance * birge, line.Covariance * birge, line.SlopeVariance * birge],
            misfits ? freedom : double.PositiveInfinity);
        return new InstrumentComparison(copy.Length, joint, line.ChiSquare, misfits ? [Misfit(Math.Sqrt(birge), chance)] : []);
    }

    /// <summary>b, if the readings hold a line.</summary>
    /// <param name="slope">The slope, or the default.</param>
    /// <returns>Whether they do.</returns>
    public bool TryGetSlope(out Measured<double> slope)
    {
        slope = _joint is null ? default : Slope;
        return _joint is not null;
    }

    /// <summary>What the second instrument reads beyond the first where the first reads a length: a + (b − 1)·length.</summary>
    /// <param name="first">Reading of the first, as if exact.</param>
    /// <returns>The difference; positive when the second reads more.</returns>
    /// <exception cref="IndeterminateException">The readings hold no line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The length is not finite.</exception>
    public Measured<Length> DifferenceAt(Length first)
    {
        double x = Guard.Finite(first.Meters, nameof(first));
        double variance = Joint.Covariance(0, 0) + (2 * x * Joint.Covariance(0, 1)) + (x * x * Joint.Covariance(1, 1));
        return Measured<Length>.FromSi(Intercept.SiValue + ((Slope.SiValue - 1) * x), Math.Sqrt(variance), Intercept.DegreesOfFreedom);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The line, or the finding that stands in its place.</returns>
    public override string ToString() => _joint is null ? Findings[0].ToString() : string.Create(CultureInfo.InvariantCulture, $"second = {Intercept} + {Slope} · first");

    private static Finding NoLine(int pairs) => new(
        ExtrusionFindings.ComparisonUndetermined,
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"{pairs} pairs hold no line: three are needed, of lengths that differ by more than their uncertainty."),
        new FindingNumber("pairs", pairs, "1"));

    private static Finding Misfit(double birge, double chance) => new(
        ExtrusionFindings.ComparisonMisfit,
        FindingSeverity.Caution,
        string.Create(CultureInfo.InvariantCulture, $"The pairs scatter about the line {birge:G3} times as much as their uncertainties say: these are too small, or the instruments do not go along a line. Uncertainties are enlarged."),
        new FindingNumber("birgeRatio", birge, "1"),
        new FindingNumber("probability", chance, "1"));
}
