using PrinterMath.Measurement;
using PrinterMath.Tramming;

namespace CommissioningPass.Pictures;

/// <summary>Heights of the bed about its plane.</summary>
/// <param name="Points">Places in millimetres, heights in micrometres, positive above the plane.</param>
internal sealed record SurfaceData(IReadOnlyList<(double X, double Y, double Height)> Points) : PictureData
{
    internal static SurfaceData Of(IReadOnlyList<ProbePoint> probed) => new(
        [.. PlaneFit.Fit(probed).Residuals.Select(residual => (
            probed[residual.Index].X.Millimeters,
            probed[residual.Index].Y.Millimeters,
            residual.Value.Micrometers))]);
}
