namespace PrinterMath.SurfaceMesh;

/// <summary>
/// Interpolation along one axis: in each cell the height is Σᵣ tʳ Σⱼ Power(cell, r, j)·z[First(cell) + j], with t from 0 to 1 and up to four nodes j.
/// </summary>
internal sealed class AxisBasis
{
    internal const int Width = 4;
    private readonly int[] _first;
    private readonly double[] _powers;
    private readonly int _degree;

    private AxisBasis(GridAxis axis, int degree)
    {
        Axis = axis;
        _degree = degree;
        _first = new int[axis.Cells];
        _powers = new double[axis.Cells * (degree + 1) * Width];
    }

    internal GridAxis Axis { get; }

    internal int First(int cell) => _first[cell];

    internal double Power(int cell, int power, int node) => _powers[(((cell * (_degree + 1)) + power) * Width) + node];

    /// <summary>Straight lines between nodes.</summary>
    internal static AxisBasis Linear(GridAxis axis)
    {
        var basis = new AxisBasis(axis, 1);
        for (int cell = 0; cell < axis.Cells; cell++)
        {
            basis._first[cell] = cell;
            basis.Set(cell, 0, cell, 1);
            basis.Set(cell, 1, cell, -1);
            basis.Set(cell, 1, cell + 1, 1);
        }

        return basis;
    }

    /// <summary>
    /// Cubics with given slopes at the nodes (Hermite): z = z₀ + m₀t + (3d − 2m₀ − m₁)t² + (m₀ + m₁ − 2d)t³, d = z₁ − z₀, slopes m per cell. A node's slope is that of
    /// the parabola through it and its neighbours; at the end of the axis through the last three nodes.
    /// </summary>
    internal static AxisBasis Cubic(GridAxis axis)
    {
        var basis = new AxisBasis(axis, 3);
        for (int cell = 0; cell < axis.Cells; cell++)
        {
            basis._first[cell] = Math.Max(0, Math.Min(cell - 1, axis.Count - Width));
            basis.Set(cell, 0, cell, 1);
            basis.Set(cell, 2, cell, -3);
            basis.Set(cell, 2, cell + 1, 3);
            basis.Set(cell, 3, cell, 2);
            basis.Set(cell, 3, cell + 1, -2);
            basis.AddSlope(cell, cell, [1, -2, 1]);
            basis.AddSlope(cell, cell + 1, [0, -1, 1]);
        }

        return basis;
    }

    /// <summary>Weights of the window's nodes for the height and for its slope at a place within a cell.</summary>
    internal void Weigh(int cell, double t, Span<double> height, Span<double> slope)
    {
        double inverse = 1 / Axis.Step(cell);
        for (int j = 0; j < Width; j++)
        {
            double value = 0, derivative = 0;
            for (int r = _degree; r >= 0; r--)
            {
                derivative = (derivative * t) + value;
                value = (value * t) + Power(cell, r, j);
            }

            height[j] = value;
            slope[j] = derivative * inverse;
        }
    }

    private void Set(int cell, int power, int node, double value) =>
        _powers[(((cell * (_degree + 1)) + power) * Width) + node - _first[cell]] += value;

    private void AddSlope(int cell, int node, ReadOnlySpan<double> intoPowersFromOne)
    {
        double step = Axis.Step(cell);
        if (Axis.Count == 2)
        {
            Add(0, -1 / step, intoPowersFromOne);
            Add(1, 1 / step, intoPowersFromOne);
            return;
        }

        int middle = Math.Clamp(node, 1, Axis.Count - 2);
        double before = Axis.Step(middle - 1), after = Axis.Step(middle), both = before + after;
        double offset = Axis.Nodes[node] - Axis.Nodes[middle];
        double first = ((2 * offset) - after) / (before * both);
        double last = ((2 * offset) + before) / (after * both);
        Add(middle - 1, first, intoPowersFromOne);
        Add(middle, -first - last, intoPowersFromOne);
        Add(middle + 1, last, intoPowersFromOne);

        void Add(int at, double weight, ReadOnlySpan<double> into)
        {
            for (int r = 0; r < into.Length; r++)
            {
                Set(cell, r + 1, at, weight * step * into[r]);
            }
        }
    }
}
