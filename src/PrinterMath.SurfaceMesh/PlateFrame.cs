namespace PrinterMath.SurfaceMesh;

/// <summary>Coordinates about the middle of a rectangle, over half its longer side.</summary>
internal sealed record PlateFrame(double[] X, double[] Y, double MiddleX, double MiddleY, double Scale)
{
    internal static PlateFrame Of(PooledPoints points, SurfaceRectangle rectangle)
    {
        double x = (rectangle.LeftMeters + rectangle.RightMeters) / 2, y = (rectangle.FrontMeters + rectangle.RearMeters) / 2;
        double scale = Math.Max(rectangle.RightMeters - rectangle.LeftMeters, rectangle.RearMeters - rectangle.FrontMeters) / 2;
        return new PlateFrame([.. points.X.Select(at => (at - x) / scale)], [.. points.Y.Select(at => (at - y) / scale)], x, y, scale);
    }
}
