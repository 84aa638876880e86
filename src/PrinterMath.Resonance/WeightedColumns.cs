using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>Least squares of real columns by modified Gram–Schmidt with one repetition: orthonormal to rounding, columns scaled to length 1 first.</summary>
/// <remarks>Source: Å. Björck 1996, Numerical Methods for Least Squares Problems, section 2.4 (from memory).</remarks>
internal sealed class WeightedColumns
{
    /// <summary>A column of which less than this is left beside the others says nothing of its own.</summary>
    private const double Least = 1e-13;
    private readonly double[][] _columns;
    private readonly double[,] _upper;
    private readonly double[] _lengths;

    private WeightedColumns(double[][] columns, double[,] upper, double[] lengths)
    {
        _columns = columns;
        _upper = upper;
        _lengths = lengths;
    }

    /// <summary>Factors the columns, which are overwritten; null when they do not stand apart.</summary>
    internal static WeightedColumns? Factor(double[][] columns)
    {
        int n = columns.Length;
        double[] lengths = new double[n];
        double[,] upper = new double[n, n];
        for (int j = 0; j < n; j++)
        {
            lengths[j] = Math.Sqrt(Dot(columns[j], columns[j]));
            if (!(lengths[j] > 0) || !double.IsFinite(lengths[j]))
            {
                return null;
            }

            Scale(columns[j], 1 / lengths[j]);
            for (int pass = 0; pass < 2; pass++)
            {
                for (int i = 0; i < j; i++)
                {
                    double part = Dot(columns[i], columns[j]);
                    upper[i, j] += part;
                    Subtract(columns[j], columns[i], part);
                }
            }

            upper[j, j] = Math.Sqrt(Dot(columns[j], columns[j]));
            if (upper[j, j] < Least)
            {
                return null;
            }

            Scale(columns[j], 1 / upper[j, j]);
        }

        return new WeightedColumns(columns, upper, lengths);
    }

    /// <summary>Coefficients of least squares; the right side becomes the residual.</summary>
    internal double[] Solve(Span<double> right)
    {
        double[] solution = new double[_columns.Length];
        for (int pass = 0; pass < 2; pass++)
        {
            for (int j = 0; j < solution.Length; j++)
            {
                double part = Dot(_columns[j], right);
                solution[j] += part;
                Subtract(right, _columns[j], part);
            }
        }

        for (int j = solution.Length - 1; j >= 0; j--)
        {
            for (int k = j + 1; k < solution.Length; k++)
            {
                solution[j] -= _upper[j, k] * solution[k];
            }

            solution[j] /= _upper[j, j];
        }

        for (int j = 0; j < solution.Length; j++)
        {
            solution[j] /= _lengths[j];
        }

        return solution;
    }

    /// <summary>
    /// (AᵀA)⁻¹·AᵀΣA·(AᵀA)⁻¹ = R⁻¹·QᵀΣQ·R⁻ᵀ, with Σ the correlation of readings 0, 1, 2 ... places apart within the first and within the second half.
    /// </summary>
    internal double[,] Covariance(ReadOnlySpan<double> correlation)
    {
        int n = _columns.Length;
        double[,] inverse = Inverse(), correlated = Correlated(correlation), covariance = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = 0;
                for (int k = i; k < n; k++)
                {
                    for (int l = j; l < n; l++)
                    {
                        sum += inverse[i, k] * correlated[k, l] * inverse[j, l];
                    }
                }

                covariance[i, j] = covariance[j, i] = sum / (_lengths[i] * _lengths[j]);
            }
        }

        return covariance;
    }

    private double[,] Inverse()
    {
        int n = _columns.Length;
        double[,] inverse = new double[n, n];
        for (int j = 0; j < n; j++)
        {
            inverse[j, j] = 1 / _upper[j, j];
            for (int i = j - 1; i >= 0; i--)
            {
                double sum = 0;
                for (int k = i + 1; k <= j; k++)
                {
                    sum -= _upper[i, k] * inverse[k, j];
                }

                inverse[i, j] = sum / _upper[i, i];
            }
        }

        return inverse;
    }

    private double[,] Correlated(ReadOnlySpan<double> correlation)
    {
        int n = _columns.Length, count = _columns[0].Length / 2;
        double[,] product = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            product[i, i] = 1;
            for (int j = 0; j <= i; j++)
            {
                for (int lag = 1; lag < Math.Min(correlation.Length, count); lag++)
                {
                    for (int half = 0; half <= count; half += count)
                    {
                        ReadOnlySpan<double> a = _columns[i].AsSpan(half, count), b = _columns[j].AsSpan(half, count);
                        product[i, j] += correlation[lag] * (Dot(a[lag..], b[..^lag]) + Dot(a[..^lag], b[lag..]));
                    }
                }

                product[j, i] = product[i, j];
            }
        }

        return product;
    }

    internal static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sums = Vector<double>.Zero;
        int i = 0;
        for (int lanes = Vector<double>.Count; i + lanes <= a.Length; i += lanes)
        {
            sums += new Vector<double>(a[i..]) * new Vector<double>(b[i..]);
        }

        double sum = Vector.Sum(sums);
        for (; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    private static void Subtract(Span<double> from, ReadOnlySpan<double> column, double times)
    {
        var factor = new Vector<double>(times);
        int i = 0;
        for (int lanes = Vector<double>.Count; i + lanes <= from.Length; i += lanes)
        {
            (new Vector<double>(from[i..]) - (factor * new Vector<double>(column[i..]))).CopyTo(from[i..]);
        }

        for (; i < from.Length; i++)
        {
            from[i] -= times * column[i];
        }
    }

    private static void Scale(Span<double> column, double factor)
    {
        for (int i = 0; i < column.Length; i++)
        {
            column[i] *= factor;
        }
    }
}
