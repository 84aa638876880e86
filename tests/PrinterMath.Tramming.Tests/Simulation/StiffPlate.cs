namespace PrinterMath.Tramming.Tests.Simulation;

/// <summary>
/// A flat plate held at three places, with an optional saddle pressed into it: heights by interpolation between the three places (areas of
/// triangles), in millimetres.
/// </summary>
internal sealed class StiffPlate((double X, double Y)[] places, double[] heights, Func<double, double, double>? shape = null)
{
    internal double FlatHeight(double x, double y)
    {
        double whole = Twice(places[0], places[1], places[2]);
        return ((heights[0] * Twice((x, y), places[1], places[2]))
            + (heights[1] * Twice(places[0], (x, y), places[2]))
            + (heights[2] * Twice(places[0], places[1], (x, y)))) / whole;
    }

    internal double Height(double x, double y) => FlatHeight(x, y) + (shape?.Invoke(x, y) ?? 0);

    internal StiffPlate Moved(double[] changes) => new(places, [.. heights.Zip(changes, (h, c) => h + c)], shape);

    internal double Spread(double width, double depth)
    {
        double[] corners = [FlatHeight(0, 0), FlatHeight(width, 0), FlatHeight(0, depth), FlatHeight(width, depth)];
        return corners.Max() - corners.Min();
    }

    private static double Twice((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) =>
        ((b.X - a.X) * (c.Y - a.Y)) - ((c.X - a.X) * (b.Y - a.Y));
}
