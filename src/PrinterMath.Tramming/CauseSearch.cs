using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>
/// Nested linear models, one cause against none: F tests, Bonferroni over the places of a cause, Holm over the causes, each next cause given those found. Once the healthy machine is rejected, the cause of the
/// largest marginal likelihood is named (<see cref="CauseTrial.Evidence"/>, averaged over its places), of all that would be significant were they looked for alone. It is not decided where another explains it
/// away: it must still be significant (5 %) when the other is in the model.
/// Draper, Smith 1998, Applied Regression Analysis, 3rd ed., 6.2 (extra sum of squares); Holm 1979, Scand. J. Stat. 6, 65; Davidson, MacKinnon 1981, Econometrica 49, 781, for rivals (all from memory).
/// </summary>
internal static class CauseSearch
{
    private const double RiskBesideRival = 0.05;

    /// <summary>Share of single points in the risk of what is loose: the mean of two readings has heavier tails than an F test allows for.</summary>
    private const double ShareOfPoints = 0.2;

    internal static (SequenceDiagnosis[] Found, SequenceSystem System, ScrewPlay? Play) Run(SequenceReadings readings, TrammingSequenceOptions options)
    {
        List<double[]> accepted = [];
        HashSet<int> released = [];
        List<SequenceDiagnosis> found = [];
        ScrewPlay? play = ScrewPlay.Stated(readings, options)?.Refined(readings, new SequenceSystem(readings, options, released, accepted, null).Fit());
        CauseCandidate[] candidates = [.. CauseCandidates.All(readings).Where(candidate => play is null || candidate.Gap is null)];
        SequenceSystem system = new(readings, options, released, accepted, play);
        double freedom = readings.Noise.DegreesOfFreedom;
        while (candidates.Length > 0)
        {
            SequenceFit fit = system.Fit();
            CauseTrial[] trials = [.. candidates.Select(candidate => CauseTrial.Of(candidate, fit, freedom)).Where(trial => trial.Freedom > 0)];
            CauseTrial[][] groups = [.. trials.GroupBy(trial => trial.Candidate.Group).Select(group => group.ToArray())];
            double all = groups.Select(group => group.Min(trial => trial.Probability) * group.Length / Share(group, groups)).DefaultIfEmpty(1).Min();
            if (all > options.FamilyWiseRisk)
            {
                break;
            }

            CauseTrial[] likely =
            [
                .. groups.OrderByDescending(CauseTrial.Evidence).SelectMany(group => group
                    .Where(trial => trial.Probability * group.Length <= options.FamilyWiseRisk).OrderByDescending(trial => trial.LogLikelihood)),
            ];
            CauseTrial chosen = likely[0];
            SequenceCause first = chosen.Candidate.Cause;
            SequenceCause[] rivals =
            [
                .. likely.Where(rival => rival.Candidate.Cause != first && Explains(system, rival, chosen, freedom))
                    .Select(rival => rival.Candidate.Cause).Distinct().Order(),
            ];
            ScrewPlay? learned = first == SequenceCause.Backlash ? Learned(chosen.Candidate, readings, fit) : null;
            Measured<Length> effect = learned is null ? Effect(fit, chosen.Candidate, freedom, out string subject) : Gap(learned, readings, new SequenceSystem(readings, options, released, accepted, learned).Fit(), freedom, chosen.Candidate, out subject);
            found.Add(new SequenceDiagnosis(first, subject, chosen.Candidate.Pass, effect, all, rivals, SequenceFindings.Of(first, subject, chosen.Candidate.Pass, effect, all, rivals, readings)));
            play = learned is null ? play : learned with { Uncertainty = effect.SiStandardUncertainty };
            Accept(play is null || learned is null ? chosen.Candidate : chosen.Candidate with { Columns = [play.Slope(readings)] }, accepted, released);
            system = new SequenceSystem(readings, options, released, accepted, play);
            candidates = [.. candidates.Where(candidate => candidate.Cause != first && !rivals.Contains(candidate.Cause))];
        }

        return ([.. found], system, play);
    }

    /// <summary>Causes share alike, and corners with points what is loose.</summary>
    private static double Share(CauseTrial[] group, CauseTrial[][] groups)
    {
        CauseTrial[][] same = [.. groups.Where(other => other[0].Candidate.Cause == group[0].Candidate.Cause)];
        double part = same.Length == 1 ? 1 : group[0].Candidate.Screw < 0 ? ShareOfPoints : 1 - ShareOfPoints;
        return part / groups.Select(other => other[0].Candidate.Cause).Distinct().Count();
    }

    private static void Accept(CauseCandidate candidate, List<double[]> accepted, HashSet<int> released)
    {
        if (candidate.Cause != SequenceCause.Lead)
        {
            accepted.AddRange(candidate.Columns);
            return;
        }

        released.Add(candidate.Screw >= 0 ? candidate.Screw : SequenceSystem.AllScrews);
    }

    private static ScrewPlay Learned(CauseCandidate candidate, SequenceReadings readings, SequenceFit fit) =>
        ScrewPlay.Of(candidate.Gaps![0], candidate.Screw >= 0 ? [candidate.Screw] : [.. Enumerable.Range(0, readings.Screws.Length)]).Refined(readings, fit);

    private static Measured<Length> Gap(ScrewPlay play, SequenceReadings readings, SequenceFit beside, double freedom, CauseCandidate candidate, out string subject)
    {
        subject = candidate.Subject;
        bool known = beside.TryCoefficients([play.Slope(readings)], out _, out double[] u) && double.IsFinite(u[0]);
        return Measured<Length>.FromSi(play.Gap, known ? u[0] : play.Gap, freedom);
    }

    private static bool Explains(SequenceSystem system, CauseTrial rival, CauseTrial chosen, double freedom)
    {
        CauseGain beside = system.Fit(rival.Candidate.Columns).Gain(chosen.Candidate.Columns);
        return beside.Freedom == 0 || UpperTail.Probability(beside.Square, beside.Freedom, freedom) > RiskBesideRival;
    }

    /// <summary>The coefficient, of several the one farthest out.</summary>
    private static Measured<Length> Effect(SequenceFit fit, CauseCandidate candidate, double freedom, out string subject)
    {
        subject = candidate.Subject;
        double[][] columns = candidate.Columns;
        if (!fit.TryCoefficients(columns, out double[] value, out double[] uncertainty))
        {
            columns = [.. columns.Where((_, i) => fit.TryCoefficients([columns[i]], out double[] _, out double[] _)).Take(1)];
            fit.TryCoefficients(columns, out value, out uncertainty);
        }

        int largest = 0;
        for (int i = 1; i < value.Length; i++)
        {
            largest = Math.Abs(value[i]) * uncertainty[largest] > Math.Abs(value[largest]) * uncertainty[i] ? i : largest;
        }

        return Measured<Length>.FromSi(value[largest], uncertainty[largest], freedom);
    }
}
