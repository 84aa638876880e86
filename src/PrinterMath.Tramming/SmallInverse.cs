namespace PrinterMath.Tramming;

/// <summary>Inverse of a small matrix by Gauss and Jordan with row exchange.</summary>
internal static class SmallInverse
{
    private const double Singular = 1e-12;

    internal static bool TryInvert(ReadOnlySpan<double> matrix, int n, Span<double> inverse)
    {
        double[] m = matrix.ToArray();
        inverse.Clear();
        double largest = 0;
        for (int i = 0; i < n; i++)
        {
            inverse[(i * n) + i] = 1;
        }

        foreach (double value in m)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        for (int c = 0; c < n; c++)
        {
            int best = c;
            for (int r = c + 1; r < n; r++)
            {
                best = Math.Abs(m[(r * n) + c]) > Math.Abs(m[(best * n) + c]) ? r : best;
            }

            double pivot = m[(best * n) + c];
            if (!(Math.Abs(pivot) > Singular * largest))
            {
                return false;
            }

            for (int j = 0; j < n; j++)
            {
                (m[(c * n) + j], m[(best * n) + j]) = (m[(best * n) + j], m[(c * n) + j]);
                (inverse[(c * n) + j], inverse[(best * n) + j]) = (inverse[(best * n) + j], inverse[(c * n) + j]);
            }

            for (int j = 0; j < n; j++)
            {
                m[(c * n) + j] /= pivot;
                inverse[(c * n) + j] /= pivot;
            }

            for (int r = 0; r < n; r++)
            {
                double factor = m[(r * n) + c];
                if (r != c && factor != 0)
                {
                    for (int j = 0; j < n; j++)
                    {
                        m[(r * n) + j] -= factor * m[(c * n) + j];
                        inverse[(r * n) + j] -= factor * inverse[(c * n) + j];
                    }
                }
            }
        }

        return true;
    }
}
