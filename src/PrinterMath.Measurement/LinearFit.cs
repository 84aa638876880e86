using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>A least-squares fit: coefficients with their covariance, and the diagnostics that tell whether to believe them.</summary>
/// <remarks>
/// Made by <see cref="LinearLeastSquares"/> or <see cref="PolynomialFit"/>. Coefficient 0 is the intercept if there is one; the columns of
/// the design follow in order. When the data do not determine the coefficients, <see cref="Findings"/> holds a blocking finding and every
/// number below throws <see cref="IndeterminateException"/>.
/// Covariance V = σ²(AᵀWA)⁻¹ with the weights W = diag(1/u²); σ = 1 for absolute uncertainties, otherwise the residual standard deviation.
/// Source: JCGM 100:2008 (GUM), H.3; Draper, Smith 1998, Applied Regression Analysis, 3rd ed., chapters 5 to 9 (from memory).
/// </remarks>
/// <example><code>
/// LinearFit fit = LinearLeastSquares.Fit(design, 1, readings);
/// if (fit.TryGetStandardErrors(out IReadOnlyList&lt;double&gt; u)) { Console.WriteLine($"{fit.Coefficients[1]} ± {u[1]}"); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class LinearFit
{
    private readonly LinearSolution? _solution;
    private readonly ReadOnlyCollection<Finding> _findings;

    internal LinearFit(LinearSolution? solution, IEnumerable<Finding> findings, int readingCount, int coefficientCount, bool hasIntercept)
    {
        _solution = solution;
        _findings = Array.AsReadOnly(findings.ToArray());
        ReadingCount = readingCount;
        CoefficientCount = coefficientCount;
        HasIntercept = hasIntercept;
    }

    /// <summary>What the fit noticed: dependent columns, readings that nothing checks, exact readings, poor condition.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Number of readings n.</summary>
    public int ReadingCount { get; }

    /// <summary>Number of coefficients p, the intercept included.</summary>
    public int CoefficientCount { get; }

    /// <summary>Whether coefficient 0 is a fitted constant.</summary>
    public bool HasIntercept { get; }

    /// <summary>Degrees of freedom of the residuals, ν = n − p; negative when there are too few readings.</summary>
    public int DegreesOfFreedom => ReadingCount - CoefficientCount;

    /// <summary>Degrees of freedom of the standard errors: ν, or infinite when the uncertainties of the readings were given as absolute.</summary>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients.</exception>
    public double UncertaintyDegreesOfFreedom => Solution.UncertaintyDegreesOfFreedom;

    /// <summary>The coefficients b, in the unit of the response over that of their column.</summary>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients.</exception>
    public IReadOnlyList<double> Coefficients => Array.AsReadOnly(Solution.Coefficients);

    /// <summary>Standard errors of the coefficients (their standard uncertainties), in the same units, zero or more.</summary>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients, or leave no scatter to judge them by.</exception>
    public IReadOnlyList<double> StandardErrors =>
        Array.AsReadOnly(Solution.StandardErrors ?? throw new IndeterminateException(LinearFitFindings.NoFreedom(CoefficientCount)));

    /// <summary>Residual standard deviation s = √(Σw e²/ν), in the unit of the response.</summary>
    /// <remarks>
    /// With given uncertainties the weights are 1/u² and s is the ratio of the scatter to them: near 1 when both agree (the Birge ratio).
    /// </remarks>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients, or there are no degrees of freedom.</exception>
    public double ResidualStandardDeviation =>
        Solution.ResidualStandardDeviation ?? throw new IndeterminateException(LinearFitFindings.NoFreedom(CoefficientCount));

    /// <summary>
    /// Coefficient of determination R², a ratio from 0 to 1: the part of Σw(y − ȳ)² the model explains, or of Σwy² without an intercept.
    /// </summary>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients, or the readings do not vary.</exception>
    public double RSquared => Solution.RSquared ?? throw new IndeterminateException("The readings do not vary: there is nothing to explain.");

    /// <summary>χ² = Σ(e/u)², a ratio to compare with ν; null unless the uncertainties of the readings were given as absolute.</summary>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients.</exception>
    public double? ChiSquare => Solution.ChiSquare;

    /// <summary>
    /// Prediction sum of squares, PRESS = Σw(e/(1 − h))²: each reading against the model fitted without it; null when a reading is not
    /// checked by any other.
    /// </summary>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients.</exception>
    public double? PredictionSumOfSquares => Solution.Press;

    /// <summary>
    /// Condition number κ₂ of the design with columns scaled to unit length, and centred when there is an intercept: 1 for orthogonal
    /// columns; relative errors of the design reach the coefficients magnified by about this.
    /// </summary>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients.</exception>
    public double ConditionNumber => Solution.ConditionNumber;

    /// <summary>The readings in order, with residual, leverage and influence.</summary>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients.</exception>
    public IReadOnlyList<FittedReading> Readings => Array.AsReadOnly(Solution.Readings);

    private LinearSolution Solution =>
        _solution ?? throw new IndeterminateException(_findings.First(f => f.Severity == FindingSeverity.Blocking));

    /// <summary>The coefficients, if the data determine them.</summary>
    /// <param name="coefficients">The coefficients; empty when there are none.</param>
    /// <returns>Whether there are any.</returns>
    public bool TryGetCoefficients(out IReadOnlyList<double> coefficients)
    {
        coefficients = _solution is null ? [] : Coefficients;
        return _solution is not null;
    }

    /// <summary>The standard errors, if the data determine them.</summary>
    /// <param name="standardErrors">The standard errors; empty when there are none.</param>
    /// <returns>Whether there are any.</returns>
    public bool TryGetStandardErrors(out IReadOnlyList<double> standardErrors)
    {
        standardErrors = _solution?.StandardErrors is null ? [] : StandardErrors;
        return _solution?.StandardErrors is not null;
    }

    /// <summary>The residual standard deviation, if there are degrees of freedom.</summary>
    /// <param name="residualStandardDeviation">s; zero when there is none.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetResidualStandardDeviation(out double residualStandardDeviation)
    {
        residualStandardDeviation = _solution?.ResidualStandardDeviation ?? 0;
        return _solution?.ResidualStandardDeviation is not null;
    }

    /// <summary>R², if the readings vary.</summary>
    /// <param name="rSquared">R²; zero when there is none.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetRSquared(out double rSquared)
    {
        rSquared = _solution?.RSquared ?? 0;
        return _solution?.RSquared is not null;
    }

    /// <summary>Covariance of two coefficients, in the product of their units.</summary>
    /// <param name="i">One, from 0.</param>
    /// <param name="j">The other, from 0.</param>
    /// <returns>The covariance; the variance when both are the same.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such coefficient.</exception>
    /// <exception cref="IndeterminateException">The data do not determine the standard errors.</exception>
    public double Covariance(int i, int j) => Correlation(i, j) * StandardErrors[i] * StandardErrors[j];

    /// <summary>Correlation coefficient of two coefficients, from −1 to 1; it follows from the design and the weights alone.</summary>
    /// <param name="i">One, from 0.</param>
    /// <param name="j">The other, from 0.</param>
    /// <returns>The correlation coefficient.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such coefficient.</exception>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients.</exception>
    public double Correlation(int i, int j)
    {
        Guard.Between(i, 0, CoefficientCount - 1);
        Guard.Between(j, 0, CoefficientCount - 1);
        return Solution.Correlation(i, j);
    }

    /// <summary>The model's value for one row of the design, with the standard uncertainty of that mean.</summary>
    /// <param name="row">Values of the columns, without the constant.</param>
    /// <returns>Value and standard uncertainty.</returns>
    /// <exception cref="ArgumentException">The row does not have one value for each column.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or so large that the value is not.</exception>
    /// <exception cref="IndeterminateException">The data do not determine the coefficients.</exception>
    public LinearPrediction Predict(ReadOnlySpan<double> row)
    {
        int first = HasIntercept ? 1 : 0;
        if (row.Length != CoefficientCount - first)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"row has {row.Length} values for {CoefficientCount - first} columns."), nameof(row));
        }

        Guard.AllFinite(row);
        DoubleDouble[] terms = new DoubleDouble[CoefficientCount];
        terms[0] = 1;
        int[] exponents = new int[CoefficientCount];
        for (int j = 0; j < row.Length; j++)
        {
            terms[j + first] = row[j];
        }

        return Predict(terms, exponents, nameof(row));
    }

    /// <summary>The coefficients as a joint estimate, to hand on with their correlation.</summary>
    /// <param name="names">A name for each coefficient.</param>
    /// <param name="ucumUnits">Coherent SI unit of each coefficient, in the Unified Code for Units of Measure.</param>
    /// <returns>The joint estimate.</returns>
    /// <exception cref="ArgumentException">There is not one name and one unit for each coefficient.</exception>
    /// <exception cref="IndeterminateException">The data do not determine the standard errors.</exception>
    public JointEstimate ToJointEstimate(IReadOnlyList<string> names, IReadOnlyList<string> ucumUnits)
    {
        double[] covariance = new double[CoefficientCount * CoefficientCount];
        for (int i = 0; i < covariance.Length; i++)
        {
            covariance[i] = Covariance(i / CoefficientCount, i % CoefficientCount);
        }

        return JointEstimate.FromSi(names, ucumUnits, Solution.Coefficients, covariance, UncertaintyDegreesOfFreedom);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The coefficients, or what is missing.</returns>
    public override string ToString() => _solution is null
        ? string.Join("; ", _findings)
        : string.Join("; ", _solution.Coefficients.Select((b, i) => string.Create(CultureInfo.InvariantCulture, $"b{i} = {b:G6}")));

    internal LinearPrediction Predict(DoubleDouble[] terms, ReadOnlySpan<int> exponents, string name)
    {
        (double value, double? u) = Solution.Predict(terms, exponents);
        return double.IsFinite(value) && double.IsFinite(u ?? 0)
            ? new LinearPrediction(
                value, u, UncertaintyDegreesOfFreedom, u is null ? LinearFitFindings.NoFreedom(CoefficientCount) : null)
            : throw Guard.Out(name, value, "such that the model's value is finite");
    }
}
