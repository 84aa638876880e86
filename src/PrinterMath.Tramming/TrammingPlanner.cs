using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Height changes that bring the plane's heights at the screws to one height, as far as supports and limits allow.</summary>
internal static class TrammingPlanner
{
    internal static TrammingPlan Plan(BedSupports supports, PlaneFit plane, TrammingOptions options)
    {
        var request = PlanRequest.Of(supports, options);
        TwistFit? fit = supports.Twist is TwistPattern pattern ? TwistEstimator.Fit(plane, pattern) : null;
        BedTwist? twist = fit is null ? null : TwistEstimator.Result(fit, options.RemoveTwist);
        if ((plane.Blocking ?? (options.RemoveTwist ? fit!.Missing : null)) is Finding missing)
        {
            return TrammingPlan.Blocked(plane, twist, [], missing);
        }

        TwistFit? removed = options.RemoveTwist ? fit : null;
        PlaneSolution solution = removed is null
            ? plane.Solution
            : plane.Solution with { UnitVariance = removed.UnitVariance, DegreesOfFreedom = removed.DegreesOfFreedom };
        var problem = new LevelProblem(request.Motion, supports.Adjustable, solution.Axes);
        LevelGoal goal = Goal(supports, request, options, solution, removed);
        var level = LevelSolution.Of(problem, goal);
        var findings = new List<Finding>();
        Notice(findings, PlanFindings.Away(supports.Adjustable, plane.Places));
        Notice(findings, options.Limits.Count == 0 ? null : PlanFindings.UnitOfLimits(options.Limits, 2 * supports.Axes.LongestAlong));
        if (level.Conflict is NearestPoint conflict)
        {
            return TrammingPlan.Blocked(plane, twist, findings, PlanFindings.Infeasible(Names(supports, conflict.Set), conflict.LeastExcess));
        }

        (double width, double depth) = plane.ProbedExtent;
        double spread = (Math.Abs(level.SlopeX) * width) + (Math.Abs(level.SlopeY) * depth);
        Notice(findings, request.Motion.Tilts == 1 ? PlanFindings.Unreached(request.Motion, solution, Unreached(problem, solution, width, depth)) : null);
        Notice(findings, level.IsLimited ? PlanFindings.Limited(Held(supports, level, goal), level.TiltIsLimited, level.SlopeX, level.SlopeY, spread) : null);

        double[] covariance = level.Covariance(problem, solution, removed, supports.Adjustable, (request.Motion.X, request.Motion.Y));
        Measured<Length>[] changes = Changes(supports, request.Still, level, covariance, solution.DegreesOfFreedom);
        Place[] errors = Errors(supports.Adjustable, level.Changes);
        var predicted = new PredictedPlane(
            new PredictedLevel(level.Height, request.Motion.X, request.Motion.Y, level.SlopeX, level.SlopeY), solution, removed, supports.Motion, errors, width, depth);
        return TrammingPlan.Of(plane, supports, changes, covariance, solution.DegreesOfFreedom, request.SmallestTurns, predicted, twist, RemainingTwist(fit, removed, supports, errors), findings);
    }

    private static LevelGoal Goal(BedSupports supports, in PlanRequest request, TrammingOptions options, in PlaneSolution plane, TwistFit? twist)
    {
        ReadOnlySpan<AdjustableSupport> places = supports.Adjustable;
        double[] heights = new double[places.Length];
        double mean = 0;
        for (int i = 0; i < heights.Length; i++)
        {
            double rest = twist is null ? 0 : twist.Amplitude * twist.Rest(places[i].XMeters, places[i].YMeters);
            heights[i] = plane.Height(places[i].XMeters, places[i].YMeters) + rest;
            mean += rest / heights.Length;
        }

        double reference = request.Target
            ?? (request.Still >= 0 && !supports.Motion.IsAnchored ? heights[request.Still] : plane.Height(request.Motion.X, request.Motion.Y) + mean);
        double[]? weights = options.LeastTotalTurning ? new double[heights.Length] : null;
        for (int i = 0; i < weights?.Length; i++)
        {
            weights[i] = 1 / places[i].TurnLead.SiValue;
        }

        return new LevelGoal(heights, plane.SlopeX, plane.SlopeY, reference, request.Target is not null, request.Motion.IsAnchored, request.Low, request.High, weights);
    }

