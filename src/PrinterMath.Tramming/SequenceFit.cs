namespace PrinterMath.Tramming;

/// <summary>A fit of the sequence, in units of the noise, and what a further cause would gain.</summary>
internal sealed class SequenceFit(ColumnBasis basis, double[] rest, int readings, int left)
{
    private readonly ColumnBasis _basis = basis;

    /// <summary>What is left of the readings, in squares, and how many of them are left beside what is free: nothing when their noise is stated.</summary>
    internal (double Square, int Readings) Left { get; } = (ColumnBasis.Dot(rest, rest), left);

    /// <summary>What freely added columns gain.</summary>
    internal CauseGain Gain(params IReadOnlyList<double[]> columns)
    {
        if (columns.Count == 1)
        {
            double[] one = Rest(columns[0]);
            double square = Independent(one, columns[0]) ? Along(one) : 0;
            return square > 0 ? new CauseGain(square, 1, -Math.Log(ColumnBasis.Dot(one, one)) / 2) : default;
        }

        ColumnBasis larger = _basis.Copy();
        int freedom = 0;
        double logarithms = 0;
        foreach (double[] column in columns)
        {
            double length = larger.Add(Padded(column));
            freedom += length > 0 ? 1 : 0;
            logarithms -= length > 0 ? Math.Log(length) : 0;
        }

        double[] rests = [.. rest];
        larger.Remove(rests);
        return freedom == 0 ? default : new CauseGain(Math.Max(0, Left.Square - ColumnBasis.Dot(rests, rests)), freedom, logarithms / freedom);
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
