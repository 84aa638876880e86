using MathNet.Numerics.LinearAlgebra;

namespace PrinterMath.Measurement;

/// <summary>The correlations of a list of inputs, checked, and the groups of inputs that hang together.</summary>
internal sealed class CorrelationMatrix
{
    /// <summary>Rounding of the coefficients may push an eigenvalue this far below zero.</summary>
    private const double EigenvalueRounding = 1e-9;
    private readonly double[,] _r;

    private CorrelationMatrix(double[,] r) => _r = r;

    internal double this[int i, int j] => _r[i, j];

    internal static CorrelationMatrix Build(IReadOnlyList<BudgetInput> inputs, IReadOnlyList<InputCorrelation>? correlations)
    {
        var index = new Dictionary<string, int>(StringComparer.Ordinal);
        double[,] r = new double[inputs.Count, inputs.Count];
        for (int i = 0; i < inputs.Count; i++)
        {
            if (!index.TryAdd(inputs[i].Name, i))
            {
                throw new ArgumentException($"Two inputs are called '{inputs[i].Name}'; names must be unique.", nameof(inputs));
            }

            r[i, i] = 1;
        }

        foreach (InputCorrelation correlation in correlations ?? [])
        {
            int i = IndexOf(index, correlation.First);
            int j = IndexOf(index, correlation.Second);
            if (i == j)
            {
                throw new ArgumentException($"The input '{correlation.First}' is correlated with itself.", nameof(correlations));
            }

            r[i, j] = r[j, i] = Guard.Between(correlation.Coefficient, -1, 1, "correlations");
        }

        if (correlations is { Count: > 1 })
        {
            CheckPossible(r);
        }

        return new CorrelationMatrix(r);
    }

    /// <summary>Number of the independent group each input belongs to: inputs that are correlated, directly or through others, share one.</summary>
    internal int[] Groups()
    {
        int[] group = Enumerable.Range(0, _r.GetLength(0)).ToArray();
        for (int i = 0; i < group.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (_r[i, j] != 0 && group[i] != group[j])
                {
                    int from = group[i];
                    int to = group[j];
                    for (int k = 0; k < group.Length; k++)
                    {
                        group[k] = group[k] == from ? to : group[k];
                    }
                }
            }
        }

        return group;
    }

    private static int IndexOf(Dictionary<string, int> index, string? name) =>
        name is not null && index.TryGetValue(name, out int i)
            ? i
            : throw Guard.Refused("correlations", $"A correlation names '{name}', which is not an input.");

    private static void CheckPossible(double[,] r)
    {
        double smallest = Matrix<double>.Build.DenseOfArray(r).Evd(Symmetricity.Symmetric).EigenValues.Min(value => value.Real);
        if (smallest < -EigenvalueRounding)
        {
            throw Guard.Refused("correlations", "The correlation coefficients contradict each other: no set of quantities can have all of them.");
        }
    }
}
