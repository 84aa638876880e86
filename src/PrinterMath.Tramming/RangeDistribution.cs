using MathNet.Numerics.Distributions;

namespace PrinterMath.Tramming;

/// <summary>
/// Range of n standard normal values: E(R) = ∫(1 − Φⁿ − (1 − Φ)ⁿ)dx and E(R²) by the double integral of the same kind. Tippett 1925, Biometrika 17, 364 (from memory).
/// </summary>
internal static class RangeDistribution
{
    private const double Reach = 8;
    private const int Steps = 400;

    /// <summary>d₂, the mean range.</summary>
    internal static double Mean(int n)
    {
        double sum = 0;
        for (int i = 0; i <= Steps; i++)
        {
            double p = Cumulative(i);
            sum += 1 - Math.Pow(p, n) - Math.Pow(1 - p, n);
        }

        return sum * 2 * Reach / Steps;
    }

    /// <summary>d₂* for a single sample, √E(R²): divides one range so that its square is right on average.</summary>
    internal static double RootMeanSquare(int n)
    {
        double[] p = new double[Steps + 1];
        double[] high = new double[Steps + 1];
        double[] low = new double[Steps + 1];
        for (int i = 0; i <= Steps; i++)
        {
            p[i] = Cumulative(i);
            high[i] = Math.Pow(p[i], n);
            low[i] = Math.Pow(1 - p[i], n);
        }

        double h = 2 * Reach / Steps;
        double sum = 0;
        for (int i = 0; i <= Steps; i++)
        {
            for (int j = i; j <= Steps; j++)
            {
                double value = 1 - high[j] - low[i] + Math.Pow(p[j] - p[i], n);
                sum += j == i ? value / 2 : value;
            }
        }

        return Math.Sqrt(2 * sum * h * h);
    }

    private static double Cumulative(int i) => Normal.CDF(0, 1, -Reach + (2 * Reach * i / Steps));
}
