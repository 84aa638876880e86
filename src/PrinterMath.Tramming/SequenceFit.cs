namespace PrinterMath.Tramming;

/// <summary>A fit of the sequence, in units of the noise, and what a further cause would gain.</summary>
internal sealed class SequenceFit(ColumnBasis basis, double[] rest, int readings)
{
    private readonly ColumnBasis _basis = basis;

    /// <summary>How far the sum of squares falls by freely added columns, and by how many degrees of freedom.</summary>
    internal (double Square, int Freedom) Gain(params IReadOnlyList<double[]> columns)
    {
        if (columns.Count == 1)
        {
            double[] one = Rest(columns[0]);
            double square = Independent(one, columns[0]) ? Along(one) : 0;
            return square > 0 ? (square, 1) : (0, 0);
        }

        ColumnBasis larger = _basis.Copy();
        int freedom = columns.Count(column => larger.Add(Padded(column)));
        double[] left = [.. rest];
        larger.Remove(left);
        return (Math.Max(0, ColumnBasis.Dot(rest, rest) - ColumnBasis.Dot(left, left)), freedom);
    }

    /// <summary>Coefficients of added columns and their standard uncertainties; false where they depend on each other or on the model.</summary>
    internal bool TryCoefficients(IReadOnlyList<double[]> columns, out double[] value, out double[] uncertainty)
    {
        int n = columns.Count;
        double[][] rests = [.. columns.Select(Rest)];
        double[] gram = new double[n * n];
        double[] inverse = new double[n * n];
        for (int i = 0; i < gram.Length; i++)
        {
            gram[i] = ColumnBasis.Dot(rests[i / n], rests[i % n]);
        }

        value = new double[n];
        uncertainty = new double[n];
        if (!SmallInverse.TryInvert(gram, n, inverse))
        {
            return false;
        }

        for (int i = 0; i < n; i++)
        {
            uncertainty[i] = Math.Sqrt(Math.Max(0, inverse[(i * n) + i]));
            for (int j = 0; j < n; j++)
            {
                value[i] += inverse[(i * n) + j] * ColumnBasis.Dot(rests[j], rest);
            }
        }

        return true;
    }

    /// <summary>How far the sum of squares falls by one column with a coefficient of one.</summary>
    internal double GainOfOne(double[] column)
    {
        double[] one = Rest(column);
        return (2 * ColumnBasis.Dot(one, rest)) - ColumnBasis.Dot(one, one);
    }

    private static bool Independent(double[] one, double[] column) => ColumnBasis.Dot(one, one) > 1e-12 * ColumnBasis.Dot(column, column);

    private double Along(double[] one)
    {
        double product = ColumnBasis.Dot(one, rest);
        return product * product / ColumnBasis.Dot(one, one);
    }

    private double[] Rest(double[] column)
    {
        double[] padded = Padded(column);
        _basis.Remove(padded);
        return padded;
    }

    private double[] Padded(double[] column)
    {
        double[] padded = new double[rest.Length];
        column.AsSpan(0, readings).CopyTo(padded);
        return padded;
    }
}
