namespace PrinterMath.Extrusion;

/// <summary>The line y = a + b·x through points with uncertainty in both coordinates.</summary>
/// <remarks>
/// Least Σ W(y − a − bx)², W = 1/(u_y² + b²u_x²): b solves b = Σ Wβv/Σ Wβu with u, v the distances from the weighted means and β = W(u·u_y² + b·v·u_x²). Covariance by the adjusted abscissae x̄ + β:
/// u²(b) = 1/Σ W(β − β̄)², u²(a) = 1/ΣW + x_a²·u²(b), x_a their weighted mean, cov = −x_a·u²(b).
/// Source: D. York, N. M. Evensen, M. L. Martínez, J. De Basabe Delgado 2004, Am. J. Phys. 72, 367-375, equations 13 (from memory).
/// </remarks>
internal readonly record struct YorkLine(double Intercept, double Slope, double InterceptVariance, double SlopeVariance, double Covariance, double ChiSquare)
{
    private const int MostRounds = 200;
    private const double Settled = 1e-14;

    /// <summary>The line; null when the abscissae do not differ beyond their uncertainty, or no slope settles.</summary>
    internal static YorkLine? Through(ReadOnlySpan<double> x, ReadOnlySpan<double> ux, ReadOnlySpan<double> y, ReadOnlySpan<double> uy)
    {
        double slope = Start(x, y);
        bool settled = false;
        for (int round = 0; round < MostRounds && !settled && double.IsFinite(slope); round++)
        {
            double next = Sums.Of(x, ux, y, uy, slope).Next;
            settled = Math.Abs(next - slope) <= Settled * Math.Max(1, Math.Abs(next));
            slope = next;
        }

        return settled && Sums.Of(x, ux, y, uy, slope).Line(x, ux, y, uy, slope) is { } line && double.IsFinite(line.SlopeVariance) && line.SlopeVariance > 0 ? line : null;
    }

    private static double Start(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double meanX = 0, meanY = 0, xx = 0, xy = 0;
        for (int i = 0; i < x.Length; i++)
        {
            meanX += x[i] / x.Length;
            meanY += y[i] / x.Length;
        }

        for (int i = 0; i < x.Length; i++)
        {
            xx += (x[i] - meanX) * (x[i] - meanX);
            xy += (x[i] - meanX) * (y[i] - meanY);
        }

        return xy / xx;
    }

    /// <summary>Weighted means and the next slope.</summary>
    private readonly record struct Sums(double Weight, double MeanX, double MeanY, double Next)
    {
        internal static Sums Of(ReadOnlySpan<double> x, ReadOnlySpan<double> ux, ReadOnlySpan<double> y, ReadOnlySpan<double> uy, double slope)
        {
            double weight = 0, meanX = 0, meanY = 0, above = 0, below = 0;
            for (int i = 0; i < x.Length; i++)
            {
                double w = 1 / ((uy[i] * uy[i]) + (slope * slope * ux[i] * ux[i]));
                weight += w;
                meanX += w * x[i];
                meanY += w * y[i];
            }

            meanX /= weight;
            meanY /= weight;
            for (int i = 0; i < x.Length; i++)
            {
                double w = 1 / ((uy[i] * uy[i]) + (slope * slope * ux[i] * ux[i])), u = x[i] - meanX, v = y[i] - meanY;
                double beta = w * ((u * uy[i] * uy[i]) + (slope * v * ux[i] * ux[i]));
                above += w * beta * v;
                below += w * beta * u;
            }

            return new Sums(weight, meanX, meanY, above / below);
        }

        internal YorkLine Line(ReadOnlySpan<double> x, ReadOnlySpan<double> ux, ReadOnlySpan<double> y, ReadOnlySpan<double> uy, double slope)
        {
            double intercept = MeanY - (slope * MeanX), squares = 0, sum = 0, chi = 0;
            for (int pass = 0; pass < 2; pass++)
            {
                double mean = sum / Weight;
                for (int i = 0; i < x.Length; i++)
                {
                    double w = 1 / ((uy[i] * uy[i]) + (slope * slope * ux[i] * ux[i])), u = x[i] - MeanX, v = y[i] - MeanY, left = v - (slope * u);
                    double beta = w * ((u * uy[i] * uy[i]) + (slope * v * ux[i] * ux[i]));
                    sum += pass == 0 ? w * beta : 0;
                    squares += pass == 0 ? 0 : w * (beta - mean) * (beta - mean);
                    chi += pass == 0 ? 0 : w * left * left;
                }
            }

            double at = MeanX + (sum / Weight), variance = 1 / squares;
            return new YorkLine(intercept, slope, (1 / Weight) + (at * at * variance), variance, -at * variance, chi);
        }
    }
}
