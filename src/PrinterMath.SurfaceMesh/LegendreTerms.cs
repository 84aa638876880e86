namespace PrinterMath.SurfaceMesh;

/// <summary>Products of Legendre polynomials on a rectangle, by rising total degree: 1; ξ, η; P₂(ξ), ξη, P₂(η); ...</summary>
internal static class LegendreTerms
{
    internal static int Count(int degree) => (degree + 1) * (degree + 2) / 2;

    /// <summary>Degrees along x and y of the term with an index.</summary>
    internal static (int X, int Y) Degrees(int index)
    {
        int total = 0;
        while (Count(total) <= index)
        {
            total++;
        }

        int alongY = index - (total == 0 ? 0 : Count(total - 1));
        return (total - alongY, alongY);
    }

    /// <summary>Mean of the square of a term over the rectangle, 1/((2i + 1)(2j + 1)).</summary>
    internal static double MeanSquare(int index)
    {
        (int i, int j) = Degrees(index);
        return 1.0 / (((2 * i) + 1) * ((2 * j) + 1));
    }

    internal static double Value(int index, double xi, double eta)
    {
        (int i, int j) = Degrees(index);
        return Polynomial(i, xi) * Polynomial(j, eta);
    }

    /// <summary>P₀ to that of the last entry, and their slopes: P′ₙ₊₁ = P′ₙ₋₁ + (2n + 1)Pₙ.</summary>
    internal static void Polynomials(double t, Span<double> values, Span<double> slopes)
    {
        (values[0], slopes[0]) = (1, 0);
        for (int n = 0; n + 1 < values.Length; n++)
        {
            (double before, double slopeBefore) = n == 0 ? (0, 0) : (values[n - 1], slopes[n - 1]);
            values[n + 1] = ((((2 * n) + 1) * t * values[n]) - (n * before)) / (n + 1);
            slopes[n + 1] = slopeBefore + (((2 * n) + 1) * values[n]);
        }
    }

    /// <summary>(n + 1) Pₙ₊₁ = (2n + 1) t Pₙ − n Pₙ₋₁.</summary>
    private static double Polynomial(int degree, double t)
    {
        double before = 0, current = 1;
        for (int n = 0; n < degree; n++)
        {
            (before, current) = (current, ((((2 * n) + 1) * t * current) - (n * before)) / (n + 1));
        }

        return current;
    }
}
