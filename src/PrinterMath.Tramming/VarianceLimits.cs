using MathNet.Numerics.Distributions;

namespace PrinterMath.Tramming;

/// <summary>
/// Limits of a sum of mean squares with factors of either sign, by the modified large-sample method: exact when one mean square tends to dominate.
/// Graybill, Wang 1980, JASA 75, 869; Ting et al. 1990, Journal of Statistical Computation and Simulation 35, 135; Burdick, Borror, Montgomery 2005, Design and Analysis of Gauge R&amp;R Studies (all from memory).
/// </summary>
internal static class VarianceLimits
{
    private const double Tail = 0.025;

    internal static (double Lower, double Upper) Of(params ReadOnlySpan<MeanSquare> terms)
    {
        double value = 0, below = 0, above = 0;
        foreach (MeanSquare term in terms)
        {
            double part = term.Factor * term.Value;
            value += part;
            double g = 1 - (term.DegreesOfFreedom / ChiSquared.InvCDF(term.DegreesOfFreedom, 1 - Tail));
            double h = (term.DegreesOfFreedom / ChiSquared.InvCDF(term.DegreesOfFreedom, Tail)) - 1;
            below += part > 0 ? g * g * part * part : h * h * part * part;
            above += part > 0 ? h * h * part * part : g * g * part * part;
        }

        foreach (MeanSquare plus in terms)
        {
            foreach (MeanSquare minus in terms)
            {
                if (plus.Factor > 0 && minus.Factor < 0)
                {
                    double product = plus.Factor * plus.Value * -minus.Factor * minus.Value;
                    below += Cross(plus.DegreesOfFreedom, minus.DegreesOfFreedom, 1 - Tail, true) * product;
                    above += Cross(plus.DegreesOfFreedom, minus.DegreesOfFreedom, Tail, false) * product;
                }
            }
        }

        return (Math.Max(0, value - Math.Sqrt(Math.Max(0, below))), Math.Max(0, value + Math.Sqrt(Math.Max(0, above))));
    }

    private static double Cross(double one, double other, double probability, bool lower)
    {
        double f = FisherSnedecor.InvCDF(one, other, probability);
        double g = 1 - (one / ChiSquared.InvCDF(one, 1 - Tail));
        double h = (other / ChiSquared.InvCDF(other, Tail)) - 1;
        if (lower)
        {
            return (((f - 1) * (f - 1)) - (g * g * f * f) - (h * h)) / f;
        }

        double high = (one / ChiSquared.InvCDF(one, Tail)) - 1;
        double low = 1 - (other / ChiSquared.InvCDF(other, 1 - Tail));
        return (((1 - f) * (1 - f)) - (high * high * f * f) - (low * low)) / f;
    }
}