    private static Measured<Length>[] Changes(BedSupports supports, int still, LevelSolution level, double[] covariance, double degreesOfFreedom)
    {
        var changes = new Measured<Length>[level.Changes.Length];
        for (int i = 0; i < changes.Length; i++)
        {
            double variance = covariance[(i * changes.Length) + i];
            changes[i] = i == still ? Measured.Exact(Length.Zero)
                : level.IsHeld(i) || variance == 0 ? Measured.Exact(Length.FromMeters(level.Changes[i]))
                : Measured<Length>.FromSi(level.Changes[i], Math.Sqrt(variance), degreesOfFreedom);
        }

        return changes;
    }

    /// <summary>Variance of the height at each support that leads and whole steps leave.</summary>
    private static Place[] Errors(ReadOnlySpan<AdjustableSupport> supports, double[] changes)
    {
        var errors = new Place[supports.Length];
        for (int i = 0; i < errors.Length; i++)
        {
            Measured<Length> lead = supports[i].TurnLead;
            double error = changes[i] * lead.SiStandardUncertainty / lead.SiValue;
            double grain = supports[i].Grain;
            errors[i] = new Place(supports[i].XMeters, supports[i].YMeters, (error * error) + (grain * grain / 12));
        }

        return errors;
    }

    /// <summary>The twist after the turns: as it was, or zero, uncertain by the fit's own and by what errors of the changes twist.</summary>
    private static Measured<Length>? RemainingTwist(TwistFit? fit, TwistFit? removed, BedSupports supports, Place[] errors)
    {
        if (fit is null || fit.Missing is not null)
        {
            return null;
        }

        double variance = fit.Variance;
        if (removed is not null)
        {
            double square = 0;
            double[] pattern = new double[errors.Length];
            for (int i = 0; i < errors.Length; i++)
            {
                pattern[i] = fit.Pattern.At(errors[i].X, errors[i].Y);
                for (int j = 0; j < errors.Length; j++)
                {
                    pattern[i] -= supports.Motion.Influence(errors[i].X, errors[i].Y, errors[j]) * fit.Pattern.At(errors[j].X, errors[j].Y);
                }

                square += pattern[i] * pattern[i];
            }

            for (int i = 0; i < errors.Length; i++)
            {
                variance += errors[i].Weight * (pattern[i] / square) * (pattern[i] / square);
            }
        }

        return Measured<Length>.FromSi(removed is null ? fit.Amplitude : 0, Math.Sqrt(variance), fit.DegreesOfFreedom);
    }

    private static double Unreached(LevelProblem problem, in PlaneSolution plane, double width, double depth)
    {
        (double x, double y) = problem.Unreached(plane.SlopeX, plane.SlopeY);
        return (Math.Abs(x) * width) + (Math.Abs(y) * depth);
    }

    private static string Names(BedSupports supports, IEnumerable<HalfPlane> set)
    {
        string[] names = [.. supports.Adjustable.ToArray().Select(support => support.Name)];
        return string.Join(", ", set.SelectMany(edge => new[] { edge.Lower, edge.Upper }).Where(i => i >= 0).Distinct().Order().Select(i => $"'{names[i]}'"));
    }

    private static string Held(BedSupports supports, LevelSolution level, LevelGoal goal)
    {
        string[] names = [.. supports.Adjustable.ToArray().Select(support => support.Name)];
        return string.Join(", ", names.Where((_, i) => level.Changes[i] <= goal.Low[i] || level.Changes[i] >= goal.High[i]).Select(name => $"'{name}'"));
    }

    private static void Notice(List<Finding> findings, Finding? finding)
    {
        if (finding is not null)
        {
            findings.Add(finding);
        }
    }
}
