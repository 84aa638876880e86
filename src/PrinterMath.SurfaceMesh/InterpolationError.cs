namespace PrinterMath.SurfaceMesh;

/// <summary>How far a surface may bend away from its interpolant between the nodes.</summary>
internal static class InterpolationError
{
    private const double CubicWeights = 1.25;

    internal static double Bilinear(double stepX, double stepY, double curvatureX, double curvatureY) =>
        ((stepX * stepX * curvatureX) + (stepY * stepY * curvatureY)) / 8;

    internal static double BilinearAt(TensorSurface surface, double x, double y)
    {
        int column = surface.CellOf(surface.X, x, nameof(x)), row = surface.CellOf(surface.Y, y, nameof(y));
        return Bilinear(
            surface.X.Axis.Step(column),
            surface.Y.Axis.Step(row),
            2 * Largest(surface, true, column, row, 2),
            2 * Largest(surface, false, row, column, 2));
    }

    internal static double BicubicAt(TensorSurface surface, double x, double y)
    {
        int column = surface.CellOf(surface.X, x, nameof(x)), row = surface.CellOf(surface.Y, y, nameof(y));
        return Cubic(surface, true, column, row) + (CubicWeights * Cubic(surface, false, row, column));
    }

    /// <summary>A divided difference of order n is the nth derivative over n!: z‴ = 6·difference, z⁗ = 24·difference.</summary>
    private static double Cubic(TensorSurface surface, bool alongX, int cell, int across)
    {
        GridAxis axis = alongX ? surface.X.Axis : surface.Y.Axis;
        double step = axis.Step(cell);
        if (axis.Count < 4)
        {
            return step * step * Largest(surface, alongX, cell, across, 2) / 4;
        }

        double border = cell == 0 || cell == axis.Cells - 1 ? 2 : 1;
        double fourth = axis.Count > 4 ? Largest(surface, alongX, cell, across, 4) : 0;
        return (border * Math.Pow(step, 3) * Largest(surface, alongX, cell, across, 3) / 4) + (Math.Pow(step, 4) * fourth / 16);
    }

    /// <summary>Largest absolute divided difference of an order among the windows of nodes that touch the cell, on the cell's two lines.</summary>
    private static double Largest(TensorSurface surface, bool alongX, int cell, int across, int order)
    {
        GridAxis axis = alongX ? surface.X.Axis : surface.Y.Axis;
        double largest = 0;
        for (int line = across; line <= across + 1; line++)
        {
            for (int first = Math.Max(0, cell + 1 - order); first <= cell && first + order < axis.Count; first++)
            {
                largest = Math.Max(largest, Math.Abs(DividedDifference(surface, alongX, first, line, order)));
            }
        }

        return largest;
    }

    private static double DividedDifference(TensorSurface surface, bool alongX, int first, int line, int order)
    {
        GridAxis axis = alongX ? surface.X.Axis : surface.Y.Axis;
        int columns = surface.X.Axis.Count;
        Span<double> table = stackalloc double[order + 1];
        for (int i = 0; i <= order; i++)
        {
            table[i] = surface.Heights[alongX ? (line * columns) + first + i : ((first + i) * columns) + line];
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
