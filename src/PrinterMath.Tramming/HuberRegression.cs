namespace PrinterMath.Tramming;

/// <summary>
/// Huber's M-estimate of a linear model by iterated reweighting, the scale taken anew in each step as median|r|/Φ⁻¹(¾).
/// Huber 1981, Robust Statistics, 7.8 (from memory); Venables, Ripley 2002, Modern Applied Statistics with S, 4th ed., 6.5 (from memory).
/// </summary>
internal static class HuberRegression
{
    private const double NormalConsistency = 1.482602218505602;
    private const int MostSteps = 2000;
    private const double Settled = 1e-13;
    private const double Alike = 1e-9;

    /// <summary>
    /// The estimate, or null when the columns depend on each other.
    /// </summary>
    internal static RobustWeights? Fit(ReadOnlySpan<double> design, int columns, ReadOnlySpan<double> response, double k)
    {
        int n = response.Length;
        double[] coefficients = new double[columns];
        double[] weights = new double[n];
        double[] residuals = new double[n];
        double[] sorted = new double[n];
        Array.Fill(weights, 1);
        if (!SmallSystem.TrySolve(design, columns, response, weights, coefficients))
        {
            return null;
        }

        double largest = Residuals(design, columns, response, coefficients, residuals);
        double scale = 0;
        for (int step = 0; step < MostSteps; step++)
        {
            scale = NormalConsistency * MedianAbsolute(residuals, sorted);
            if (!(scale > Settled * largest))
            {
                return Exact(design, columns, response, residuals, coefficients, largest);
            }

            double change = 0;
            for (int i = 0; i < n; i++)
            {
                double weight = Math.Min(1, k * scale / Math.Abs(residuals[i]));
                change = Math.Max(change, Math.Abs(weight - weights[i]));
                weights[i] = weight;
            }

            if (!SmallSystem.TrySolve(design, columns, response, weights, coefficients))
            {
                return null;
            }

            Residuals(design, columns, response, coefficients, residuals);
            if (change < Settled)
            {
                break;
            }
        }

        return new RobustWeights(coefficients, scale, weights, Variance(residuals, weights, scale, k, columns));
    }

    /// <summary>More than half of the readings fit exactly: those count, the rest do not, and there is no scatter to judge by.</summary>
    private static RobustWeights? Exact(
        ReadOnlySpan<double> design, int columns, ReadOnlySpan<double> response, ReadOnlySpan<double> residuals, double[] coefficients, double largest)
    {
        double[] weights = new double[residuals.Length];
        for (int i = 0; i < weights.Length; i++)
        {
            weights[i] = Math.Abs(residuals[i]) <= Alike * largest ? 1 : 0;
        }

        return SmallSystem.TrySolve(design, columns, response, weights, coefficients) ? new RobustWeights(coefficients, 0, weights, 0) : null;
    }

    internal static double MedianAbsolute(ReadOnlySpan<double> residuals, double[] sorted)
    {
        for (int i = 0; i < sorted.Length; i++)
        {
            sorted[i] = Math.Abs(residuals[i]);
        }

        Array.Sort(sorted);
        int half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    internal static double Residuals(ReadOnlySpan<double> design, int columns, ReadOnlySpan<double> response, ReadOnlySpan<double> coefficients, Span<double> residuals)
    {
        double largest = 0;
        for (int i = 0; i < response.Length; i++)
        {
            double r = response[i];
            for (int j = 0; j < columns; j++)
            {
                r -= design[(i * columns) + j] * coefficients[j];
            }

            residuals[i] = r;
            largest = Math.Max(largest, Math.Abs(r));
        }

        return largest;
    }

    /// <summary>(κ/m)²·Σψ²/(n − p) with m the mean of ψ′ and κ = 1 + p·var(ψ′)/(n·m²). Huber 1981, (7.6.6) and (7.6.7) (from memory).</summary>
    private static double Variance(ReadOnlySpan<double> residuals, ReadOnlySpan<double> weights, double scale, double k, int columns)
    {
        int n = residuals.Length;
        double squares = 0;
        int inside = 0;
        for (int i = 0; i < n; i++)
        {
            squares += weights[i] * residuals[i] * weights[i] * residuals[i];
            inside += Math.Abs(residuals[i]) <= k * scale ? 1 : 0;
        }

        double mean = inside / (double)n;
        double spread = mean * (1 - mean) * n / (n - 1);
        double kappa = 1 + (columns * spread / (n * mean * mean));
        return squares / (n - columns) * (kappa / mean) * (kappa / mean);
    }
}
