namespace PrinterMath.Resonance;

/// <summary>Newton's method for as many equations as unknowns, with differences for derivatives: for well-scaled small systems near their solution.</summary>
internal static class NewtonIteration
{
    private const double Difference = 1e-6;
    private const double Converged = 1e-14;
    private const int MostIterations = 30;

    internal static void Solve(Action<double[], double[]> equations, double[] unknowns)
    {
        int n = unknowns.Length;
        double[] value = new double[n], ahead = new double[n], behind = new double[n];
        double[,] matrix = new double[n, n + 1];
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            equations(unknowns, value);
            for (int j = 0; j < n; j++)
            {
                double kept = unknowns[j];
                unknowns[j] = kept + Difference;
                equations(unknowns, ahead);
                unknowns[j] = kept - Difference;
                equations(unknowns, behind);
                unknowns[j] = kept;
                for (int i = 0; i < n; i++)
                {
                    matrix[i, j] = (ahead[i] - behind[i]) / (2 * Difference);
                    matrix[i, n] = -value[i];
                }
            }

            double[] step = Eliminate(matrix, n);
            double largest = 0;
            for (int j = 0; j < n; j++)
            {
                unknowns[j] += step[j];
                largest = Math.Max(largest, Math.Abs(step[j]));
            }

            if (largest < Converged)
            {
                return;
            }
        }
    }

    /// <summary>Gauss elimination with row pivots of an n × (n + 1) system.</summary>
    private static double[] Eliminate(double[,] m, int n)
    {
        for (int column = 0; column < n; column++)
        {
            int pivot = column;
            for (int row = column + 1; row < n; row++)
            {
                pivot = Math.Abs(m[row, column]) > Math.Abs(m[pivot, column]) ? row : pivot;
            }

            for (int k = column; k <= n; k++)
            {
                (m[column, k], m[pivot, k]) = (m[pivot, k], m[column, k]);
            }

            for (int row = column + 1; row < n; row++)
            {
                double factor = m[row, column] / m[column, column];
                for (int k = column; k <= n; k++)
                {
                    m[row, k] -= factor * m[column, k];
                }
            }
        }

        double[] x = new double[n];
        for (int row = n - 1; row >= 0; row--)
        {
            double sum = m[row, n];
            for (int k = row + 1; k < n; k++)
            {
                sum -= m[row, k] * x[k];
            }

            x[row] = sum / m[row, row];
        }

        return x;
    }
}
