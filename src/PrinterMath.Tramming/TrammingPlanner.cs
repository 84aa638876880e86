using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Height changes that bring the plane's heights at the screws to one height.</summary>
internal static class TrammingPlanner
{
    internal static TrammingPlan Plan(BedSupports supports, PlaneFit plane, TrammingOptions options)
    {
        ReadOnlySpan<AdjustingScrew> screws = supports.ScrewSpan;
        int still = Check(screws, options);
        double smallest = Guard.NonNegative(options.SmallestUsefulTurn.Revolutions, "options.SmallestUsefulTurn");
        BedTwist? twist = supports.Twist is TwistPattern pattern ? TwistEstimator.Estimate(plane, pattern) : null;
        if (plane.Blocking is not null)
        {
            return new TrammingPlan(plane, [], [], null, twist);
        }

        PlaneSolution solution = plane.Solution;
        double target = Reference(solution, supports, still, options.TargetHeight);
        double[] covariance = Covariance(solution, supports, still, options.TargetHeight is not null);
        var turns = new ScrewTurn[screws.Length];
        var leadErrors = new Place[screws.Length];
        for (int i = 0; i < turns.Length; i++)
        {
            Measured<Length> lead = screws[i].Thread.Lead;
            double change = target - solution.Height(screws[i].XMeters, screws[i].YMeters);
            Measured<Length> measured = i == still
                ? Measured.Exact(Length.Zero)
                : Measured<Length>.FromSi(change, Math.Sqrt(covariance[(i * turns.Length) + i]), solution.DegreesOfFreedom);
            turns[i] = new ScrewTurn(screws[i], measured, smallest);
            double error = measured.SiValue * lead.SiStandardUncertainty / lead.SiValue;
            leadErrors[i] = new Place(screws[i].XMeters, screws[i].YMeters, error * error);
        }

        (double width, double depth) = plane.ProbedExtent;
        var predicted = new PredictedPlane(target, solution, supports.Axes, leadErrors, width, depth);
        return new TrammingPlan(plane, turns, covariance, predicted, twist);
    }

    private static int Check(ReadOnlySpan<AdjustingScrew> screws, TrammingOptions options)
    {
        if (options.TargetHeight is Length height)
        {
            Guard.Finite(height.Meters, "options.TargetHeight");
        }

        if (options.KeepStill is not string name)
        {
            return -1;
        }

        if (options.TargetHeight is not null)
        {
            throw Guard.Refused(nameof(options), "KeepStill and TargetHeight exclude each other; give one.");
        }

        for (int i = 0; i < screws.Length; i++)
        {
            if (string.Equals(screws[i].Name, name, StringComparison.Ordinal))
            {
                return i;
            }
        }

        throw Guard.Refused(nameof(options), $"KeepStill names '{name}', which is not one of the screws.");
    }

    /// <summary>The height all screws are brought to: the still screw's, the stated one, or that at the centre of the screws, which is their mean.</summary>
    private static double Reference(in PlaneSolution plane, BedSupports supports, int still, Length? stated)
    {
        (double x, double y) = ReferencePlace(supports, still);
        return stated is Length height ? height.Meters : plane.Height(x, y);
    }

    private static (double X, double Y) ReferencePlace(BedSupports supports, int still) => still >= 0
        ? (supports.ScrewSpan[still].XMeters, supports.ScrewSpan[still].YMeters)
        : (supports.Axes.CentreX, supports.Axes.CentreY);

    /// <summary>cov(Δhᵢ, Δhⱼ): of height differences to the reference, or of heights alone when the target is stated.</summary>
    private static double[] Covariance(in PlaneSolution plane, BedSupports supports, int still, bool stated)
    {
        ReadOnlySpan<AdjustingScrew> screws = supports.ScrewSpan;
        (double x, double y) = ReferencePlace(supports, still);
        double[] covariance = new double[screws.Length * screws.Length];
        for (int i = 0; i < screws.Length; i++)
        {
            for (int j = 0; j < screws.Length; j++)
            {
                covariance[(i * screws.Length) + j] = stated
                    ? plane.HeightCovariance(screws[i].XMeters, screws[i].YMeters, screws[j].XMeters, screws[j].YMeters)
                    : Difference(plane, screws[i], screws[j], x, y);
            }
        }

        return covariance;
    }

    /// <summary>cov(h_ref − hᵢ, h_ref − hⱼ) = σ²(ΔuᵢΔuⱼ/Σwu² + ΔvᵢΔvⱼ/Σwv²): the mean height cancels, and with it its error.</summary>
    private static double Difference(in PlaneSolution plane, AdjustingScrew first, AdjustingScrew second, double x, double y)
    {
        (double u, double v) = plane.Axes.Local(x, y);
        (double u1, double v1) = plane.Axes.Local(first.XMeters, first.YMeters);
        (double u2, double v2) = plane.Axes.Local(second.XMeters, second.YMeters);
        return plane.UnitVariance
            * (((u1 - u) * (u2 - u) / plane.Axes.AlongMoment) + ((v1 - v) * (v2 - v) / plane.Axes.AcrossMoment));
    }
}
