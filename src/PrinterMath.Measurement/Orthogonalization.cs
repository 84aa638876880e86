namespace PrinterMath.Measurement;

/// <summary>A = QR by modified Gram–Schmidt, each column passed twice, in doubled precision.</summary>
/// <remarks>
/// Two passes leave Q orthogonal to working precision whatever the condition of A, so that Qᵀy, the residuals and the leverages need no
/// further refinement. Source: Björck 1967, Solving linear least squares problems by Gram–Schmidt orthogonalization, BIT 7;
/// Giraud, Langou, Rozložník 2005, The loss of orthogonality in the Gram–Schmidt orthogonalization process (both from memory).
/// </remarks>
internal sealed class Orthogonalization
{
    /// <summary>A column whose norm survived a pass by more than this is orthogonal to 2⁻⁹⁴ already.</summary>
    private const double SecondPassBelow = 1e-3;

    private readonly DoubleDouble[][] _directions;
    private readonly DoubleDouble[][] _triangle;

    private Orthogonalization(DoubleDouble[][] directions, DoubleDouble[][] triangle, double[] norms)
    {
        _directions = directions;
        _triangle = triangle;
        Norms = norms;
        VanishingColumn = -1;
    }

    /// <summary>Orthonormal columns of Q.</summary>
    internal IReadOnlyList<DoubleDouble[]> Directions => _directions;

    /// <summary>Euclidean norms of the columns of A.</summary>
    internal IReadOnlyList<double> Norms { get; }

    /// <summary>The first column that its predecessors explain to the stated rounding; −1 when there is none.</summary>
    internal int VanishingColumn { get; private set; }

    /// <summary>Factors the columns, in place of which Q is left.</summary>
    internal static Orthogonalization Of(DoubleDouble[][] columns, double rounding)
    {
        int p = columns.Length;
        DoubleDouble[][] triangle = new DoubleDouble[p][];
        double[] norms = new double[p];
        Orthogonalization result = new(columns, triangle, norms);
        for (int k = 0; k < p; k++)
        {
            triangle[k] = new DoubleDouble[k + 1];
            norms[k] = (double)Norm(columns[k]);
            double left = norms[k];
            DoubleDouble norm;
            bool again;
            do
            {
                result.Remove(columns[k], triangle[k], k);
                norm = Norm(columns[k]);
                again = norm.High < SecondPassBelow * left;
                left = norm.High;
            }
            while (again && left > rounding * norms[k]);

            triangle[k][k] = norm;
            if (left <= rounding * norms[k])
            {
                result.VanishingColumn = k;
                return result;
            }

            DoubleDouble reciprocal = 1.0 / norm;
            DoubleDouble[] column = columns[k];
            for (int i = 0; i < column.Length; i++)
            {
                column[i] *= reciprocal;
            }
        }

        return result;
    }

    /// <summary>Qᵀy; y itself becomes the residual vector.</summary>
    internal DoubleDouble[] Project(DoubleDouble[] response)
    {
        DoubleDouble[] components = new DoubleDouble[_directions.Length];
        Remove(response, components, _directions.Length);
        Remove(response, components, _directions.Length);
        return components;
    }

    /// <summary>Entry (i, j) of R, i ≤ j.</summary>
    internal DoubleDouble Triangle(int i, int j) => _triangle[j][i];

    /// <summary>x with Rx = d over the leading <paramref name="count"/> columns.</summary>
    internal DoubleDouble[] BackSubstitute(ReadOnlySpan<DoubleDouble> right, int count)
    {
        DoubleDouble[] x = right[..count].ToArray();
        for (int k = count - 1; k >= 0; k--)
        {
            x[k] /= _triangle[k][k];
            for (int i = 0; i < k; i++)
            {
                x[i] -= _triangle[k][i] * x[k];
            }
        }

        return x;
    }

    /// <summary>R⁻¹ by columns: entry [j][i] stands in row i ≤ j.</summary>
    internal DoubleDouble[][] InverseTriangle()
    {
        DoubleDouble[][] inverse = new DoubleDouble[_triangle.Length][];
        for (int j = 0; j < inverse.Length; j++)
        {
            DoubleDouble[] unit = new DoubleDouble[j + 1];
            unit[j] = 1;
            inverse[j] = BackSubstitute(unit, j + 1);
        }

        return inverse;
    }

    /// <summary>How column k is made up of its predecessors.</summary>
    internal DoubleDouble[] Combination(int column) => BackSubstitute(_triangle[column], column);

    internal static DoubleDouble Norm(ReadOnlySpan<DoubleDouble> vector)
    {
        DoubleDouble sum = 0;
        foreach (DoubleDouble x in vector)
        {
            sum += x * x;
        }

        return DoubleDouble.SquareRoot(sum);
    }

    private void Remove(DoubleDouble[] vector, DoubleDouble[] components, int count)
    {
        for (int j = 0; j < count; j++)
        {
            DoubleDouble[] direction = _directions[j];
            DoubleDouble product = 0;
            for (int i = 0; i < vector.Length; i++)
            {
                product += direction[i] * vector[i];
            }

            for (int i = 0; i < vector.Length; i++)
            {
                vector[i] -= direction[i] * product;
            }

            components[j] += product;
        }
    }
}
