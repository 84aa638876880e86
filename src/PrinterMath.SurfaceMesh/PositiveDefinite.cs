using System.Numerics;

namespace PrinterMath.SurfaceMesh;

/// <summary>Cholesky factor L of a symmetric positive definite matrix, row by row.</summary>
/// <remarks>Source: G. H. Golub, C. F. Van Loan 2013, Matrix Computations, 4th ed., 4.2.5 (from memory).</remarks>
internal sealed class PositiveDefinite
{
    private readonly double[][] _rows;

    private PositiveDefinite(double[][] rows, double added)
    {
        _rows = rows;
        Added = added;
    }

    /// <summary>What was added to the diagonal.</summary>
    internal double Added { get; }

    /// <summary>The factor; null when the matrix is not positive definite to rounding.</summary>
    /// <param name="matrix">Lower triangle, row i of at least i + 1 entries; kept.</param>
    /// <param name="diagonal">Added to the diagonal.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static PositiveDefinite? Of(double[][] matrix, double diagonal, CancellationToken cancellation)
    {
        double[][] rows = new double[matrix.Length][];
        for (int i = 0; i < rows.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            double[] row = rows[i] = matrix[i][..(i + 1)];
            double whole = row[i] + diagonal;
            for (int j = 0; j < i; j++)
            {
                row[j] = (row[j] - Dot(row.AsSpan(0, j), rows[j].AsSpan(0, j))) / rows[j][j];
            }

            double pivot = whole - Dot(row.AsSpan(0, i), row.AsSpan(0, i));
            if (!(pivot > 1e-15 * Math.Abs(whole)))
            {
                return null;
            }

            row[i] = Math.Sqrt(pivot);
        }

        return new PositiveDefinite(rows, diagonal);
    }

    /// <summary>Solves (L·Lᵀ)·x = b in place.</summary>
    internal void Solve(Span<double> b)
    {
        for (int i = 0; i < b.Length; i++)
        {
            b[i] = (b[i] - Dot(_rows[i].AsSpan(0, i), b[..i])) / _rows[i][i];
        }

        for (int i = b.Length - 1; i >= 0; i--)
        {
            b[i] /= _rows[i][i];
            for (int j = 0; j < i; j++)
            {
                b[j] -= _rows[i][j] * b[i];
            }
        }
    }

    internal double LogDeterminant()
    {
        double sum = 0;
        for (int i = 0; i < _rows.Length; i++)
        {
            sum += 2 * Math.Log(_rows[i][i]);
        }

        return sum;
    }

    /// <summary>tr (L·Lᵀ)⁻¹, the squares of L⁻¹ column by column.</summary>
    internal double TraceOfInverse()
    {
        double trace = 0;
        double[] column = new double[_rows.Length];
        for (int j = 0; j < column.Length; j++)
        {
            column[j] = 1 / _rows[j][j];
            for (int i = j + 1; i < column.Length; i++)
            {
                column[i] = -Dot(_rows[i].AsSpan(j, i - j), column.AsSpan(j, i - j)) / _rows[i][i];
            }

            trace += Dot(column.AsSpan(j), column.AsSpan(j));
        }

        return trace;
    }

    internal static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        Vector<double> sums = Vector<double>.Zero, others = sums;
        int i = 0, lanes = Vector<double>.Count;
        for (; i + (2 * lanes) <= a.Length; i += 2 * lanes)
        {
            sums += new Vector<double>(a[i..]) * new Vector<double>(b[i..]);
            others += new Vector<double>(a[(i + lanes)..]) * new Vector<double>(b[(i + lanes)..]);
        }

        double sum = Vector.Sum(sums + others);
        for (; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
