namespace PrinterMath.SurfaceMesh;

/// <summary>The polynomial of each cell, computed once: z = Σᵣ Σₛ c[cell, r, s] tʳ sˢ, of degree 1 or 3 along each axis.</summary>
internal sealed class CellPolynomials
{
    private readonly int _degree;

    private CellPolynomials(GridAxis x, GridAxis y, int degree)
    {
        X = x;
        Y = y;
        _degree = degree;
        Coefficients = new double[x.Cells * y.Cells * (degree + 1) * (degree + 1)];
    }

    internal GridAxis X { get; }

    internal GridAxis Y { get; }

    internal double[] Coefficients { get; }

    /// <summary>Coefficients of a cell.</summary>
    internal int Terms => (_degree + 1) * (_degree + 1);

    internal static CellPolynomials Bilinear(GridAxis x, GridAxis y, double[] heights)
    {
        var cells = new CellPolynomials(x, y, 1);
        for (int cell = 0; cell < x.Cells * y.Cells; cell++)
        {
            int node = ((cell / x.Cells) * x.Count) + (cell % x.Cells);
            double a = heights[node], b = heights[node + 1], c = heights[node + x.Count], d = heights[node + x.Count + 1];
            new[] { a, c - a, b - a, d - c - (b - a) }.CopyTo(cells.Coefficients, 4 * cell);
        }

        return cells;
    }

    /// <summary>Hermite: cubics along y of the heights and of the slopes z_x on both sides of the cell, then cubics along x of their coefficients.</summary>
    internal static CellPolynomials Bicubic(GridAxis x, GridAxis y, double[] heights, NodeSlopes slopes)
    {
        var cells = new CellPolynomials(x, y, 3);
        Span<double> z0 = stackalloc double[4], z1 = stackalloc double[4], m0 = stackalloc double[4], m1 = stackalloc double[4], along = stackalloc double[4];
        for (int cell = 0; cell < x.Cells * y.Cells; cell++)
        {
            int left = ((cell / x.Cells) * x.Count) + (cell % x.Cells), right = left + 1, up = x.Count;
            double stepX = x.Step(cell % x.Cells), stepY = y.Step(cell / x.Cells), both = stepX * stepY;
            Hermite(heights[left], heights[left + up], stepY * slopes.AlongY[left], stepY * slopes.AlongY[left + up], z0);
            Hermite(heights[right], heights[right + up], stepY * slopes.AlongY[right], stepY * slopes.AlongY[right + up], z1);
            Hermite(stepX * slopes.AlongX[left], stepX * slopes.AlongX[left + up], both * slopes.Twist[left], both * slopes.Twist[left + up], m0);
            Hermite(stepX * slopes.AlongX[right], stepX * slopes.AlongX[right + up], both * slopes.Twist[right], both * slopes.Twist[right + up], m1);
            for (int s = 0; s < 4; s++)
            {
                Hermite(z0[s], z1[s], m0[s], m1[s], along);
                for (int r = 0; r < 4; r++)
                {
                    cells.Coefficients[(16 * cell) + (4 * r) + s] = along[r];
                }
            }
        }

        return cells;
    }

    /// <summary>Height, slopes and twist at a place that the axes hold.</summary>
    internal (double Height, double AlongX, double AlongY, double Twist) At(double x, double y)
    {
        int column = X.Locate(x, out double t), row = Y.Locate(y, out double s), terms = _degree + 1;
        ReadOnlySpan<double> c = Coefficients.AsSpan(((row * X.Cells) + column) * terms * terms, terms * terms);
        double height = 0, alongX = 0, alongY = 0, twist = 0;
        for (int r = _degree; r >= 0; r--)
        {
            double value = 0, slope = 0;
            for (int k = _degree; k >= 0; k--)
            {
                slope = (slope * s) + value;
                value = (value * s) + c[(r * terms) + k];
            }

            alongX = (alongX * t) + height;
            height = (height * t) + value;
            twist = (twist * t) + alongY;
            alongY = (alongY * t) + slope;
        }

        double stepX = X.Step(column), stepY = Y.Step(row);
        return (height, alongX / stepX, alongY / stepY, twist / (stepX * stepY));
    }

    private static void Hermite(double z0, double z1, double m0, double m1, Span<double> coefficients)
    {
        double rise = z1 - z0;
        coefficients[0] = z0;
        coefficients[1] = m0;
        coefficients[2] = (3 * rise) - (2 * m0) - m1;
        coefficients[3] = m0 + m1 - (2 * rise);
    }
}
