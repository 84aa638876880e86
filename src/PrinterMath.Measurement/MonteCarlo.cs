using MathNet.Numerics.LinearAlgebra;

namespace PrinterMath.Measurement;

/// <summary>Propagation of distributions by Monte Carlo: for models that bend, inputs that are not normal, results that are not symmetric.</summary>
/// <remarks>Memory is one double for each trial. Source: JCGM 101:2008, clauses 5 to 7.</remarks>
/// <example><code>
/// MonteCarloResult&lt;double&gt; y = MonteCarlo.Propagate&lt;double&gt;(
///     x =&gt; Math.Log(x[0]),
///     [BudgetInput.Of("x", Measured.FromRange(0.1, 1.1)).WithShape(InputShape.Rectangular)],
///     new MonteCarloOptions { Seed = 1 });
/// </code></example>
public static class MonteCarlo
{
    private const int ReportEvery = 1 << 14;

    /// <summary>Draws the inputs, runs the model, and keeps the distribution of the result.</summary>
    /// <param name="model">The model, in SI.</param>
    /// <param name="inputs">Its inputs in order, at least one, names unique.</param>
    /// <param name="options">Seed, trials, correlations.</param>
    /// <param name="progress">Told the share of trials done, a ratio; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <typeparam name="T">The quantity of the result.</typeparam>
    /// <returns>The distribution of the result.</returns>
    /// <exception cref="ArgumentException">No inputs, a name twice, a correlation that is impossible or not between normal inputs, or a model that is not finite for a draw.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of trials is out of range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static MonteCarloResult<T> Propagate<T>(
        MeasurementModel model,
        IReadOnlyList<BudgetInput> inputs,
        MonteCarloOptions options,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
        where T : struct
    {
        Guard.NotNull(model);
        Guard.AtLeast(Guard.NotNull(inputs).Count, 1, nameof(inputs));
        int trials = (int)Guard.Between(Guard.NotNull(options).Trials, 1000, 100_000_000);
        var draws = new InputDraws(options.Seed);
        double[,]? factor = CorrelationFactor(inputs, options.Correlations);
        double[] results = new double[trials];
        double[] standard = new double[inputs.Count];
        double[] x = new double[inputs.Count];
        for (int trial = 0; trial < trials; trial++)
        {
            if (trial % ReportEvery == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report(trial / (double)trials);
            }

            for (int i = 0; i < x.Length; i++)
            {
                standard[i] = draws.Standard(inputs[i].Shape, inputs[i].DegreesOfFreedom);
            }

            for (int i = 0; i < x.Length; i++)
            {
                x[i] = inputs[i].SiValue + (inputs[i].SiStandardUncertainty * (factor is null ? standard[i] : Row(factor, i, standard)));
            }

            results[trial] = Sensitivity.Evaluate(model, x, "one of the draws");
        }

        progress?.Report(1);
        return new MonteCarloResult<T>(results);
    }

    private static double Row(double[,] factor, int i, double[] standard)
    {
        double sum = 0;
        for (int j = 0; j <= i; j++)
        {
            sum += factor[i, j] * standard[j];
        }

        return sum;
    }

    /// <summary>Lower factor L of the correlation matrix, R = L·Lᵀ; null when all inputs are independent.</summary>
    private static double[,]? CorrelationFactor(IReadOnlyList<BudgetInput> inputs, IReadOnlyList<InputCorrelation> correlations)
    {
        CorrelationMatrix r = CorrelationMatrix.Build(inputs, Guard.NotNull(correlations));
        if (correlations.Count == 0)
        {
            return null;
        }

        foreach (BudgetInput input in inputs.Where(input => correlations.Any(c => c.First == input.Name || c.Second == input.Name)))
        {
            if (input.Shape != InputShape.Normal || !double.IsPositiveInfinity(input.DegreesOfFreedom))
            {
                throw Guard.Refused(
                    "options", $"'{input.Name}' is correlated; only normal inputs with infinite degrees of freedom can be drawn with a correlation.");
            }
        }

        // Coefficients of exactly ±1 leave the matrix singular; the symmetric root exists for those too, and its QR factor is L transposed.
        var matrix = Matrix<double>.Build.Dense(inputs.Count, inputs.Count, (i, j) => r[i, j]);
        var eigen = matrix.Evd(Symmetricity.Symmetric);
        Matrix<double> root = Matrix<double>.Build.DenseOfDiagonalVector(eigen.EigenValues.Map(value => Math.Sqrt(Math.Max(0, value.Real)))) * eigen.EigenVectors.Transpose();
        return root.QR().R.Transpose().SubMatrix(0, inputs.Count, 0, inputs.Count).ToArray();
    }
}
