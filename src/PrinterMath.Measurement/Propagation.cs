namespace PrinterMath.Measurement;

/// <summary>The law of propagation of uncertainty, first order: from measured inputs through a model to a measured result with its budget.</summary>
/// <remarks>
/// <para>u²(y) = Σᵢ Σⱼ cᵢ cⱼ r(xᵢ, xⱼ) u(xᵢ) u(xⱼ). Source: JCGM 100:2008 (GUM), 5.1.2 equation (10), 5.2.2 equation (13).</para>
/// <para>Degrees of freedom: inputs that are correlated with each other are joined into one component, which has the fewest degrees of freedom of
/// its members; the components are then independent, and Welch-Satterthwaite holds for them.</para>
/// <para>First order is enough while the model is nearly straight over ± 2 u of every input; where a sensitivity vanishes at the estimate, it is not.</para>
/// </remarks>
/// <example><code>
/// UncertaintyBudget&lt;Force&gt; t = Propagation.FirstOrder&lt;Force&gt;(
///     x =&gt; 4 * x[0] * x[1] * x[1] * x[2] * x[2],
///     [BudgetInput.Of("linear density", density), BudgetInput.Of("span length", length), BudgetInput.Of("frequency", heard)]);
/// </code></example>
public static class Propagation
{
    /// <summary>Propagates through a model whose sensitivities are found numerically.</summary>
    /// <param name="model">The model, in SI.</param>
    /// <param name="inputs">Its inputs in order, at least one, names unique.</param>
    /// <param name="correlations">Correlated pairs; null when all inputs are independent.</param>
    /// <typeparam name="T">The quantity of the result.</typeparam>
    /// <returns>The result and its budget.</returns>
    /// <exception cref="ArgumentException">No inputs, a name twice, an impossible correlation, or a model that is not finite near the estimates.</exception>
    public static UncertaintyBudget<T> FirstOrder<T>(
        MeasurementModel model, IReadOnlyList<BudgetInput> inputs, IReadOnlyList<InputCorrelation>? correlations = null)
        where T : struct
    {
        Guard.NotNull(model);
        double[] estimates = Estimates(inputs);
        double value = Sensitivity.Evaluate(model, estimates, "the estimates");
        return Combine<T>(value, inputs, Sensitivity.Of(model, inputs, estimates), correlations);
    }

    /// <summary>
    /// Propagates to second order: where a sensitivity vanishes or the model bends within the uncertainties. The value is shifted by ½ Σ f″ᵢᵢ uᵢ², the
    /// variance gains Σᵢ Σⱼ [½ (f″ᵢⱼ)² + f′ᵢ f‴ᵢⱼⱼ] uᵢ² uⱼ².
    /// </summary>
    /// <param name="model">The model, in SI; smooth over ± u of every input.</param>
    /// <param name="inputs">Its inputs in order, at least one, names unique, all independent.</param>
    /// <typeparam name="T">The quantity of the result.</typeparam>
    /// <returns>The result; for where it comes from see the first-order budget.</returns>
    /// <remarks>
    /// The terms hold for normal inputs; for rectangular ones they overstate slightly. Degrees of freedom are those of first order.
    /// Source: JCGM 100:2008, 5.1.2 note and F.2.4.4 note; example H.1.7.
    /// </remarks>
    /// <exception cref="ArgumentException">No inputs, a name twice, or a model that is not finite near the estimates.</exception>
    public static Measured<T> SecondOrder<T>(MeasurementModel model, IReadOnlyList<BudgetInput> inputs)
        where T : struct
    {
        Measured<T> first = FirstOrder<T>(model, inputs).Result;
        double[] estimates = Estimates(inputs);
        double[] u = [.. inputs.Select(input => input.SiStandardUncertainty)];
        double variance = (first.SiStandardUncertainty * first.SiStandardUncertainty) + Measurement.SecondOrder.Variance(model, estimates, u);
        return Measured<T>.FromSi(
            first.SiValue + Measurement.SecondOrder.Shift(model, estimates, u), Math.Sqrt(Math.Max(0, variance)), first.DegreesOfFreedom);
    }

    /// <summary>Propagates with sensitivities that the caller has derived.</summary>
    /// <param name="value">Value of the result in SI.</param>
    /// <param name="inputs">The inputs in order, at least one, names unique.</param>
    /// <param name="sensitivities">cᵢ = ∂f/∂xᵢ in SI, one for each input.</param>
    /// <param name="correlations">Correlated pairs; null when all inputs are independent.</param>
    /// <typeparam name="T">The quantity of the result.</typeparam>
    /// <returns>The result and its budget.</returns>
    /// <exception cref="ArgumentException">No inputs, lists of different length, a name twice, or an impossible correlation.</exception>
    public static UncertaintyBudget<T> FirstOrder<T>(
        double value, IReadOnlyList<BudgetInput> inputs, ReadOnlySpan<double> sensitivities, IReadOnlyList<InputCorrelation>? correlations = null)
        where T : struct
    {
        Estimates(inputs);
        Guard.AllFinite(sensitivities);
        return sensitivities.Length == inputs.Count
            ? Combine<T>(Guard.Finite(value), inputs, sensitivities, correlations)
            : throw new ArgumentException($"There are {inputs.Count} inputs and {sensitivities.Length} sensitivities.", nameof(sensitivities));
    }

