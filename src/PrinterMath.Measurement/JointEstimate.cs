using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>Several quantities estimated together: values, covariance matrix, and the degrees of freedom they share.</summary>
/// <remarks>
/// What a fit returns (slope and intercept, frequency and damping): using its members as if they were independent would misstate every
/// uncertainty that follows. <see cref="Inputs"/> and <see cref="Correlations"/> hand them to <see cref="Propagation"/> whole.
/// Source: JCGM 100:2008 (GUM), 5.2; JCGM 102:2011, 3.21.
/// </remarks>
/// <example><code>
/// UncertaintyBudget&lt;Length&gt; height = Propagation.FirstOrder&lt;Length&gt;(x =&gt; x[0] + (x[1] * 0.1), joint.Inputs, joint.Correlations);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class JointEstimate
{
    private readonly double[] _values;
    private readonly double[] _covariance;
    private readonly ReadOnlyCollection<string> _names;
    private readonly ReadOnlyCollection<string> _units;

    private JointEstimate(ReadOnlyCollection<string> names, ReadOnlyCollection<string> units, double[] values, double[] covariance, double degreesOfFreedom)
    {
        _names = names;
        _units = units;
        _values = values;
        _covariance = covariance;
        DegreesOfFreedom = degreesOfFreedom;
    }

    /// <summary>Names of the quantities, in order.</summary>
    public IReadOnlyList<string> Names => _names;

    /// <summary>Number of quantities.</summary>
    public int Count => _values.Length;

    /// <summary>Degrees of freedom of the covariance, 1 or more, or infinite.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The quantities as inputs of a budget, in order.</summary>
    public IReadOnlyList<BudgetInput> Inputs =>
        [.. Enumerable.Range(0, Count).Select(i => BudgetInput.FromSi(_names[i], _values[i], Math.Sqrt(Covariance(i, i)), DegreesOfFreedom, _units[i]))];

    /// <summary>The correlated pairs, to go with <see cref="Inputs"/>.</summary>
    public IReadOnlyList<InputCorrelation> Correlations =>
        [.. from i in Enumerable.Range(0, Count)
            from j in Enumerable.Range(0, i)
            let r = Correlation(i, j)
            where r != 0
            select new InputCorrelation(_names[j], _names[i], r)];

    /// <summary>A joint estimate from SI numbers: for estimators that compute in <see cref="double"/>.</summary>
    /// <param name="names">Names, unique, at least one.</param>
    /// <param name="ucumUnits">Coherent SI unit of each, in the Unified Code for Units of Measure.</param>
    /// <param name="values">Values in those units.</param>
    /// <param name="covariance">Covariance matrix, row by row, symmetric, with variances not negative.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, 1 or more, or infinite.</param>
    /// <returns>The joint estimate.</returns>
    /// <exception cref="ArgumentException">Lists that do not match, a name twice, or a matrix that is not a covariance.</exception>
    public static JointEstimate FromSi(
        IReadOnlyList<string> names, IReadOnlyList<string> ucumUnits, ReadOnlySpan<double> values, ReadOnlySpan<double> covariance, double degreesOfFreedom)
    {
        int n = Guard.AtLeast(Guard.NotNull(names).Count, 1, nameof(names));
        if (Guard.NotNull(ucumUnits).Count != n || values.Length != n || covariance.Length != n * n)
        {
            throw new ArgumentException(
                $"{n} names need {n} units, {n} values and {n * n} covariances; there are {ucumUnits.Count}, {values.Length} and {covariance.Length}.",
                nameof(names));
        }

        if (names.Distinct(StringComparer.Ordinal).Count() != n)
        {
            throw new ArgumentException("A name stands twice; names must be unique.", nameof(names));
        }

        Guard.AllFinite(values);
        Guard.AllFinite(covariance);
        CheckCovariance(covariance, n);
        return new JointEstimate(
            Array.AsReadOnly(names.ToArray()),
            Array.AsReadOnly(ucumUnits.ToArray()),
            values.ToArray(),
            covariance.ToArray(),
            Guard.DegreesOfFreedom(degreesOfFreedom));
    }

    /// <summary>Means of quantities that were read together, several times: their covariance comes from the readings.</summary>
    /// <param name="names">Names, unique, at least one.</param>
    /// <param name="ucumUnits">Coherent SI unit of each.</param>
    /// <param name="readings">Readings in SI, one row for each occasion; at least two rows.</param>
    /// <returns>Means and their covariance, with rows − 1 degrees of freedom.</returns>
    /// <remarks>s(q̄, r̄) = Σ(qₖ − q̄)(rₖ − r̄)/(n(n − 1)). Source: JCGM 100:2008, 5.2.3, equation (17).</remarks>
    /// <exception cref="ArgumentException">Fewer than two rows, or a row of the wrong length.</exception>
    public static JointEstimate FromReadings(IReadOnlyList<string> names, IReadOnlyList<string> ucumUnits, IReadOnlyList<IReadOnlyList<double>> readings)
    {
        int rows = Guard.AtLeast(Guard.NotNull(readings).Count, 2, nameof(readings));
        int n = Guard.NotNull(names).Count;
        double[] means = new double[n];
        foreach (IReadOnlyList<double> row in readings)
        {
            if (row.Count != n)
            {
                throw new ArgumentException($"A row has {row.Count} readings for {n} names.", nameof(readings));
            }

            for (int i = 0; i < n; i++)
            {
                means[i] += Guard.Finite(row[i], nameof(readings)) / rows;
            }
        }

        double[] covariance = new double[n * n];
        foreach (IReadOnlyList<double> row in readings)
        {
            for (int i = 0; i < covariance.Length; i++)
            {
                covariance[i] += (row[i / n] - means[i / n]) * (row[i % n] - means[i % n]) / (rows * (rows - 1.0));
            }
        }

        return FromSi(names, ucumUnits, means, covariance, rows - 1);
    }

    /// <summary>One of the quantities, by itself.</summary>
    /// <param name="index">Which, from 0.</param>
    /// <typeparam name="T">Its quantity.</typeparam>
    /// <returns>The measured number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    /// <exception cref="ArgumentException">The quantity does not have the unit of this member.</exception>
    public Measured<T> Estimate<T>(int index)
        where T : struct
    {
        Guard.Between(index, 0, Count - 1);
        return Measured<T>.UcumUnit == _units[index]
            ? Measured<T>.FromSi(_values[index], Math.Sqrt(Covariance(index, index)), DegreesOfFreedom)
            : throw new ArgumentException($"'{_names[index]}' is in {_units[index]}, not in the unit of {typeof(T).Name}, {Measured<T>.UcumUnit}.", nameof(index));
    }

    /// <summary>Covariance of two members, in the product of their SI units.</summary>
    /// <param name="i">One, from 0.</param>
    /// <param name="j">The other, from 0.</param>
    /// <returns>The covariance; the variance when both are the same.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public double Covariance(int i, int j)
    {
        Guard.Between(i, 0, Count - 1);
        Guard.Between(j, 0, Count - 1);
        return _covariance[(i * Count) + j];
    }

    /// <summary>Correlation coefficient of two members, from −1 to 1; zero when one of them is exact.</summary>
    /// <param name="i">One, from 0.</param>
    /// <param name="j">The other, from 0.</param>
    /// <returns>The correlation coefficient.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such index.</exception>
    public double Correlation(int i, int j)
    {
        double product = Math.Sqrt(Covariance(i, i)) * Math.Sqrt(Covariance(j, j));
        return product == 0 ? 0 : Math.Clamp(Covariance(i, j) / product, -1, 1);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Each quantity with its standard uncertainty.</returns>
    public override string ToString() =>
        string.Join("; ", Enumerable.Range(0, Count).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $"{_names[i]} = {_values[i]:G6} ± {Math.Sqrt(Covariance(i, i)):G2} {_units[i]}")));

    private static void CheckCovariance(ReadOnlySpan<double> covariance, int n)
    {
        for (int i = 0; i < n; i++)
        {
            double variance = Guard.NonNegative(covariance[(i * n) + i], nameof(covariance));
            for (int j = 0; j < i; j++)
            {
                double limit = Math.Sqrt(variance) * Math.Sqrt(Math.Max(0, covariance[(j * n) + j])) * (1 + 1e-9);
                double one = covariance[(i * n) + j];
                double other = covariance[(j * n) + i];
                if (Math.Abs(one) > limit || Math.Abs(one - other) > 1e-9 * limit)
                {
                    throw new ArgumentException($"Entries ({i}, {j}) and ({j}, {i}) are {one} and {other}; a covariance is symmetric and within ±√(variances).", nameof(covariance));
                }
            }
        }
    }
}
