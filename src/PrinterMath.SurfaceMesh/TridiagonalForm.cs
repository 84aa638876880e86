using System.Numerics;

namespace PrinterMath.SurfaceMesh;

/// <summary>QᵀBQ tridiagonal for a symmetric B, and Qᵀg beside it, by Householder's reflections: what generalised cross-validation needs for every smoothing at once.</summary>
/// <remarks>Source: G. H. Golub, C. F. Van Loan 2013, Matrix Computations, 4th ed., 8.3.1; traces of the inverse by L. Eldén 1984, BIT 24, 467-472 (both from memory).</remarks>
internal sealed class TridiagonalForm
{
    private readonly double[] _diagonal;
    private readonly double[] _beside;
    private readonly double[] _right;

    private TridiagonalForm(double[] diagonal, double[] beside, double[] right)
    {
        _diagonal = diagonal;
        _beside = beside;
        _right = right;
    }

    /// <summary>The form.</summary>
    /// <param name="matrix">Symmetric, full rows; overwritten.</param>
    /// <param name="right">g; overwritten.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static TridiagonalForm Of(double[][] matrix, double[] right, CancellationToken cancellation)
    {
        int n = matrix.Length;
        double[] diagonal = new double[n], beside = new double[Math.Max(0, n - 1)], product = new double[n];
        for (int k = 0; k + 1 < n; k++)
        {
            cancellation.ThrowIfCancellationRequested();
            diagonal[k] = matrix[k][k];
            Span<double> v = matrix[k].AsSpan(k + 1);
            beside[k] = Reflector.Make(v);
            if (beside[k] == 0)
            {
                continue;
            }

            Span<double> p = product.AsSpan(k + 1, v.Length);
            for (int i = 0; i < v.Length; i++)
            {
                p[i] = PositiveDefinite.Dot(matrix[k + 1 + i].AsSpan(k + 1), v);
            }

            double half = PositiveDefinite.Dot(p, v);
            for (int i = 0; i < v.Length; i++)
            {
                p[i] = 2 * (p[i] - (half * v[i]));
            }

            for (int i = 0; i < v.Length; i++)
            {
                Subtract(matrix[k + 1 + i].AsSpan(k + 1), v, p[i], p, v[i]);
            }

            Reflector.Apply(v, right.AsSpan(k + 1));
        }

        diagonal[n - 1] = matrix[n - 1][n - 1];
        return new TridiagonalForm(diagonal, beside, right);
    }

    /// <summary>tr (B + δ)⁻¹ and |(B + δ)⁻¹g|² for a B that is not negative and a δ above zero.</summary>
    internal (double Trace, double Squares) At(double delta)
    {
        int n = _diagonal.Length;
        double[] down = new double[n], solved = new double[n];
        for (int i = 0; i < n; i++)
        {
            double left = i == 0 ? 0 : _beside[i - 1];
            down[i] = _diagonal[i] + delta - (i == 0 ? 0 : left * left / down[i - 1]);
            solved[i] = _right[i] - (i == 0 ? 0 : left * solved[i - 1] / down[i - 1]);
        }

        double trace = 0, squares = 0, up = 0, next = 0;
        for (int i = n - 1; i >= 0; i--)
        {
            double beside = i == n - 1 ? 0 : _beside[i];
            next = (solved[i] - (beside * next)) / down[i];
            squares += next * next;
            up = _diagonal[i] + delta - (i == n - 1 ? 0 : beside * beside / up);
            trace += 1 / (down[i] + up - _diagonal[i] - delta);
        }

        return (trace, squares);
    }

    /// <summary>row −= v·a + p·b.</summary>
    private static void Subtract(Span<double> row, ReadOnlySpan<double> v, double a, ReadOnlySpan<double> p, double b)
    {
        Vector<double> ofV = new(a), ofP = new(b);
        int i = 0;
        for (int lanes = Vector<double>.Count; i + lanes <= row.Length; i += lanes)
        {
            (new Vector<double>(row[i..]) - (ofV * new Vector<double>(v[i..])) - (ofP * new Vector<double>(p[i..]))).CopyTo(row[i..]);
        }

        for (; i < row.Length; i++)
        {
            row[i] -= (v[i] * a) + (p[i] * b);
        }
    }
}
