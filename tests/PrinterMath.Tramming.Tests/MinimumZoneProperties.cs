using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PrinterMath.Measurement;

namespace PrinterMath.Tramming.Tests;

/// <summary>Laws of the minimum zone. Rounding is allowed 1e-9 of the range of heights: differences of coordinates of up to 1000 times that range lose three digits, brute force loses more.</summary>
public class MinimumZoneProperties
{
    [Property(Arbitrary = [typeof(SmallSets)], MaxTest = 5000)]
    public Property BothZonesAreThoseOfBruteForce(IReadOnlyList<ProbePoint> points)
    {
        MinimumZone inZ = MinimumZone.InZ(points);
        MinimumZone orthogonal = MinimumZone.Orthogonal(points);
        if (!inZ.IsDeterminate)
        {
            return (!orthogonal.IsDeterminate && IsOneLine(points)).ToProperty();
        }

        (double z, double o) = ZoneBruteForce.Widths(points);
        double rounding = 1e-9 * Range(points);
        return (Math.Abs(inZ.Width.Meters - z) <= rounding && Math.Abs(orthogonal.Width.Meters - o) <= rounding)
            .ToProperty().Label($"z {inZ.Width.Meters:G12} {z:G12} orthogonal {orthogonal.Width.Meters:G12} {o:G12}: {string.Join(' ', points)}");
    }

    [Property(Arbitrary = [typeof(BedArbitraries)], MaxTest = 300)]
    public Property EveryPointLiesInTheZoneAndBothLimitsAreTouched(BedCase bed)
    {
        List<ProbePoint> points = bed.Scattered();
        return new[] { MinimumZone.InZ(points), MinimumZone.Orthogonal(points) }.All(zone =>
        {
            double half = zone.Width.Meters / 2;
            return zone.Deviations.All(d => Math.Abs(d.Meters) <= half * (1 + 1e-12))
                && zone.UpperPoints.Count > 0
                && zone.LowerPoints.Count > 0
                && (zone.UpperPoints.Count + zone.LowerPoints.Count >= 4 || zone.Findings.Any(f => f.Code == "zone.notUnique") || zone.UpperPoints.Count + zone.LowerPoints.Count == 3);
        }).ToProperty();
    }

    [Property(Arbitrary = [typeof(BedArbitraries)], MaxTest = 300)]
    public Property OrthogonalIsBelowInZAndInZBelowLeastSquares(BedCase bed)
    {
        List<ProbePoint> points = bed.Scattered();
        double inZ = MinimumZone.InZ(points).Width.Meters;
        double orthogonal = MinimumZone.Orthogonal(points).Width.Meters;
        return (orthogonal <= inZ * (1 + 1e-12) && inZ <= PlaneFit.Fit(points).RawFlatness.Meters * (1 + 1e-9)).ToProperty();
    }

    [Property(Arbitrary = [typeof(BedArbitraries)], MaxTest = 200)]
    public Property TiltingTheBedLeavesTheZoneInZ(BedCase bed)
    {
        List<ProbePoint> points = bed.Scattered();
        IReadOnlyList<ProbePoint> tilted = BedCase.Map(points, p => (p.XMeters + 3, p.YMeters, p.ZMeters + 1 + (.01 * p.XMeters) - (.02 * p.YMeters)));
        return (Math.Abs(MinimumZone.InZ(points).Width.Meters - MinimumZone.InZ(tilted).Width.Meters) < 1e-14).ToProperty(); // heights of 1 m: rounding 2e-16, grown over 36 points
    }

    [Property(Arbitrary = [typeof(BedArbitraries)], MaxTest = 200)]
    public Property TurningTheBodyLeavesTheOrthogonalZone(BedCase bed)
    {
        List<ProbePoint> points = bed.Scattered();
        (double s, double c) = Math.SinCos(.3);
        IReadOnlyList<ProbePoint> turned = BedCase.Map(points, p => ((c * p.XMeters) - (s * p.ZMeters), p.YMeters, (s * p.XMeters) + (c * p.ZMeters)));
        return (Math.Abs(MinimumZone.Orthogonal(points).Width.Meters - MinimumZone.Orthogonal(turned).Width.Meters) < 1e-14).ToProperty(); // 1e-15 of coordinates below 1 m, ten operations
    }

    private static double Range(IReadOnlyList<ProbePoint> points) => Math.Max(1e-9, points.Max(p => p.ZMeters) - points.Min(p => p.ZMeters));

    private static bool IsOneLine(IReadOnlyList<ProbePoint> points) =>
        points.All(a => points.All(b => points.All(c => Math.Abs(((b.XMeters - a.XMeters) * (c.YMeters - a.YMeters)) - ((c.XMeters - a.XMeters) * (b.YMeters - a.YMeters))) < 2e-4)));
}
