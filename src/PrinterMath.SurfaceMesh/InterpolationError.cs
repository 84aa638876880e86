namespace PrinterMath.SurfaceMesh;

/// <summary>How far a surface may bend away from its interpolant between the nodes.</summary>
internal static class InterpolationError
{
    private const double CubicWeights = 1.25;

    internal static double Bilinear(double stepX, double stepY, double curvatureX, double curvatureY) =>
        ((stepX * stepX * curvatureX) + (stepY * stepY * curvatureY)) / 8;

    internal static double BilinearAt(GridHeights grid, int column, int row) => Bilinear(
        grid.X.Step(column),
        grid.Y.Step(row),
        2 * Largest(grid, true, column, row, 2),
        2 * Largest(grid, false, row, column, 2));

    internal static double BicubicAt(GridHeights grid, int column, int row) =>
        Cubic(grid, true, column, row) + (CubicWeights * Cubic(grid, false, row, column));

    /// <summary>What slopes m instead of those of the parabolas change within a cell: h·t(1 − t)·max|m − m_parabola|, at most a quarter of h, along each axis.</summary>
    internal static double OfSlopes(GridHeights grid, NodeSlopes slopes, NodeSlopes parabolas, int column, int row)
    {
        double alongX = 0, alongY = 0;
        for (int corner = 0; corner < 4; corner++)
        {
            int node = grid.Index(column + (corner & 1), row + (corner >> 1));
            alongX = Math.Max(alongX, Math.Abs(slopes.AlongX[node] - parabolas.AlongX[node]));
            alongY = Math.Max(alongY, Math.Abs(slopes.AlongY[node] - parabolas.AlongY[node]));
        }

        return ((grid.X.Step(column) * alongX) + (CubicWeights * grid.Y.Step(row) * alongY)) / 4;
    }

    /// <summary>A divided difference of order n is the nth derivative over n!: z‴ = 6·difference, z⁗ = 24·difference.</summary>
    private static double Cubic(GridHeights grid, bool alongX, int cell, int across)
    {
        GridAxis axis = alongX ? grid.X : grid.Y;
        double step = axis.Step(cell);
        if (axis.Count < 4)
        {
            return step * step * Largest(grid, alongX, cell, across, 2) / 4;
        }

        double border = cell == 0 || cell == axis.Cells - 1 ? 2 : 1;
        double fourth = axis.Count > 4 ? Largest(grid, alongX, cell, across, 4) : 0;
        return (border * Math.Pow(step, 3) * Largest(grid, alongX, cell, across, 3) / 4) + (Math.Pow(step, 4) * fourth / 16);
    }

    /// <summary>Largest absolute divided difference of an order among the windows of nodes that touch the cell, on the cell's two lines.</summary>
    private static double Largest(GridHeights grid, bool alongX, int cell, int across, int order)
    {
        GridAxis axis = alongX ? grid.X : grid.Y;
        double largest = 0;
        for (int line = across; line <= across + 1; line++)
        {
            for (int first = Math.Max(0, cell + 1 - order); first <= cell && first + order < axis.Count; first++)
            {
                largest = Math.Max(largest, Math.Abs(DividedDifference(grid, alongX, first, line, order)));
            }
        }

        return largest;
    }

    private static double DividedDifference(GridHeights grid, bool alongX, int first, int line, int order)
    {
        GridAxis axis = alongX ? grid.X : grid.Y;
        int columns = grid.X.Count;
        Span<double> table = stackalloc double[order + 1];
        for (int i = 0; i <= order; i++)
        {
            table[i] = grid.Values[alongX ? (line * columns) + first + i : ((first + i) * columns) + line];
        }

        for (int level = 1; level <= order; level++)
        {
            for (int i = 0; i <= order - level; i++)
            {
                table[i] = (table[i + 1] - table[i]) / (axis.Nodes[first + i + level] - axis.Nodes[first + i]);
            }
        }

        return table[0];
    }
}
