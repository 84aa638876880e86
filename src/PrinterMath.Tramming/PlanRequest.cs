using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>The options of a plan, checked against the supports.</summary>
internal readonly record struct PlanRequest(int Still, double? Target, double SmallestTurns, SupportMotion Motion, double[] Low, double[] High)
{
    internal static PlanRequest Of(BedSupports supports, TrammingOptions options)
    {
        double smallest = Guard.NonNegative(options.SmallestUsefulTurn.Revolutions, "options.SmallestUsefulTurn");
        double? target = options.TargetHeight is Length height ? Guard.Finite(height.Meters, "options.TargetHeight") : null;
        int asked = (options.KeepStill is null ? 0 : 1) + (target is null ? 0 : 1) + (options.LeastTotalTurning ? 1 : 0);
        if (asked > 1)
        {
            throw Guard.Refused(nameof(options), "KeepStill, TargetHeight and LeastTotalTurning exclude each other; give one.");
        }

        if (supports.Motion.IsAnchored && (target is not null || options.LeastTotalTurning))
        {
            throw Guard.Refused(nameof(options), "A fixed support or a hinge gives the height of the level bed: neither TargetHeight nor LeastTotalTurning can choose another.");
        }

        if (options.RemoveTwist && (supports.Motion.IsAnchored || supports.Adjustable.Length < 4))
        {
            throw Guard.Refused(nameof(options), "RemoveTwist needs four supports or more, all of which can be adjusted.");
        }

        int still = options.KeepStill is string name ? Find(supports, name, "KeepStill") : -1;
        SupportMotion motion = still < 0
            ? supports.Motion
            : supports.Motion.Holding(supports.Adjustable[still].XMeters, supports.Adjustable[still].YMeters);
        if (motion.Tilts == 0)
        {
            throw Guard.Refused(nameof(options), $"With '{options.KeepStill}' kept still nothing is left that could tilt the bed.");
        }

        (double[] low, double[] high) = Limits(supports, options);
        return new PlanRequest(still, target, smallest, motion, low, high);
    }

    private static (double[] Low, double[] High) Limits(BedSupports supports, TrammingOptions options)
    {
        double[] low = new double[supports.Adjustable.Length];
        double[] high = new double[low.Length];
        Array.Fill(low, double.NegativeInfinity);
        Array.Fill(high, double.PositiveInfinity);
        foreach (TravelLimit limit in Guard.NotNull(options.Limits, "options.Limits"))
        {
            int i = Find(supports, Guard.NotNull(limit, "options.Limits").Screw, "Limits");
            low[i] = Math.Max(low[i], limit.LowestMeters);
            high[i] = Math.Min(high[i], limit.HighestMeters);
        }

        return (low, high);
    }

    private static int Find(BedSupports supports, string name, string option)
    {
        for (int i = 0; i < supports.Adjustable.Length; i++)
        {
            if (string.Equals(supports.Adjustable[i].Name, name, StringComparison.Ordinal))
            {
                return i;
            }
        }

        throw Guard.Refused("options", supports.Supports.Any(support => string.Equals(support.Name, name, StringComparison.Ordinal))
            ? $"{option} names '{name}', which cannot be adjusted."
            : $"{option} names '{name}', which is not one of the supports.");
    }
}
