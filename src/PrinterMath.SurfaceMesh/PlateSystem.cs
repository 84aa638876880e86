namespace PrinterMath.SurfaceMesh;

/// <summary>The equations of a thin plate, turned by the reflections that make its plane part triangular, so that the bending part stands alone: B + δ positive definite.</summary>
/// <remarks>
/// Rows are multiplied by √w. T = Q·(R; 0) for the columns 1, x, y; with K′ = QᵀKQ and (h₁; g) = Qᵀz the coefficients are c = Q·(0; γ), (B + δ)γ = g, B the rear block of K′, and R·d = h₁ − K′₁₂γ.
/// Source: G. Wahba 1990, Spline Models for Observational Data, SIAM, section 2.4 and chapter 4 (from memory).
/// </remarks>
internal sealed class PlateSystem
{
    internal const int Terms = 3;

    /// <summary>A column of the plane of which less than this is left beside the others: the places lie on one line.</summary>
    private const double Dependent = 1e-7;
    private readonly double[][] _reflectors;
    private readonly double[][] _kernel;
    private readonly double[][] _triangle;
    private readonly double[] _roots;
    private readonly double[] _turned;

    private PlateSystem(double[][] reflectors, double[][] kernel, double[][] triangle, double[] roots, double[] turned)
    {
        _reflectors = reflectors;
        _kernel = kernel;
        _triangle = triangle;
        _roots = roots;
        _turned = turned;
    }

    internal int Count => _roots.Length;

    /// <summary>Rows of B, the lower triangle.</summary>
    internal double[][] Bending => [.. _kernel.Skip(Terms).Select(row => row[Terms..])];

    internal double[] Loads => _turned[Terms..];

    internal double MeanStiffness => _kernel.Skip(Terms).Select((row, i) => row[Terms + i]).Average();

    /// <summary>The system; null when the places lie on one line.</summary>
    /// <param name="x">Scaled coordinates, distinct places, four or more.</param>
    /// <param name="y">Scaled coordinates.</param>
    /// <param name="z">Heights.</param>
    /// <param name="weights">Weights of mean one.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static PlateSystem? Of(double[] x, double[] y, double[] z, double[] weights, CancellationToken cancellation)
    {
        int n = x.Length;
        double[] roots = [.. weights.Select(Math.Sqrt)], turned = [.. z.Zip(roots, (height, root) => height * root)];
        double[][] kernel = new double[n][];
        for (int i = 0; i < n; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            kernel[i] = new double[n];
            for (int j = 0; j < i; j++)
            {
                double dx = x[i] - x[j], dy = y[i] - y[j];
                kernel[i][j] = kernel[j][i] = roots[i] * roots[j] * PlateKernel.Value((dx * dx) + (dy * dy));
            }
        }

        double[][] plane = [roots.ToArray(), [.. x.Zip(roots, (at, root) => at * root)], [.. y.Zip(roots, (at, root) => at * root)]];
        double[][] reflectors = new double[Terms][], triangle = new double[Terms][];
        for (int j = 0; j < Terms; j++)
        {
            double length = Math.Sqrt(PositiveDefinite.Dot(plane[j], plane[j]));
            triangle[j] = plane[j][..(j + 1)];
            reflectors[j] = plane[j][j..];
            triangle[j][j] = Reflector.Make(reflectors[j]);
            if (Math.Abs(triangle[j][j]) < Dependent * length)
            {
                return null;
            }

            for (int k = j + 1; k < Terms; k++)
            {
                Reflector.Apply(reflectors[j], plane[k].AsSpan(j));
            }

            Reflector.Apply(reflectors[j], turned.AsSpan(j));
            Turn(kernel, reflectors[j], j);
        }

        return new PlateSystem(reflectors, kernel, triangle, roots, turned);
    }

    /// <summary>Coefficients c of the kernel and d of the plane from γ.</summary>
    internal (double[] Bending, double[] Plane) Coefficients(double[] gamma)
    {
        double[] plane = new double[Terms];
        for (int i = 0; i < Terms; i++)
        {
            plane[i] = _turned[i] - PositiveDefinite.Dot(_kernel[i].AsSpan(Terms), gamma);
        }

        for (int j = Terms - 1; j >= 0; j--)
        {
            plane[j] /= _triangle[j][j];
            for (int i = 0; i < j; i++)
            {
                plane[i] -= _triangle[j][i] * plane[j];
            }
        }

        double[] bending = [0, 0, 0, .. gamma];
        for (int j = Terms - 1; j >= 0; j--)
        {
            Reflector.Apply(_reflectors[j], bending.AsSpan(j));
        }

        return ([.. bending.Zip(_roots, (value, root) => value * root)], plane);
    }

    /// <summary>
    /// For a functional with values k of the kernel and t of the plane: the noise it takes over, as a variance in those of a reading, and what the plate may do there between the places, as a variance in
    /// those of its prior, exact for the height at a place.
    /// </summary>
    internal (double Noise, double Bending) Variances(PositiveDefinite factor, double[] kernelValues, ReadOnlySpan<double> planeValues)
    {
        double[] q = [.. kernelValues.Zip(_roots, (value, root) => value * root)], alpha = planeValues.ToArray();
        for (int j = 0; j < Terms; j++)
        {
            Reflector.Apply(_reflectors[j], q.AsSpan(j));
            for (int i = 0; i < j; i++)
            {
                alpha[j] -= _triangle[j][i] * alpha[i];
            }

            alpha[j] /= _triangle[j][j];
        }

        double[] h = q[Terms..], beta = new double[h.Length];
        double ofPlane = 0;
        for (int i = 0; i < Terms; i++)
        {
            ofPlane += alpha[i] * ((alpha[0] * _kernel[i][0]) + (alpha[1] * _kernel[i][1]) + (alpha[2] * _kernel[i][2]) - (2 * q[i]));
            for (int k = 0; k < h.Length; k++)
            {
                h[k] -= alpha[i] * _kernel[i][Terms + k];
            }
        }

        h.CopyTo(beta, 0);
        factor.Solve(beta);
        double squares = PositiveDefinite.Dot(beta, beta), delta = factor.Added;
        return (squares + PositiveDefinite.Dot(alpha, alpha), Math.Max(0, ofPlane - PositiveDefinite.Dot(beta, h) - (delta * squares)));
    }

    /// <summary>HKH for the reflection H of the entries from the first on.</summary>
    private static void Turn(double[][] kernel, double[] v, int first)
    {
        foreach (double[] row in kernel)
        {
            Reflector.Apply(v, row.AsSpan(first));
        }

        double[] sums = new double[kernel.Length];
        for (int i = 0; i < v.Length; i++)
        {
            double[] row = kernel[first + i];
            for (int j = 0; j < sums.Length; j++)
            {
                sums[j] += v[i] * row[j];
            }
        }

        for (int i = 0; i < v.Length; i++)
        {
            double[] row = kernel[first + i];
            for (int j = 0; j < sums.Length; j++)
            {
                row[j] -= 2 * v[i] * sums[j];
            }
        }
    }
}
