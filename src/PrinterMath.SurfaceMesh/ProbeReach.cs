using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Where a probe that sits beside the nozzle can reach.</summary>
public static class ProbeReach
{
    /// <summary>The part of the surface that the probe reaches while the nozzle keeps to its travel.</summary>
    /// <param name="nozzleTravel">Where the nozzle may go.</param>
    /// <param name="probeOffsetX">Position of the probe along x, counted from the nozzle.</param>
    /// <param name="probeOffsetY">Position of the probe along y, counted from the nozzle.</param>
    /// <param name="surface">The surface that can be probed.</param>
    /// <param name="margin">How far the probe keeps from the border of the surface, zero or more.</param>
    /// <returns>The rectangle: the travel moved by the offset, cut by the surface less the margin.</returns>
    /// <exception cref="ArgumentException">Nothing of the surface is within reach.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the margin is negative.</exception>
    /// <example><code>
    /// SurfaceRectangle reach = ProbeReach.Of(travel, Length.FromMillimeters(-40), Length.FromMillimeters(-10), bed, Length.FromMillimeters(5));
    /// </code></example>
    public static SurfaceRectangle Of(SurfaceRectangle nozzleTravel, Length probeOffsetX, Length probeOffsetY, SurfaceRectangle surface, Length margin)
    {
        Guard.NotNull(nozzleTravel);
        Guard.NotNull(surface);
        double x = Guard.Finite(probeOffsetX.Meters, nameof(probeOffsetX)), y = Guard.Finite(probeOffsetY.Meters, nameof(probeOffsetY));
        double edge = Guard.NonNegative(margin.Meters, nameof(margin));
        double left = Math.Max(nozzleTravel.LeftMeters + x, surface.LeftMeters + edge), right = Math.Min(nozzleTravel.RightMeters + x, surface.RightMeters - edge);
        double front = Math.Max(nozzleTravel.FrontMeters + y, surface.FrontMeters + edge), rear = Math.Min(nozzleTravel.RearMeters + y, surface.RearMeters - edge);
        return left < right && front < rear
            ? new SurfaceRectangle(left, front, right, rear)
            : throw Guard.Refused(nameof(nozzleTravel), $"With the nozzle at {nozzleTravel} the probe reaches nothing of the surface, {surface}.");
    }
}
