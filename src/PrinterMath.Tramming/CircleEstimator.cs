namespace PrinterMath.Tramming;

/// <summary>Circle by Gauss-Newton steps from the algebraic fit.</summary>
internal static class CircleEstimator
{
    private const int MostSteps = 100;
    private const double Settled = 1e-14;
    private const double LeastPart = 1e-6;
    private const double LargestGap = 2 * Math.PI / 3;

    /// <summary>No printer draws circles beyond these limits in metres. This library's own, no source.</summary>
    private const double SmallestRadius = 1e-4;
    private const double LargestRadius = 5;

    internal static Circularity Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        int n = x.Length;
        double meanX = 0, meanY = 0, size = 0;
        for (int i = 0; i < n; i++)
        {
            meanX += x[i] / n;
            meanY += y[i] / n;
        }

        for (int i = 0; i < n; i++)
        {
            size = Math.Max(size, Math.Max(Math.Abs(x[i] - meanX), Math.Abs(y[i] - meanY)));
        }

        double[] u = new double[n], v = new double[n], ones = new double[n];
        for (int i = 0; i < n; i++)
        {
            u[i] = size > 0 ? (x[i] - meanX) / size : 0;
            v[i] = size > 0 ? (y[i] - meanY) / size : 0;
            ones[i] = 1;
        }

        Span<double> circle = stackalloc double[3];
        if (!TryAlgebraic(u, v, ones, circle) || !TryRefine(u, v, ones, circle))
        {
            return new Circularity(null, CircleFindings.Short(n));
        }

        (double cx, double cy, double r) = (circle[0], circle[1], circle[2]);
        double[] residuals = new double[n];
        double squares = 0;
        for (int i = 0; i < n; i++)
        {
            residuals[i] = Distance(u[i] - cx, v[i] - cy) - r;
            squares += residuals[i] * residuals[i];
            residuals[i] *= size;
        }

        double[] covariance = Covariance(u, v, ones, circle, n > 3 ? size * size * squares / (n - 3) : 0);
        (double zx, double zy, double width) = RingEstimator.Ring(u, v, circle);
        double gap = Gap(u, v, cx, cy);
        return new Circularity(
            new CircleSolution(meanX + (size * cx), meanY + (size * cy), size * r, covariance, n - 3, residuals, meanX + (size * zx), meanY + (size * zy), size * width),
            n == 3 ? CircleFindings.UncertaintyUnknown() : null,
            gap > LargestGap ? CircleFindings.Arc(gap) : null,
            size * r is < SmallestRadius or > LargestRadius ? CircleFindings.Units(size * r) : null);
    }

    /// <summary>Kåsa: u² + v² = 2au + 2bv + c, linear in a, b, c.</summary>
    private static bool TryAlgebraic(double[] u, double[] v, double[] ones, Span<double> circle)
    {
        double[] design = new double[3 * u.Length], response = new double[u.Length];
        for (int i = 0; i < u.Length; i++)
        {
            (design[3 * i], design[(3 * i) + 1], design[(3 * i) + 2]) = (2 * u[i], 2 * v[i], 1);
            response[i] = (u[i] * u[i]) + (v[i] * v[i]);
        }

        if (!SmallSystem.TrySolve(design, 3, response, ones, circle))
        {
            return false;
        }

        circle[2] = Math.Sqrt(circle[2] + (circle[0] * circle[0]) + (circle[1] * circle[1]));
        return double.IsFinite(circle[2]);
    }

    /// <summary>Gauss-Newton; a step that makes the sum of squares grow is halved.</summary>
    private static bool TryRefine(double[] u, double[] v, double[] ones, Span<double> circle)
    {
        double[] design = new double[3 * u.Length], response = new double[u.Length];
        Span<double> step = stackalloc double[3];
        Span<double> next = stackalloc double[3];
        double squares = Squares(u, v, circle);
        for (int k = 0; k < MostSteps; k++)
        {
            for (int i = 0; i < u.Length; i++)
            {
                double du = u[i] - circle[0], dv = v[i] - circle[1], d = Distance(du, dv);
                if (d == 0)
                {
                    return false;
                }

                (design[3 * i], design[(3 * i) + 1], design[(3 * i) + 2]) = (du / d, dv / d, 1);
                response[i] = d - circle[2];
            }

            if (!SmallSystem.TrySolve(design, 3, response, ones, step))
            {
                return false;
            }

            double part = 1, reached;
            do
            {
                for (int j = 0; j < 3; j++)
                {
                    next[j] = circle[j] + (part * step[j]);
                }

                reached = Squares(u, v, next);
                part /= 2;
            }
            while (!(reached <= squares) && part > LeastPart);

            double largest = Math.Max(Math.Abs(step[0]), Math.Max(Math.Abs(step[1]), Math.Abs(step[2])));
            if (!(reached <= squares) || largest <= Settled * Math.Abs(circle[2]))
            {
                break;
            }

            next.CopyTo(circle);
            squares = reached;
        }

        return circle[2] > 0 && double.IsFinite(squares);
    }

    private static double Squares(double[] u, double[] v, ReadOnlySpan<double> circle)
    {
        double sum = 0;
        for (int i = 0; i < u.Length; i++)
        {
            double d = Distance(u[i] - circle[0], v[i] - circle[1]) - circle[2];
            sum += d * d;
        }

        return sum;
    }

    /// <summary>σ²(JᵀJ)⁻¹ with rows (cos, sin, 1), column by column.</summary>
    private static double[] Covariance(double[] u, double[] v, double[] ones, ReadOnlySpan<double> circle, double variance)
    {
        int n = u.Length;
        double[] design = new double[3 * n], response = new double[n], covariance = new double[9];
        Span<double> column = stackalloc double[3];
        for (int i = 0; i < n; i++)
        {
            double du = u[i] - circle[0], dv = v[i] - circle[1], d = Distance(du, dv);
            (design[3 * i], design[(3 * i) + 1], design[(3 * i) + 2]) = (du / d, dv / d, 1);
        }

        // (JᵀJ)⁻¹ = XXᵀ where the columns of X solve least squares against unit vectors: sum over readings.
        for (int i = 0; i < n; i++)
        {
            Array.Clear(response);
            response[i] = 1;
            SmallSystem.TrySolve(design, 3, response, ones, column);
            for (int k = 0; k < 9; k++)
            {
                covariance[k] += variance * column[k / 3] * column[k % 3];
            }
        }

        return covariance;
    }

    private static double Gap(double[] u, double[] v, double cx, double cy)
    {
        double[] angles = [.. Enumerable.Range(0, u.Length).Select(i => Math.Atan2(v[i] - cy, u[i] - cx)).Order()];
        double largest = angles[0] + (2 * Math.PI) - angles[^1];
        for (int i = 1; i < angles.Length; i++)
        {
            largest = Math.Max(largest, angles[i] - angles[i - 1]);
        }

        return largest;
    }

    internal static double Distance(double x, double y) => Math.Sqrt((x * x) + (y * y));
}
