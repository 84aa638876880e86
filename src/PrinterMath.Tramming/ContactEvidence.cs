using MathNet.Numerics.Distributions;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>What a set of trials says: an interval, a curve, or why neither.</summary>
internal readonly record struct ContactEvidence(Measured<Length> Contact, LogisticSolution? Curve, Finding[] Findings)
{
    private const double Risk = 0.05;

    internal static ContactEvidence Weigh(ContactTrial[] trials)
    {
        ContactExtremes e = ContactExtremes.Of(trials);
        if (e.HighestTouching <= e.LowestClear)
        {
            return Separated(trials, e);
        }

        if (e.LowestTouching >= e.HighestClear)
        {
            return None(ContactFindings.Reversed());
        }

        LogisticSolution curve = LogisticFit.Of(trials);
        double without = Constant(trials);
        double chance = 1 - ChiSquared.CDF(1, Math.Max(0, 2 * (curve.LogLikelihood - without)));
        if (!(chance < Risk))
        {
            return None(ContactFindings.Unclear(chance, trials.Length));
        }

        if (!(curve.Spread > 0))
        {
            return None(ContactFindings.Reversed());
        }

        List<int> contradicting = Contradicting(trials, curve);
        return new ContactEvidence(
            Measured<Length>.FromSi(curve.Middle, Math.Sqrt(curve.MiddleVariance), curve.DegreesOfFreedom),
            curve,
            contradicting.Count > 0 ? [ContactFindings.Outlier(contradicting, trials)] : []);
    }

    /// <summary>Answers that change sides once; a height where both were seen belongs to neither side.</summary>
    private static ContactEvidence Separated(ContactTrial[] trials, ContactExtremes e)
    {
        double touching = double.NegativeInfinity, clear = double.PositiveInfinity;
        foreach (ContactTrial trial in trials)
        {
            double h = trial.HeightMeters;
            touching = trial.Touches && h < e.LowestClear ? Math.Max(touching, h) : touching;
            clear = !trial.Touches && h > e.HighestTouching ? Math.Min(clear, h) : clear;
        }

        if (double.IsInfinity(touching) || double.IsInfinity(clear))
        {
            return None(ContactFindings.OneSided(double.IsInfinity(clear), trials.Length));
        }

        return new ContactEvidence(
            Measured.FromRange(Length.FromMeters(touching), Length.FromMeters(clear)), null, [ContactFindings.Separable(clear, touching)]);
    }

    /// <summary>Log-likelihood when height makes no difference.</summary>
    private static double Constant(ContactTrial[] trials)
    {
        int touching = trials.Count(trial => trial.Touches);
        double p = (double)touching / trials.Length;
        return (touching * Math.Log(p)) + ((trials.Length - touching) * Math.Log(1 - p));
    }

    /// <summary>
    /// Trials on the wrong side of the middle whose removal raises the likelihood more than chance does, by the likelihood ratio at 5 % shared among all trials.
    /// Cook, Weisberg 1982, Residuals and Influence in Regression, for the model of one shifted case (from memory).
    /// </summary>
    private static List<int> Contradicting(ContactTrial[] trials, LogisticSolution curve)
    {
        double limit = ChiSquared.InvCDF(1, 1 - (Risk / trials.Length));
        var found = new List<int>();
        for (int i = 0; i < trials.Length; i++)
        {
            bool wrong = trials[i].Touches == trials[i].HeightMeters > curve.Middle;
            if (wrong && 2 * (Without(trials, i) - curve.LogLikelihood) > limit)
            {
                found.Add(i);
            }
        }

        return found;
    }

    private static double Without(ContactTrial[] trials, int i)
    {
        ContactTrial[] others = [.. trials.Where((_, k) => k != i)];
        ContactExtremes e = ContactExtremes.Of(others);
        return e.HighestTouching < e.LowestClear ? 0 : LogisticFit.Of(trials, i).LogLikelihood;
    }

    private static ContactEvidence None(Finding why) => new(default, null, [why]);
}
