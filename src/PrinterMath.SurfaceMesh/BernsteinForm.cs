namespace PrinterMath.SurfaceMesh;

/// <summary>
/// A polynomial on 0 to 1 by its Bernstein coefficients, p(u) = Σⱼ bⱼ C(n, j) uʲ(1 − u)ⁿ⁻ʲ. It lies between its smallest and its largest coefficient, which is what makes
/// bounds rigorous. Source: Farouki 2012, The Bernstein polynomial basis: a centennial retrospective, Computer Aided Geometric Design 29 (from memory).
/// </summary>
internal static class BernsteinForm
{
    internal const int LargestDegree = 6;
    private static readonly double[] ByDegree2 = Inverse(2);
    private static readonly double[] ByDegree6 = Inverse(LargestDegree);

    /// <summary>Place k of n + 1 places at which a polynomial of degree n is sampled: (1 − cos(πk/n))/2.</summary>
    internal static double Place(int k, int degree) => k == degree ? 1 : (1 - Math.Cos(Math.PI * k / degree)) / 2;

    /// <summary>Degree 2 or 6, whichever holds the polynomial.</summary>
    internal static int DegreeFor(int degree) =>
        degree <= 2 ? 2 : degree <= LargestDegree ? LargestDegree : throw Guard.Out(nameof(degree), degree, "at most 6");

    /// <summary>From the values at <see cref="Place"/>; the first and the last are kept to the bit.</summary>
    internal static void FromSamples(ReadOnlySpan<double> samples, Span<double> coefficients)
    {
        int n = samples.Length - 1;
        double[] inverse = n == 2 ? ByDegree2 : ByDegree6;
        for (int j = 1; j < n; j++)
        {
            double sum = 0;
            for (int k = 0; k <= n; k++)
            {
                sum += inverse[(j * (n + 1)) + k] * (samples[k] - samples[0]);
            }

            coefficients[j] = samples[0] + sum;
        }

        coefficients[0] = samples[0];
        coefficients[n] = samples[n];
    }

    /// <summary>The value at u, by de Casteljau's scheme.</summary>
    internal static double Value(ReadOnlySpan<double> coefficients, double u)
    {
        Span<double> work = stackalloc double[LargestDegree + 1];
        coefficients.CopyTo(work);
        return SplitAt(u, work[..coefficients.Length], []);
    }

    /// <summary>The same polynomial on u₀ to u₁.</summary>
    internal static void Part(ReadOnlySpan<double> coefficients, double from, double to, Span<double> part)
    {
        Span<double> work = stackalloc double[LargestDegree + 1];
        work = work[..coefficients.Length];
        coefficients.CopyTo(work);
        if (to < 1)
        {
            SplitAt(to, work, part);
            part.CopyTo(work);
        }

        if (from > 0)
        {
            SplitAt(from / to, work, []);
        }

        work.CopyTo(part);
    }

    /// <summary>Largest |p″| on 0 to 1 by the coefficients of p″, n(n − 1)(bⱼ₊₂ − 2bⱼ₊₁ + bⱼ).</summary>
    internal static double LargestCurvature(ReadOnlySpan<double> b)
    {
        double largest = 0;
        for (int j = 0; j + 2 < b.Length; j++)
        {
            largest = Math.Max(largest, Math.Abs(b[j + 2] - (2 * b[j + 1]) + b[j]));
        }

        return largest * (b.Length - 1) * (b.Length - 2);
    }

    /// <summary>Leaves the part from u to 1 in <paramref name="work"/>, writes that from 0 to u, and returns the value at u.</summary>
    private static double SplitAt(double u, Span<double> work, Span<double> before)
    {
        int n = work.Length - 1;
        for (int level = 0; level <= n; level++)
        {
            if (before.Length > level)
            {
                before[level] = work[0];
            }

            for (int j = 0; j < n - level; j++)
            {
                work[j] += u * (work[j + 1] - work[j]);
            }
        }

        return work[0];
    }

    private static double[] Inverse(int n)
    {
        var places = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(n + 1, n + 1, (k, j) => Term(n, j, Place(k, n)));
        return places.Inverse().ToRowMajorArray();
    }

    private static double Term(int n, int j, double u)
    {
        double term = 1;
        for (int i = 1; i <= j; i++)
        {
            term *= u * (n - j + i) / i;
        }

        return term * Math.Pow(1 - u, n - j);
    }
}
