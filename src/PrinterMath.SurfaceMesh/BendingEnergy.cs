namespace PrinterMath.SurfaceMesh;

/// <summary>Discrete bending energy ∬ z_xx² + 2 z_xy² + z_yy² of a grid: a sum of weighted squares of differences.</summary>
internal static class BendingEnergy
{
    /// <summary>weight · (Σ coefficient · z[node])².</summary>
    internal readonly record struct Term(double Weight, int[] Nodes, double[] Coefficients);

    internal static IEnumerable<Term> Terms(GridAxis x, GridAxis y)
    {
        for (int row = 0; row < y.Count; row++)
        {
            for (int column = 0; column < x.Count; column++)
            {
                int i = (row * x.Count) + column;
                if (column > 0 && column < x.Cells)
                {
                    yield return Second(x, column, i, 1, Reach(y, row));
                }

                if (row > 0 && row < y.Cells)
                {
                    yield return Second(y, row, i, x.Count, Reach(x, column));
                }

                if (column < x.Cells && row < y.Cells)
                {
                    double area = x.Step(column) * y.Step(row);
                    yield return new Term(2 * area, [i, i + 1, i + x.Count, i + x.Count + 1], [1 / area, -1 / area, -1 / area, 1 / area]);
                }
            }
        }
    }

    private static Term Second(GridAxis axis, int node, int i, int stride, double across)
    {
        double before = axis.Step(node - 1), after = axis.Step(node), reach = (before + after) / 2;
        return new Term(
            reach * across,
            [i - stride, i, i + stride],
            [1 / (before * reach), -(1 / before + 1 / after) / reach, 1 / (after * reach)]);
    }

    private static double Reach(GridAxis axis, int node) =>
        ((node > 0 ? axis.Step(node - 1) : 0) + (node < axis.Cells ? axis.Step(node) : 0)) / 2;
}
