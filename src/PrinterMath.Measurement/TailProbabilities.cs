namespace PrinterMath.Measurement;

/// <summary>Probabilities that the true value lies below the lower and above the upper limit. JCGM 106:2012, 7.4, equation (11).</summary>
internal readonly record struct TailProbabilities(double Below, double Above)
{
    internal double Within => Math.Clamp(1 - Below - Above, 0, 1);

    internal static TailProbabilities Of(double lower, double upper, double y, double u, double degreesOfFreedom)
    {
        if (u == 0)
        {
            return new TailProbabilities(y < lower ? 1 : 0, y > upper ? 1 : 0);
        }

        double below = double.IsInfinity(lower) ? 0 : StudentDistribution.Cumulative((lower - y) / u, degreesOfFreedom);
        double above = double.IsInfinity(upper) ? 0 : StudentDistribution.Cumulative((y - upper) / u, degreesOfFreedom);
        return new TailProbabilities(below, above);
    }
}
