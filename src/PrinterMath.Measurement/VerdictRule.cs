namespace PrinterMath.Measurement;

/// <summary>The decision rule: JCGM 106:2012 guarded acceptance and guarded rejection at a specific risk.</summary>
internal static class VerdictRule
{
    internal static Verdict<T> Decide<T>(Tolerance<T> tolerance, Measured<T> measured, IReadOnlyList<BudgetLine>? lines, double risk)
        where T : struct
    {
        double y = measured.SiValue;
        double u = measured.SiStandardUncertainty;
        double degreesOfFreedom = measured.DegreesOfFreedom;
        TailProbabilities tails = TailProbabilities.Of(tolerance.LowerSi, tolerance.UpperSi, y, u, degreesOfFreedom);
        Conclusion conclusion = Conclude(tails, risk);
        Limitation? limitation = conclusion == Conclusion.Undecided
            ? LimitationSearch.Find(tolerance.LowerSi, tolerance.UpperSi, y, u, degreesOfFreedom, risk, Measured<T>.UcumUnit, lines)
            : null;
        double guardBand = u == 0 ? 0 : StudentDistribution.Quantile(1 - risk, degreesOfFreedom) * u;
        return new Verdict<T>(conclusion, tails.Within, risk, guardBand, tolerance, measured, limitation);
    }

    /// <summary>Outside needs one limit to be passed with confidence: a window that is merely narrow against the uncertainty proves nothing.</summary>
    internal static Conclusion Conclude(TailProbabilities tails, double risk)
    {
        if (tails.Below + tails.Above <= risk)
        {
            return Conclusion.Within;
        }

        return Math.Max(tails.Below, tails.Above) >= 1 - risk ? Conclusion.Outside : Conclusion.Undecided;
    }
}
