using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>Numbers that are off by a factor of a thousand betray themselves by what no printer has. The limits are this library's own, no source.</summary>
internal static class UnitSuspicion
{
    private const double SmallestBed = 2e-3;
    private const double LargestBed = 10;
    private const double SteepestBed = 0.1;

    /// <summary>Heights that spread by less than this fraction of the bed lie below the resolution of any probe.</summary>
    private const double FlattestBed = 2e-6;

    internal static Finding? Of(in PlaneSolution plane, ReadOnlySpan<PlaneResidual> table)
    {
        double low = double.MaxValue, high = double.MinValue;
        foreach (PlaneResidual residual in table)
        {
            low = Math.Min(low, residual.SiValue);
            high = Math.Max(high, residual.SiValue);
        }

        return Of(plane.Axes, plane, high - low);
    }

    internal static Finding? Of(in PrincipalAxes axes, in PlaneSolution plane, double range)
    {
        double extent = 2 * axes.LongestAlong;
        if (extent is < SmallestBed or > LargestBed)
        {
            return PlaneFindings.UnitOfPlaces(extent);
        }

        double spread = range + (extent * Math.Max(Math.Abs(plane.SlopeAlong), Math.Abs(plane.SlopeAcross)));
        return spread > SteepestBed * extent || (spread > 1e-12 && spread < FlattestBed * extent)
            ? PlaneFindings.UnitOfHeights(spread, extent)
            : null;
    }
}
