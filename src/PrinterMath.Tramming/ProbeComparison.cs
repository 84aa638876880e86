using System.Diagnostics;
using System.Globalization;
using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Two probes or two methods at one place: whether they scatter alike (F test) and read alike (Welch's t test).</summary>
/// <remarks>
/// <para>F = s₁²/s₂² with n₁ − 1 and n₂ − 1 degrees of freedom. Difference of means d with u² = s₁²/n₁ + s₂²/n₂ and the degrees of freedom of Welch and Satterthwaite; equal scatter is not assumed.</para>
/// <para>Both tests take the readings as independent and normal: look for drift first, see <see cref="Repeatability"/>. No difference found is not a proof of equality: judge
/// <see cref="Difference"/> against what matters. Finding: <c>comparison.alike</c> (blocking).</para>
/// <para>Source: Welch 1947, Biometrika 34, 28; JCGM 100:2008, G.4, for the degrees of freedom; F test: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.9 (from memory).</para>
/// </remarks>
/// <example><code>ProbeComparison comparison = ProbeComparison.Of(touchReadings, paperReadings);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ProbeComparison
{
    private const double Coverage = 0.95;
    private readonly SampleSummary _first;
    private readonly SampleSummary _second;
    private readonly Finding[] _findings;

    private ProbeComparison(SampleSummary first, SampleSummary second, Finding[] findings)
    {
        _first = first;
        _second = second;
        _findings = findings;
    }

    /// <summary>What was noticed.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Whether both sides scatter, so that there is something to compare.</summary>
    public bool IsDeterminate => _findings.Length == 0;

    /// <summary>Mean of the first less mean of the second.</summary>
    /// <exception cref="IndeterminateException">The readings of one side are all alike.</exception>
    public Measured<Length> Difference
    {
        get
        {
            Check();
            double a = VarianceOfMean(_first), b = VarianceOfMean(_second);
            double free = (a + b) * (a + b) / ((a * a / (_first.Count - 1)) + (b * b / (_second.Count - 1)));
            return Measured<Length>.FromSi(_first.Mean - _second.Mean, Math.Sqrt(a + b), free);
        }
    }

    /// <summary>t = difference over its standard uncertainty, a ratio.</summary>
    /// <exception cref="IndeterminateException">The readings of one side are all alike.</exception>
    public double StudentT => Difference.SiValue / Difference.SiStandardUncertainty;

    /// <summary>Probability of such a difference, or a larger one of either sign, where both read alike.</summary>
    /// <exception cref="IndeterminateException">The readings of one side are all alike.</exception>
    public double DifferenceProbability => TwoSidedTest.ProbabilityBeyond(StudentT, Difference.DegreesOfFreedom);

    /// <summary>Whether the means differ at 95 %.</summary>
    /// <exception cref="IndeterminateException">The readings of one side are all alike.</exception>
    public bool ReadsDifferently => DifferenceProbability < TwoSidedTest.Risk;

    /// <summary>F, variance of the first over variance of the second, a ratio greater than zero.</summary>
    /// <exception cref="IndeterminateException">The readings of one side are all alike.</exception>
    public double VarianceRatio
    {
        get
        {
            Check();
            return Math.Pow(_first.StandardDeviation / _second.StandardDeviation, 2);
        }
    }

    /// <summary>Probability of such a ratio, or one farther from 1 on either side, where both scatter alike.</summary>
    /// <exception cref="IndeterminateException">The readings of one side are all alike.</exception>
    public double VarianceRatioProbability
    {
        get
        {
            double below = FisherSnedecor.CDF(_first.Count - 1, _second.Count - 1, VarianceRatio);
            return Math.Min(1, 2 * Math.Min(below, 1 - below));
        }
    }

    /// <summary>Whether the scatters differ at 95 %.</summary>
    /// <exception cref="IndeterminateException">The readings of one side are all alike.</exception>
    public bool ScattersDifferently => VarianceRatioProbability < TwoSidedTest.Risk;

    /// <summary>Lower 95 % limit of the variance ratio.</summary>
    /// <exception cref="IndeterminateException">The readings of one side are all alike.</exception>
    public double VarianceRatioLower => VarianceRatio / FisherSnedecor.InvCDF(_first.Count - 1, _second.Count - 1, (1 + Coverage) / 2);

    /// <summary>Upper 95 % limit of the variance ratio.</summary>
    /// <exception cref="IndeterminateException">The readings of one side are all alike.</exception>
    public double VarianceRatioUpper => VarianceRatio / FisherSnedecor.InvCDF(_first.Count - 1, _second.Count - 1, (1 - Coverage) / 2);

    /// <summary>Compares two series of readings of one place.</summary>
    /// <param name="first">At least two readings of the first.</param>
    /// <param name="second">At least two readings of the second.</param>
    /// <returns>The comparison, or a result whose findings say why there is none.</returns>
    /// <exception cref="ArgumentException">Fewer than two readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite.</exception>
    public static ProbeComparison Of(IReadOnlyList<Length> first, IReadOnlyList<Length> second)
    {
        SampleSummary a = SampleSummary.Of([.. Guard.NotNull(first).Select(r => r.Meters)]);
        SampleSummary b = SampleSummary.Of([.. Guard.NotNull(second).Select(r => r.Meters)]);
        return new ProbeComparison(a, b, Scatters(a) && Scatters(b) ? [] : [RepeatabilityFindings.NoScatter()]);
    }

    /// <summary>Judges the difference of the means against what may be tolerated, at a specific risk of 5 %.</summary>
    /// <param name="tolerance">The limits, for instance −5 µm to 5 µm.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="IndeterminateException">The readings of one side are all alike.</exception>
    public Verdict<Length> Judge(Tolerance<Length> tolerance) => Guard.NotNull(tolerance).Judge(Difference);

    /// <summary>The difference of the means, where both sides scatter.</summary>
    /// <param name="difference">Mean of the first less mean of the second.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetDifference(out Measured<Length> difference)
    {
        difference = IsDeterminate ? Difference : default;
        return IsDeterminate;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Difference and variance ratio with their probabilities, or why there are none.</returns>
    public override string ToString() => IsDeterminate
        ? string.Create(CultureInfo.InvariantCulture, $"difference {Difference} (p = {DifferenceProbability:0.###}), variance ratio {VarianceRatio:0.###} (p = {VarianceRatioProbability:0.###})")
        : _findings[0].ToString();

    /// <summary>Less than 10⁻¹³ of the heights is rounding of the numbers.</summary>
    private static bool Scatters(SampleSummary s) => s.StandardDeviation > 1e-13 * Math.Abs(s.Mean);

    private static double VarianceOfMean(SampleSummary s) => s.StandardDeviation * s.StandardDeviation / s.Count;

    private void Check()
    {
        if (!IsDeterminate)
        {
            throw new IndeterminateException(_findings[0]);
        }
    }
}
