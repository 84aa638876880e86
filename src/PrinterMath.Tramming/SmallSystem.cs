namespace PrinterMath.Tramming;

/// <summary>Weighted normal equations of a few columns that are centred and scaled, solved by Cholesky's factorisation.</summary>
internal static class SmallSystem
{
    /// <summary>A pivot below this fraction of its diagonal is a column that depends on the others.</summary>
    private const double Dependent = 1e-11;

    /// <summary>Solves min Σwᵢ(yᵢ − xᵢb)²; rows with weight zero are left out.</summary>
    internal static bool TrySolve(ReadOnlySpan<double> design, int columns, ReadOnlySpan<double> response, ReadOnlySpan<double> weights, Span<double> coefficients)
    {
        Span<double> matrix = stackalloc double[columns * columns];
        matrix.Clear();
        coefficients.Clear();
        for (int i = 0; i < response.Length; i++)
        {
            double w = weights[i];
            if (w == 0)
            {
                continue;
            }

            ReadOnlySpan<double> row = design.Slice(i * columns, columns);
            for (int j = 0; j < columns; j++)
            {
                double weighted = w * row[j];
                coefficients[j] += weighted * response[i];
                for (int k = 0; k <= j; k++)
                {
                    matrix[(j * columns) + k] += weighted * row[k];
                }
            }
        }

        return TryFactor(matrix, columns, coefficients);
    }

    private static bool TryFactor(Span<double> m, int n, Span<double> b)
    {
        for (int j = 0; j < n; j++)
        {
            double diagonal = m[(j * n) + j];
            double pivot = diagonal;
            for (int k = 0; k < j; k++)
            {
                pivot -= m[(j * n) + k] * m[(j * n) + k];
            }

            if (!(pivot > Dependent * diagonal))
            {
                return false;
            }

            double root = Math.Sqrt(pivot);
            m[(j * n) + j] = root;
            for (int i = j + 1; i < n; i++)
            {
                double sum = m[(i * n) + j];
                for (int k = 0; k < j; k++)
                {
                    sum -= m[(i * n) + k] * m[(j * n) + k];
                }

                m[(i * n) + j] = sum / root;
            }
        }

        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < i; k++)
            {
                b[i] -= m[(i * n) + k] * b[k];
            }

            b[i] /= m[(i * n) + i];
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++)
            {
                b[i] -= m[(k * n) + i] * b[k];
            }

            b[i] /= m[(i * n) + i];
        }

        return true;
    }
}