    /// <summary>Propagates one set of inputs through several models at once, keeping how the results are correlated.</summary>
    /// <param name="outputs">Name and UCUM unit of each result, and its model; at least one, names unique.</param>
    /// <param name="inputs">The inputs in order, at least one, names unique.</param>
    /// <param name="correlations">Correlated pairs; null when all inputs are independent.</param>
    /// <returns>The results with their covariance and the smallest of their effective degrees of freedom.</returns>
    /// <remarks>Source: JCGM 102:2011, 6.2.1; JCGM 100:2008, H.2.</remarks>
    /// <exception cref="ArgumentException">No inputs or outputs, a name twice, an impossible correlation, or a model that is not finite near the estimates.</exception>
    public static JointEstimate FirstOrder(
        IReadOnlyList<JointOutput> outputs, IReadOnlyList<BudgetInput> inputs, IReadOnlyList<InputCorrelation>? correlations = null)
    {
        Guard.AtLeast(Guard.NotNull(outputs).Count, 1, nameof(outputs));
        double[] estimates = Estimates(inputs);
        CorrelationMatrix r = CorrelationMatrix.Build(inputs, correlations);
        double[] values = new double[outputs.Count];
        double[][] contributions = new double[outputs.Count][];
        double fewest = double.PositiveInfinity;
        for (int k = 0; k < outputs.Count; k++)
        {
            values[k] = Sensitivity.Evaluate(outputs[k].Model, estimates, "the estimates");
            contributions[k] = Contributions(inputs, Sensitivity.Of(outputs[k].Model, inputs, estimates));
            fewest = Math.Min(fewest, DegreesOfFreedom(inputs, contributions[k], r));
        }

        double[] covariance = new double[outputs.Count * outputs.Count];
        for (int k = 0; k < outputs.Count; k++)
        {
            for (int l = 0; l < outputs.Count; l++)
            {
                covariance[(k * outputs.Count) + l] = Bilinear(contributions[k], contributions[l], r);
            }
        }

        return JointEstimate.FromSi([.. outputs.Select(o => o.Name)], [.. outputs.Select(o => o.UcumUnit)], values, covariance, fewest);
    }

    private static UncertaintyBudget<T> Combine<T>(
        double value, IReadOnlyList<BudgetInput> inputs, ReadOnlySpan<double> sensitivities, IReadOnlyList<InputCorrelation>? correlations)
        where T : struct
    {
        CorrelationMatrix r = CorrelationMatrix.Build(inputs, correlations);
        double[] contributions = Contributions(inputs, sensitivities);
        double variance = Math.Max(0, Bilinear(contributions, contributions, r));
        var lines = new BudgetLine[inputs.Count];
        for (int i = 0; i < lines.Length; i++)
        {
            double withOthers = 0;
            for (int j = 0; j < lines.Length; j++)
            {
                withOthers += r[i, j] * contributions[j];
            }

            lines[i] = new BudgetLine(inputs[i], sensitivities[i], variance > 0 ? contributions[i] * withOthers / variance : 0);
        }

        double degreesOfFreedom = DegreesOfFreedom(inputs, contributions, r);
        return new UncertaintyBudget<T>(Measured<T>.FromSi(value, Math.Sqrt(variance), degreesOfFreedom), lines);
    }

    private static double[] Estimates(IReadOnlyList<BudgetInput> inputs)
    {
        Guard.AtLeast(Guard.NotNull(inputs).Count, 1, nameof(inputs));
        return [.. inputs.Select(input => Guard.NotNull(input, nameof(inputs)).SiValue)];
    }

    /// <summary>cᵢ·u(xᵢ), signed.</summary>
    private static double[] Contributions(IReadOnlyList<BudgetInput> inputs, ReadOnlySpan<double> sensitivities)
    {
        double[] contributions = new double[inputs.Count];
        for (int i = 0; i < contributions.Length; i++)
        {
            contributions[i] = sensitivities[i] * inputs[i].SiStandardUncertainty;
        }

        return contributions;
    }

    private static double Bilinear(double[] left, double[] right, CorrelationMatrix r)
    {
        double sum = 0;
        for (int i = 0; i < left.Length; i++)
        {
            for (int j = 0; j < right.Length; j++)
            {
                sum += left[i] * right[j] * r[i, j];
            }
        }

        return sum;
    }

    private static double DegreesOfFreedom(IReadOnlyList<BudgetInput> inputs, double[] contributions, CorrelationMatrix r)
    {
        int[] group = r.Groups();
        double[] squares = new double[group.Length];
        double[] fewest = new double[group.Length];
        Array.Fill(fewest, double.PositiveInfinity);
        for (int i = 0; i < group.Length; i++)
        {
            for (int j = 0; j < group.Length; j++)
            {
                squares[group[i]] += group[i] == group[j] ? contributions[i] * contributions[j] * r[i, j] : 0;
            }

            if (contributions[i] != 0)
            {
                fewest[group[i]] = Math.Min(fewest[group[i]], inputs[i].DegreesOfFreedom);
            }
        }

        for (int i = 0; i < squares.Length; i++)
        {
            squares[i] = Math.Sqrt(Math.Max(0, squares[i]));
        }

        return EffectiveDegreesOfFreedom.WelchSatterthwaite(squares, fewest);
    }
}
