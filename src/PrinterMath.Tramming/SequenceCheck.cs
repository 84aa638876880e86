namespace PrinterMath.Tramming;

/// <summary>Checks that passes follow each other and turn screws that are there.</summary>
internal static class SequenceCheck
{
    internal static void Passes(BedSupports supports, TrammingPass[] passes, string parameter)
    {
        if (passes.Length == 0)
        {
            throw Guard.Refused(parameter, "There is no pass; a sequence needs at least one.");
        }

        if (!supports.AreThreeOrFourScrews)
        {
            throw Guard.Refused(nameof(supports), "A sequence learns from three or four screws that are turned by hand; these supports are others.");
        }

        double last = double.NegativeInfinity;
        for (int p = 0; p < passes.Length; p++)
        {
            TrammingPass pass = Guard.NotNull(passes[p], parameter);
            foreach (AppliedTurn turn in pass.Turned)
            {
                if (!supports.Screws.Any(screw => string.Equals(screw.Name, turn.Screw, StringComparison.Ordinal)))
                {
                    throw Guard.Refused(parameter, $"Pass {p + 1} names a turn of '{turn.Screw}', which is not one of the screws.");
                }
            }

            if (p == 0 && pass.Turned.Count > 0)
            {
                throw Guard.Refused(parameter, "Turns before the first pass say nothing, since nothing was read before them; make it with TrammingPass.First.");
            }

            if (pass.HasTimes && pass.Seconds[0] < last)
            {
                throw Guard.Refused(parameter, FormattableString.Invariant($"Pass {p + 1} begins at {pass.Seconds[0]} s, before a pass before it ended at {last} s; passes stand in the order made."));
            }

            last = pass.HasTimes ? pass.Seconds[^1] : last;
        }
    }

    /// <summary>Next turns are computed from the learned response, which knows neither limits nor the twist.</summary>
    internal static void Next(TrammingOptions next)
    {
        if (next.RemoveTwist || Guard.NotNull(next.Limits, "options.Next.Limits").Count > 0)
        {
            throw Guard.Refused("options", "Next turns of a sequence know neither RemoveTwist nor Limits; plan from the last plane with BedSupports.Plan.");
        }
    }
}
