namespace PrinterMath.SurfaceMesh;

/// <summary>Kriging with a covariance K = σ²ρ + noise and a trend T: weights, variances and the likelihood.</summary>
/// <remarks>
/// β = (TᵀK⁻¹T)⁻¹TᵀK⁻¹z, α = K⁻¹(z − Tβ), height kᵀα + tᵀβ, variance σ² − kᵀK⁻¹k + (t − TᵀK⁻¹k)ᵀ(TᵀK⁻¹T)⁻¹(t − TᵀK⁻¹k). Restricted log likelihood −½(ln|K| + ln|TᵀK⁻¹T| + zᵀα).
/// Source: N. A. C. Cressie 1993, Statistics for Spatial Data, sections 3.2 and 3.4 (from memory).
/// </remarks>
internal sealed class KrigingSystem
{
    private readonly PositiveDefinite _factor;
    private readonly double[][] _solvedTrend;
    private readonly PositiveDefinite _trendFactor;

    private KrigingSystem(PositiveDefinite factor, double[][] solvedTrend, PositiveDefinite trendFactor, double[] weights, double[] coefficients, double squares)
    {
        _factor = factor;
        _solvedTrend = solvedTrend;
        _trendFactor = trendFactor;
        Weights = weights;
        Coefficients = coefficients;
        Squares = squares;
        LogDeterminants = factor.LogDeterminant() + trendFactor.LogDeterminant();
    }

    /// <summary>α.</summary>
    internal double[] Weights { get; }

    /// <summary>β.</summary>
    internal double[] Coefficients { get; }

    /// <summary>zᵀα.</summary>
    internal double Squares { get; }

    internal double LogDeterminants { get; }

    /// <summary>The system; null when K is not positive definite to rounding.</summary>
    internal static KrigingSystem? Of(double[][] correlation, double sill, double[] noise, double[][] trend, double[] z, CancellationToken cancellation)
    {
        double[][] covariance = [.. correlation.Select((row, i) =>
        {
            double[] scaled = new double[i + 1];
            for (int j = 0; j <= i; j++)
            {
                scaled[j] = sill * row[j];
            }

            scaled[i] += noise[i];
            return scaled;
        })];
        if (PositiveDefinite.Of(covariance, 0, cancellation) is not { } factor)
        {
            return null;
        }

        double[][] solved = [.. trend.Select(column => Solved(factor, column))];
        double[] right = Solved(factor, z);
        double[][] normal = [.. trend.Select((column, i) => solved[..(i + 1)].Select(other => PositiveDefinite.Dot(column, other)).ToArray())];
        if (PositiveDefinite.Of(normal, 0, cancellation) is not { } trendFactor)
        {
            return null;
        }

        double[] coefficients = [.. solved.Select(column => PositiveDefinite.Dot(column, z))];
        trendFactor.Solve(coefficients);
        for (int t = 0; t < trend.Length; t++)
        {
            for (int i = 0; i < right.Length; i++)
            {
                right[i] -= coefficients[t] * solved[t][i];
            }
        }

        return new KrigingSystem(factor, solved, trendFactor, right, coefficients, PositiveDefinite.Dot(z, right));
    }

    /// <summary>Variance of the prediction of a functional with covariances k with the readings, t of the trend, and a variance of its own.</summary>
    internal double Variance(double[] k, ReadOnlySpan<double> t, double own)
    {
        double[] solved = Solved(_factor, k), left = new double[_solvedTrend.Length], turned = new double[left.Length];
        for (int i = 0; i < left.Length; i++)
        {
            left[i] = turned[i] = t[i] - PositiveDefinite.Dot(_solvedTrend[i], k);
        }

        _trendFactor.Solve(turned);
        return Math.Max(0, own - PositiveDefinite.Dot(k, solved) + PositiveDefinite.Dot(left, turned));
    }

    private static double[] Solved(PositiveDefinite factor, double[] right)
    {
        double[] solved = [.. right];
        factor.Solve(solved);
        return solved;
    }
}
