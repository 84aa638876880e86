namespace PrinterMath.Tramming;

/// <summary>Straight line through the readings that count, over their number in the series.</summary>
internal sealed record TrendLine(int Count, double MeanPlace, double Mean, double Slope, double Spread, double Squares, double AboutMean)
{
    /// <summary>Standard deviation about the line, with n − 2 degrees of freedom; zero for two readings.</summary>
    internal double AboutLine => Count > 2 ? Math.Sqrt(Squares / (Count - 2)) : 0;

    internal double SlopeUncertainty => AboutLine / Math.Sqrt(Spread);

    internal static TrendLine Through(ReadOnlySpan<double> z, int first, ReadOnlySpan<int> without)
    {
        int n = 0;
        double place = 0, shift = 0, origin = z[^1];
        for (int i = first; i < z.Length; i++)
        {
            if (!without.Contains(i))
            {
                n++;
                place += i;
                shift += z[i] - origin;
            }
        }

        double meanPlace = place / n, mean = shift / n;
        double xx = 0, xz = 0, zz = 0;
        for (int i = first; i < z.Length; i++)
        {
            if (!without.Contains(i))
            {
                double dx = i - meanPlace, dz = z[i] - origin - mean;
                xx += dx * dx;
                xz += dx * dz;
                zz += dz * dz;
            }
        }

        double slope = xx > 0 ? xz / xx : 0;
        double squares = 0;
        for (int i = first; i < z.Length; i++)
        {
            if (!without.Contains(i))
            {
                double r = z[i] - origin - mean - (slope * (i - meanPlace));
                squares += r * r;
            }
        }

        return new TrendLine(n, meanPlace, origin + mean, slope, xx, squares, n > 1 ? Math.Sqrt(zz / (n - 1)) : 0);
    }

    internal double Residual(int i, double z) => z - Mean - (Slope * (i - MeanPlace));

    internal double Leverage(int i) => (1.0 / Count) + ((i - MeanPlace) * (i - MeanPlace) / Spread);
}
