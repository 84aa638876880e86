using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>The findings of a plan.</summary>
internal static class PlanFindings
{
    /// <summary>Screws farther outside the probed rectangle than this part of its longer side are not at that bed.</summary>
    private const double Farthest = 1;

    /// <summary>Room of less than this is no travel of a screw; own limit, no source.</summary>
    private const double LeastRoom = 5e-5;

    /// <summary>Travel of more than this part of the bed is none either; own limit, no source.</summary>
    private const double MostTravel = 0.5;

    internal static Finding Unreached(in SupportMotion motion, in PlaneSolution plane, double spread)
    {
        (double nx, double ny) = (-motion.EY, motion.EX);
        SlopeCovariance v = plane.SlopeCovariance;
        double slope = (plane.SlopeX * nx) + (plane.SlopeY * ny);
        double u = Math.Sqrt((nx * nx * v.X) + (2 * nx * ny * v.Both) + (ny * ny * v.Y));
        bool matters = TwoSidedTest.IsSignificant(slope, u, plane.DegreesOfFreedom);
        double direction = Math.Atan2(ny, nx) * 180 / Math.PI;
        return new Finding(
            "plan.tilt.unreached",
            matters ? FindingSeverity.Caution : FindingSeverity.Note,
            Text($"No support that can be moved reaches the tilt along {direction:0.#}° from +x: {Measured<double>.FromSi(slope, u, plane.DegreesOfFreedom)}. It leaves {spread * 1e3:G3} mm over the probed rectangle{(matters ? string.Empty : ", which cannot be told from none")}."),
            new FindingNumber("slope", slope, "1"),
            new FindingNumber("standardUncertainty", u, "1"),
            new FindingNumber("direction", direction * Math.PI / 180, "rad"),
            new FindingNumber("remainingSpread", spread, "m"));
    }

    internal static Finding Limited(string screws, bool tilted, double slopeX, double slopeY, double spread) => new(
        "plan.limits.bind",
        FindingSeverity.Caution,
        tilted
            ? Text($"Limits at {screws} keep the bed from becoming level: slopes of {slopeX:G3} and {slopeY:G3} are left, {spread * 1e3:G3} mm over the probed rectangle. Shim, or give the screws more travel.")
            : Text($"Limits at {screws} keep the bed from the height that was asked for; it becomes as level as without them."),
        new FindingNumber("slopeX", slopeX, "1"),
        new FindingNumber("slopeY", slopeY, "1"),
        new FindingNumber("remainingSpread", spread, "m"));

    internal static Finding Infeasible(string screws, double excess) => new(
        "plan.limits.infeasible",
        FindingSeverity.Blocking,
        Text($"The limits at {screws} exclude each other: whatever is turned, one of them is passed by {excess * 1e3:0.###} mm or more. No turns are given."),
        new FindingNumber("leastExcess", excess, "m"));

    internal static Finding? Away(ReadOnlySpan<AdjustableSupport> supports, ReadOnlySpan<Place> probed)
    {
        double lowX = double.MaxValue, lowY = double.MaxValue, highX = double.MinValue, highY = double.MinValue;
        foreach (Place p in probed)
        {
            (lowX, highX) = (Math.Min(lowX, p.X), Math.Max(highX, p.X));
            (lowY, highY) = (Math.Min(lowY, p.Y), Math.Max(highY, p.Y));
        }

        double longer = Math.Max(highX - lowX, highY - lowY);
        foreach (AdjustableSupport support in supports)
        {
            double outside = Math.Max(
                Math.Max(lowX - support.XMeters, support.XMeters - highX),
                Math.Max(lowY - support.YMeters, support.YMeters - highY));
            if (outside > Farthest * longer)
            {
                return new Finding(
                    "plan.support.away",
                    FindingSeverity.Caution,
                    Text($"{support} stands {outside * 1e3:G3} mm outside the probed rectangle, which is {longer * 1e3:G3} mm long: is its place in the frame and the unit of the probe points?"),
                    new FindingNumber("outside", outside, "m"),
                    new FindingNumber("longerSide", longer, "m"));
            }
        }

        return null;
    }

    internal static Finding? UnitOfLimits(IReadOnlyList<TravelLimit> limits, double extent)
    {
        foreach (TravelLimit limit in limits)
        {
            double low = double.IsNegativeInfinity(limit.LowestMeters) ? 0 : limit.LowestMeters;
            double size = Math.Max(Math.Abs(low), Math.Abs(limit.HighestMeters));
            if (size > MostTravel * extent || limit.HighestMeters - limit.LowestMeters < LeastRoom)
            {
                return new Finding(
                    "plan.limits.unit.suspect",
                    FindingSeverity.Caution,
                    Text($"The limit \"{limit}\" is no travel of a screw under a bed of {extent * 1e3:G3} mm: is it in the unit that was said?"),
                    new FindingNumber("largest", size, "m"),
                    new FindingNumber("room", Math.Min(limit.HighestMeters - limit.LowestMeters, 1e6), "m"),
                    new FindingNumber("extent", extent, "m"));
            }
        }

        return null;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
