using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Planes, causes, response and next turns of a sequence, in this order.</summary>
internal static class SequenceEstimator
{
    private static readonly Length OnlyForGeometry = Length.FromMicrometers(1);

    internal static TrammingSequence Estimate(BedSupports supports, TrammingPass[] passes, TrammingSequenceOptions options)
    {
        foreach (TrammingPass pass in passes)
        {
            if (PlaneFit.Fit(pass.Points, new PlaneFitOptions { ProbeRepeatability = OnlyForGeometry }).Blocking is Finding collinear)
            {
                return new TrammingSequence(supports, passes, collinear);
            }
        }

        SequenceReadings readings = new(supports, passes, options);
        if (!readings.Noise.IsKnown)
        {
            return new TrammingSequence(supports, passes, SequenceFindings.UncertaintyUnknown(readings.Count));
        }

        PlaneFit[] planes = [.. passes.Select(pass => PlaneOf(pass, readings, options))];
        (SequenceDiagnosis[] diagnoses, SequenceSystem system, ScrewPlay? play) = CauseSearch.Run(readings, options);
        LearnedResponse learned = system.Learn();
        double freedom = readings.Noise.DegreesOfFreedom;
        TrammingPlan plan = supports.Plan(planes[^1], options.Next);
        var next = NextTurns.Of(supports, plan, learned, options, freedom, (screw, sense) => play?.Room(readings, screw, sense) ?? (0, 0));
        Measured<double>? factor = ConvergenceEstimator.Factor([.. planes.Select(plane => ConvergenceEstimator.Of(supports, plane.Solution))], freedom);
        return new TrammingSequence(
            supports, passes, plan, next, learned, Responses(supports, learned, options, freedom), diagnoses, factor, freedom, Notices(readings, passes, next, diagnoses, planes[^1]));
    }

    private static PlaneFit PlaneOf(TrammingPass pass, SequenceReadings readings, TrammingSequenceOptions options)
    {
        IReadOnlyList<ProbePoint> points = readings.IsStated ? pass.Points : [.. pass.Points.Select(p => ProbePoint.FromMeters(p.XMeters, p.YMeters, p.ZMeters))];
        double scale = Math.Sqrt(readings.Noise.UnitVariance);
        Length? repeatability = readings.IsStated ? options.ProbeRepeatability : Length.FromMeters(scale);
        PlaneFit fit = PlaneFit.Fit(points, new PlaneFitOptions { ProbeRepeatability = repeatability, WidenForMisfit = false });
        double variance = readings.IsStated ? readings.Noise.UnitVariance : 1;
        PlaneSolution solution = fit.Solution with { UnitVariance = variance, DegreesOfFreedom = readings.Noise.DegreesOfFreedom };
        return new PlaneFit([.. fit.PointSpan], [.. fit.Places], [.. fit.ResidualSpan], solution, fit.Noise, [.. fit.Findings]);
    }

    private static ScrewResponse[] Responses(BedSupports supports, LearnedResponse learned, TrammingSequenceOptions options, double freedom)
    {
        AdjustingScrew[] screws = supports.ScrewSpan.ToArray();
        int n = screws.Length;
        string[] names = [.. screws.Select(screw => screw.Name)];
        return
        [
            .. screws.Select((screw, of) => new ScrewResponse(
                screw,
                names,
                [.. Enumerable.Range(0, n).Select(at => Measured<Length>.FromSi(learned.Mean[(at * n) + of], Math.Sqrt(Math.Max(0, learned.Variance(at, of))), freedom))],
                SequenceSystem.Sigma(screw, true, options))),
        ];
    }

    private static Finding[] Notices(SequenceReadings readings, TrammingPass[] passes, NextTurns next, SequenceDiagnosis[] diagnoses, PlaneFit last)
    {
        bool turned = readings.Moves.Any(moves => moves.Any(move => move != 0));
        PlaneSolution plane = last.Solution;
        bool level = !TiltSpread.IsTilted(plane.SlopeX, plane.SlopeY, plane.SlopeCovariance, plane.DegreesOfFreedom);
        Finding?[] all =
        [
            next.Blocking,
            .. diagnoses.Select(diagnosis => diagnosis.Finding),
            readings.Noise.IsMisfit ? SequenceFindings.Misfit(Math.Sqrt(readings.Noise.UnitVariance)) : null,
            passes.Length == 1 ? SequenceFindings.One() : turned ? null : SequenceFindings.NotTurned(),
            passes.Length > 1 && !readings.HasTimes ? SequenceFindings.NoTimes(passes.Any(pass => pass.HasTimes)) : null,
            passes.Length > 1 && !readings.PlacesAreShared ? SequenceFindings.PlacesDiffer() : null,
            level ? SequenceFindings.WithinNoise() : null,
        ];
        return [.. all.OfType<Finding>()];
    }
}
