namespace PrinterMath.Resonance;

/// <summary>
/// Impulses half an undamped period apart whose residual is T_n(x₀·cos(πr/2))/T_n(x₀), T_n(x₀) = 1/V: the widest band for a tolerance without damping, which the extra-insensitive
/// sequences are. Source: C. L. Dolph, 1946, Proc. IRE 34, 335-348 (from memory).
/// </summary>
internal static class ChebyshevSequence
{
    /// <summary>Amplitudes of n + 1 impulses, the n zeros and the n − 1 extremes of the residual between them, over the design frequency and rising.</summary>
    internal static (double[] Amplitudes, double[] Zeros, double[] Extremes) Undamped(int n, double tolerance)
    {
        double stretch = Math.Cosh(Math.Acosh(1 / tolerance) / n);
        double[] zeros = [.. Enumerable.Range(0, n).Select(k => 2 / Math.PI * Math.Acos(Math.Cos((k + 0.5) * Math.PI / n) / stretch))];
        double[] extremes = [.. Enumerable.Range(1, n - 1).Select(k => 2 / Math.PI * Math.Acos(Math.Cos(k * Math.PI / n) / stretch))];

        // The residual at r is a polynomial in z = exp(iπr) with one conjugate pair of zeros, or z = −1, for each zero and its mirror 2 − r.
        double[] polynomial = [1];
        for (int k = 0; 2 * k < n; k++)
        {
            polynomial = (2 * k) + 1 == n ? Times(polynomial, [1, 1]) : Times(polynomial, [1, -2 * Math.Cos(Math.PI * zeros[k]), 1]);
        }

        double sum = polynomial.Sum();
        return ([.. polynomial.Select(p => p / sum)], zeros, extremes);
    }

    private static double[] Times(double[] a, double[] b)
    {
        double[] product = new double[a.Length + b.Length - 1];
        for (int i = 0; i < a.Length; i++)
        {
            for (int j = 0; j < b.Length; j++)
            {
                product[i + j] += a[i] * b[j];
            }
        }

        return product;
    }
}
