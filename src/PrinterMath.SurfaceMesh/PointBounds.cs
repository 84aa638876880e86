using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>The smallest rectangle that holds all points.</summary>
internal static class PointBounds
{
    internal static SurfaceRectangle Of(ProbePoint[] points)
    {
        double left = double.PositiveInfinity, front = left, right = double.NegativeInfinity, rear = right;
        foreach (ProbePoint point in points)
        {
            left = Math.Min(left, point.XMeters);
            right = Math.Max(right, point.XMeters);
            front = Math.Min(front, point.YMeters);
            rear = Math.Max(rear, point.YMeters);
        }

        return right > left && rear > front
            ? new SurfaceRectangle(left, front, right, rear)
            : throw Guard.Refused(nameof(points), FormattableString.Invariant($"The {points.Length} points span no rectangle: they must differ along x and along y."));
    }
}
