namespace PrinterMath.Tramming;

/// <summary>The narrowest ring that holds all points.</summary>
internal static class RingEstimator
{
    private const int MostSteps = 100;
    private const double Settled = 1e-14;

    /// <summary>Chebyshev fit of the radii over directions, d ≈ r + a·cos θ + b·sin θ, centred anew until the centre stands still; the narrowest ring seen is kept.</summary>
    internal static (double X, double Y, double Width) Ring(double[] u, double[] v, ReadOnlySpan<double> circle)
    {
        int n = u.Length;
        double x = circle[0], y = circle[1];
        (double X, double Y, double Width) best = (x, y, double.PositiveInfinity);
        double[] c = new double[n], s = new double[n], d = new double[n];
        for (int step = 0; step < MostSteps; step++)
        {
            double low = double.MaxValue, high = 0;
            for (int i = 0; i < n; i++)
            {
                double du = u[i] - x, dv = v[i] - y, radius = CircleEstimator.Distance(du, dv);
                if (radius == 0)
                {
                    return best;
                }

                (c[i], s[i], d[i]) = (du / radius, dv / radius, radius);
                low = Math.Min(low, radius);
                high = Math.Max(high, radius);
            }

            if (high - low < best.Width)
            {
                best = (x, y, high - low);
            }

            for (int i = 0; i < n; i++)
            {
                d[i] -= circle[2];
            }

            var zone = new MinimaxPlane(c, s);
            zone.Solve(d);
            x += zone.SlopeX;
            y += zone.SlopeY;
            if (CircleEstimator.Distance(zone.SlopeX, zone.SlopeY) <= Settled)
            {
                break;
            }
        }

        return best;
    }
}
