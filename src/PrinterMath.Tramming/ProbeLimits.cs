using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>What may be computed with: beyond these limits squares overflow or vanish, and no printer is meant.</summary>
internal static class ProbeLimits
{
    private const double Farthest = 1e6;
    private const double Smallest = 1e-15;

    internal static void Check(ReadOnlySpan<ProbePoint> points)
    {
        for (int i = 0; i < points.Length; i++)
        {
            ProbePoint p = points[i];
            if (Math.Abs(p.XMeters) <= Farthest && Math.Abs(p.YMeters) <= Farthest && Math.Abs(p.ZMeters) <= Farthest
                && (!p.HasUncertainty || p.StandardUncertaintyMeters is >= Smallest and <= Farthest))
            {
                continue;
            }

            throw new ArgumentOutOfRangeException(
                FormattableString.Invariant($"points[{i}]"),
                p,
                FormattableString.Invariant($"points[{i}] is ({p.XMeters:G4}, {p.YMeters:G4}, {p.ZMeters:G4}) m with u = {p.StandardUncertaintyMeters:G4} m; coordinates must lie within ±1000 km and uncertainties from 1 fm to 1000 km."));
        }
    }

    /// <summary>A stated repeatability in metres, or zero for none.</summary>
    internal static double Repeatability(UnitsNet.Length? stated, string name) =>
        stated is UnitsNet.Length s ? Guard.Between(s.Meters, Smallest, Farthest, name) : 0;
}
