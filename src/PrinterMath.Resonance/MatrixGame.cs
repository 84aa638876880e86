namespace PrinterMath.Resonance;

/// <summary>
/// A zero-sum game with a matrix of payoffs: the row player, who wants them large, and the column player, who wants them small, mix their choices. Solved as a linear program by the simplex
/// method. Source: G. B. Dantzig, 1951, in Activity Analysis of Production and Allocation, chapter 20 (from memory).
/// </summary>
internal static class MatrixGame
{
    private const double Rounding = 1e-12;
    private const double SmallestPivot = 1e-9;

    /// <summary>Value of the game and both mixtures.</summary>
    internal static (double Value, double[] Rows, double[] Columns) Solve(double[,] payoffs)
    {
        int rows = payoffs.GetLength(0), columns = payoffs.GetLength(1);
        double shift = 1;
        foreach (double payoff in payoffs)
        {
            shift = Math.Max(shift, 1 - payoff);
        }

        // With payoffs made positive: maximise Σu under P·u ≤ 1, u ≥ 0. The value is 1/Σu, the columns' mixture u over its sum, the rows' mixture the prices of the constraints.
        double[,] table = new double[rows + 1, columns + rows + 1];
        int[] basis = new int[rows];
        int last = columns + rows;
        for (int i = 0; i < rows; i++)
        {
            for (int j = 0; j < columns; j++)
            {
                table[i, j] = payoffs[i, j] + shift;
            }

            table[i, columns + i] = 1;
            table[i, last] = 1;
            basis[i] = columns + i;
        }

        for (int j = 0; j < columns; j++)
        {
            table[rows, j] = -1;
        }

        int most = 50 * (rows + columns);
        for (int pivot = 0; pivot < most && TryPivot(table, basis, pivot > most / 2); pivot++)
        {
        }

        double total = table[rows, last];
        double[] mixed = new double[columns], prices = new double[rows];
        for (int i = 0; i < rows; i++)
        {
            prices[i] = Math.Max(0, table[rows, columns + i]) / total;
            if (basis[i] < columns)
            {
                mixed[basis[i]] = table[i, last] / total;
            }
        }

        return ((1 / total) - shift, prices, mixed);
    }

    /// <summary>One exchange of the basis; the first column that improves, rather than the best, when cycling is feared.</summary>
    private static bool TryPivot(double[,] table, int[] basis, bool careful)
    {
        int rows = basis.Length, width = table.GetLength(1), entering = -1;
        for (int j = 0; j < width - 1; j++)
        {
            if (table[rows, j] < -Rounding && (entering < 0 || (!careful && table[rows, j] < table[rows, entering])))
            {
                entering = j;
            }
        }

        int leaving = -1;
        double least = double.PositiveInfinity;
        for (int i = 0; entering >= 0 && i < rows; i++)
        {
            double ratio = table[i, entering] > SmallestPivot ? table[i, width - 1] / table[i, entering] : double.PositiveInfinity;
            if (ratio < least || (ratio == least && leaving >= 0 && basis[i] < basis[leaving]))
            {
                (least, leaving) = (ratio, i);
            }
        }

        if (leaving < 0)
        {
            return false;
        }

        double scale = 1 / table[leaving, entering];
        for (int j = 0; j < width; j++)
        {
            table[leaving, j] *= scale;
        }

        for (int i = 0; i <= rows; i++)
        {
            double factor = table[i, entering];
            if (i != leaving && factor != 0)
            {
                for (int j = 0; j < width; j++)
                {
                    table[i, j] -= factor * table[leaving, j];
                }
            }
        }

        basis[leaving] = entering;
        return true;
    }
}
