namespace PrinterMath.SurfaceMesh;

/// <summary>
/// Interpolation along one axis that is linear in the heights: in each cell Σᵣ tʳ Σⱼ Power(cell, r, j)·z[First(cell) + j], with t from 0 to 1. It serves the
/// uncertainty, which needs the weight of every node.
/// </summary>
internal sealed class AxisBasis
{
    private readonly GridAxis _axis;
    private readonly double[] _powers;
    private readonly int _degree;
    private readonly int _reach;

    private AxisBasis(GridAxis axis, int degree, int reach)
    {
        _axis = axis;
        _degree = degree;
        _reach = reach;
        Width = Math.Min(axis.Count, (2 * reach) + 2);
        _powers = new double[axis.Cells * (degree + 1) * Width];
    }

    /// <summary>Number of nodes that a cell depends on.</summary>
    internal int Width { get; }

    internal int First(int cell) => Math.Clamp(cell - _reach, 0, _axis.Count - Width);

    /// <summary>Straight lines between nodes.</summary>
    internal static AxisBasis Linear(GridAxis axis)
    {
        var basis = new AxisBasis(axis, 1, 0);
        for (int cell = 0; cell < axis.Cells; cell++)
        {
            basis.Add(cell, 0, cell, 1);
            basis.Add(cell, 1, cell, -1);
            basis.Add(cell, 1, cell + 1, 1);
        }

        return basis;
    }

    /// <summary>
    /// Cubics with given slopes at the nodes (Hermite): z = z₀ + m₀t + (3d − 2m₀ − m₁)t² + (m₀ + m₁ − 2d)t³, d = z₁ − z₀, slopes m per cell. The formula must be linear,
    /// and what lies farther than the reach must not matter.
    /// </summary>
    internal static AxisBasis Cubic(GridAxis axis, LineSlopes.Formula formula, int reach)
    {
        var basis = new AxisBasis(axis, 3, reach);
        double[] unit = new double[axis.Count], slopes = new double[axis.Count];
        for (int node = 0; node < axis.Count; node++)
        {
            unit[node] = 1;
            formula(axis, unit, slopes);
            for (int cell = 0; cell < axis.Cells; cell++)
            {
                double m0 = slopes[cell] * axis.Step(cell), m1 = slopes[cell + 1] * axis.Step(cell), rise = unit[cell + 1] - unit[cell];
                basis.Add(cell, 0, node, unit[cell]);
                basis.Add(cell, 1, node, m0);
                basis.Add(cell, 2, node, (3 * rise) - (2 * m0) - m1);
                basis.Add(cell, 3, node, m0 + m1 - (2 * rise));
            }

            unit[node] = 0;
        }

        return basis;
    }

    /// <summary>Weights of the window's nodes for the height at a place within a cell, carried on along the slope for a distance beyond it.</summary>
    internal void Weigh(int cell, double t, double beyond, Span<double> weights)
    {
        double along = beyond / _axis.Step(cell);
        for (int j = 0; j < Width; j++)
        {
            double value = 0, derivative = 0;
            for (int r = _degree; r >= 0; r--)
            {
                derivative = (derivative * t) + value;
                value = (value * t) + _powers[(((cell * (_degree + 1)) + r) * Width) + j];
            }

            weights[j] = value + (derivative * along);
        }
    }

    private void Add(int cell, int power, int node, double value)
    {
        int j = node - First(cell);
        if (j >= 0 && j < Width)
        {
            _powers[(((cell * (_degree + 1)) + power) * Width) + j] += value;
        }
    }
}
