using MathNet.Numerics;

namespace PrinterMath.Tramming;

/// <summary>
/// A cause tried: its p-value, and its marginal likelihood ln L + ln u by Laplace's approximation, where each length of an effect is as likely beforehand as any other and for each cause alike. u is that of the largest
/// move the cause makes, so that leads, steps, gaps and drifts are compared in one unit; without it a step, which a few readings fix better than a drift, would be named too often. With q numbers ln L is that of
/// one number that is as improbable, ln L − ½(q − 1)·ln ln L + ln Γ(q/2) − ln Γ(1/2), the leading terms of both tails.
/// Kass, Raftery 1995, J. Am. Stat. Assoc. 90, 773, 4.1 (Laplace); Abramowitz, Stegun 1964, 6.5.32 (tail) (both from memory).
/// </summary>
internal sealed record CauseTrial(CauseCandidate Candidate, double Square, int Freedom, double Probability, double LogLikelihood)
{
    internal static CauseTrial Of(CauseCandidate candidate, SequenceFit fit, double freedom)
    {
        (CauseGain gain, CauseCandidate best) = candidate.Try(fit);
        return gain.Freedom == 0 || gain.Square <= 0
            ? new CauseTrial(best, 0, gain.Freedom, 1, double.NegativeInfinity)
            : new CauseTrial(best, gain.Square, gain.Freedom, UpperTail.Probability(gain.Square, gain.Freedom, freedom), OfOne(Ratio(gain, fit), gain.Freedom) + gain.LogUncertainty + Math.Log(best.Reach));
    }

    /// <summary>Of all places of a cause together, each as likely beforehand.</summary>
    internal static double Evidence(CauseTrial[] places)
    {
        double largest = places.Max(trial => trial.LogLikelihood);
        return double.IsNegativeInfinity(largest) ? largest : largest + Math.Log(places.Average(trial => Math.Exp(trial.LogLikelihood - largest)));
    }

    /// <summary>Logarithm of the likelihood ratio: half the fall of the squares, or, for a noise that the same readings tell, n/2 times that of the logarithm of the squares.</summary>
    private static double Ratio(CauseGain gain, SequenceFit fit)
    {
        (double square, int readings) = fit.Left;
        return readings == 0 ? gain.Square / 2 : -readings / 2.0 * Math.Log(Math.Max(1e-300, 1 - (gain.Square / square)));
    }

    private static double OfOne(double logarithm, int freedom) => freedom == 1 || logarithm <= 1
        ? logarithm
        : logarithm - ((freedom - 1) / 2.0 * Math.Log(logarithm)) + SpecialFunctions.GammaLn(freedom / 2.0) - SpecialFunctions.GammaLn(0.5);
}
