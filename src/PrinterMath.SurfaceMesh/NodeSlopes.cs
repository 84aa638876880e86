namespace PrinterMath.SurfaceMesh;

/// <summary>Slopes z_x, z_y and twist z_xy at the nodes of a grid: what a bicubic cell needs besides heights.</summary>
internal sealed class NodeSlopes
{
    private NodeSlopes(double[] alongX, double[] alongY, double[] twist)
    {
        AlongX = alongX;
        AlongY = alongY;
        Twist = twist;
    }

    internal double[] AlongX { get; }

    internal double[] AlongY { get; }

    internal double[] Twist { get; }

    /// <summary>
    /// The twist is the slope along y of z_x. A rule that is not linear takes parabolas there, and the mean of both orders, so that x and y count alike.
    /// </summary>
    internal static NodeSlopes Of(GridAxis x, GridAxis y, double[] heights, SlopeRule rule)
    {
        LineSlopes.Formula formula = LineSlopes.Of(rule);
        double[] alongX = AcrossColumns(x, y, heights, formula), alongY = AcrossRows(x, y, heights, formula);
        if (rule is SlopeRule.Neighbours or SlopeRule.NaturalSpline)
        {
            return new NodeSlopes(alongX, alongY, AcrossRows(x, y, alongX, formula));
        }

        double[] one = AcrossRows(x, y, alongX, LineSlopes.Parabolas), other = AcrossColumns(x, y, alongY, LineSlopes.Parabolas);
        double[] twist = [.. one.Zip(other, (a, b) => (a + b) / 2)];
        if (rule == SlopeRule.ShapePreserving)
        {
            CellRange.Limit(x, y, heights, alongX, alongY, twist);
        }

        return new NodeSlopes(alongX, alongY, twist);
    }

    /// <summary>Those of some nodes alone.</summary>
    internal NodeSlopes At(int[] nodes) =>
        new([.. nodes.Select(i => AlongX[i])], [.. nodes.Select(i => AlongY[i])], [.. nodes.Select(i => Twist[i])]);

    private static double[] AcrossColumns(GridAxis x, GridAxis y, double[] values, LineSlopes.Formula formula)
    {
        double[] slopes = new double[values.Length];
        for (int row = 0; row < y.Count; row++)
        {
            formula(x, values.AsSpan(row * x.Count, x.Count), slopes.AsSpan(row * x.Count, x.Count));
        }

        return slopes;
    }

    private static double[] AcrossRows(GridAxis x, GridAxis y, double[] values, LineSlopes.Formula formula)
    {
        double[] slopes = new double[values.Length], line = new double[y.Count], along = new double[y.Count];
        for (int column = 0; column < x.Count; column++)
        {
            for (int row = 0; row < y.Count; row++)
            {
                line[row] = values[(row * x.Count) + column];
            }

            formula(y, line, along);
            for (int row = 0; row < y.Count; row++)
            {
                slopes[(row * x.Count) + column] = along[row];
            }
        }

        return slopes;
    }
}
