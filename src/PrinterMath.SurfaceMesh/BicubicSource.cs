namespace PrinterMath.SurfaceMesh;

/// <summary>Bicubic interpolation of a grid with slopes by a rule.</summary>
internal sealed class BicubicSource : GridSource
{
    /// <summary>What a node does to the slopes of a natural spline falls by half and more from node to node (0.27 where spacings are even): 31 nodes away it is less than 5e-10.</summary>
    private const int SplineReach = 31;

    private readonly SlopeRule _rule;
    private readonly NodeSlopes _slopes;
    private readonly NodeSlopes _parabolas;
    private readonly AxisBasis? _x;
    private readonly AxisBasis? _y;

    internal BicubicSource(GridHeights grid, SlopeRule rule, HeightModelOptions? options)
        : this(grid, rule, NodeSlopes.Of(grid.X, grid.Y, grid.Values, rule), options)
    {
    }

    private BicubicSource(GridHeights grid, SlopeRule rule, NodeSlopes slopes, HeightModelOptions? options)
        : base(grid, CellPolynomials.Bicubic(grid.X, grid.Y, grid.Values, slopes), options)
    {
        _rule = rule;
        _slopes = slopes;
        _parabolas = rule == SlopeRule.Neighbours ? slopes : NodeSlopes.Of(grid.X, grid.Y, grid.Values, SlopeRule.Neighbours);
        if (rule is SlopeRule.Neighbours or SlopeRule.NaturalSpline)
        {
            int reach = rule == SlopeRule.Neighbours ? 1 : SplineReach;
            _x = AxisBasis.Cubic(grid.X, LineSlopes.Of(rule), reach);
            _y = AxisBasis.Cubic(grid.Y, LineSlopes.Of(rule), reach);
        }
    }

    /// <summary>Slopes depend on one node to either side, Akima's on two, and the twist on one more.</summary>
    private int LocalReach => _rule == SlopeRule.Akima ? 3 : 2;

    internal override void Heights(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> zs) => CellEvaluation.Bicubic(Cells, this, xs, ys, zs);

    private protected override double CellError(int column, int row) =>
        SurfaceMesh.InterpolationError.BicubicAt(Grid, column, row) + SurfaceMesh.InterpolationError.OfSlopes(Grid, _slopes, _parabolas, column, row);

    private protected override double Variance(double x, double y) => _x is not null && _y is not null ? Variance(_x, _y, x, y) : VarianceByDifferences(x, y);

    /// <summary>
    /// Half the change of the height when a node goes up and down by the probe's standard uncertainty, in place of the derivative. Only the nodes that the cell depends
    /// on are computed with.
    /// </summary>
    private double VarianceByDifferences(double x, double y)
    {
        int column = Grid.X.Locate(InsideX(x), out _), row = Grid.Y.Locate(InsideY(y), out _);
        GridAxis axisX = Grid.X.Around(column, LocalReach, out int firstColumn), axisY = Grid.Y.Around(row, LocalReach, out int firstRow);
        GridAxis cellX = Grid.X.Around(column, 0, out _), cellY = Grid.Y.Around(row, 0, out _);
        int corner = ((row - firstRow) * axisX.Count) + column - firstColumn;
        int[] nodes = new int[axisX.Count * axisY.Count], corners = [corner, corner + 1, corner + axisX.Count, corner + axisX.Count + 1];
        double[] heights = new double[nodes.Length], factors = new double[nodes.Length];
        for (int k = 0; k < nodes.Length; k++)
        {
            nodes[k] = Grid.Index(firstColumn + (k % axisX.Count), firstRow + (k / axisX.Count));
            heights[k] = Grid.Values[nodes[k]];
        }

        for (int k = 0; k < nodes.Length; k++)
        {
            double height = heights[k];
            heights[k] = height + Grid.Typical;
            double above = OfCell();
            heights[k] = height - Grid.Typical;
            factors[k] = (above - OfCell()) / (2 * Grid.Typical);
            heights[k] = height;
        }

        return Grid.Variance(nodes, factors);

        double OfCell() => At(
            CellPolynomials.Bicubic(cellX, cellY, [.. corners.Select(k => heights[k])], NodeSlopes.Of(axisX, axisY, heights, _rule).At(corners)), x, y);
    }
}
