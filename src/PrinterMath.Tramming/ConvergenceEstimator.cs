using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>
/// Squares of the heights at the screws about their mean, Σe², less what the probe's noise makes of them, tr C; var = 4eᵀCe + 2tr(C²). Mathai, Provost 1992, Quadratic Forms in Random
/// Variables, 3.2 (from memory).
/// </summary>
internal static class ConvergenceEstimator
{
    internal readonly record struct Tilt(double Square, double Variance);

    internal static Tilt Of(BedSupports supports, in PlaneSolution plane)
    {
        ReadOnlySpan<AdjustingScrew> screws = supports.ScrewSpan;
        int n = screws.Length;
        (double u0, double v0) = plane.Axes.Local(supports.Axes.CentreX, supports.Axes.CentreY);
        double[] e = new double[n];
        double[] u = new double[n];
        double[] v = new double[n];
        for (int i = 0; i < n; i++)
        {
            (u[i], v[i]) = plane.Axes.Local(screws[i].XMeters, screws[i].YMeters);
            u[i] -= u0;
            v[i] -= v0;
            e[i] = (plane.SlopeAlong * u[i]) + (plane.SlopeAcross * v[i]);
        }

        double square = 0, trace = 0, along = 0, squares = 0;
        for (int i = 0; i < n; i++)
        {
            square += e[i] * e[i];
            for (int j = 0; j < n; j++)
            {
                double c = plane.UnitVariance * ((u[i] * u[j] / plane.Axes.AlongMoment) + (v[i] * v[j] / plane.Axes.AcrossMoment));
                trace += i == j ? c : 0;
                along += e[i] * c * e[j];
                squares += c * c;
            }
        }

        return new Tilt(square - trace, Math.Max((4 * along) - (2 * squares), 2 * squares));
    }

    /// <summary>κ = √(ΣN/ΣD), first order; where N cannot be told from none, u is widened until the 95 % interval holds zero.</summary>
    internal static Measured<double>? Factor(IReadOnlyList<Tilt> tilts, double freedom)
    {
        double after = 0, before = 0, afterVariance = 0, beforeVariance = 0;
        for (int p = 0; p + 1 < tilts.Count; p++)
        {
            if (tilts[p].Square > 3 * Math.Sqrt(tilts[p].Variance))
            {
                before += tilts[p].Square;
                after += tilts[p + 1].Square;
                beforeVariance += tilts[p].Variance;
                afterVariance += tilts[p + 1].Variance;
            }
        }

        if (before <= 0)
        {
            return null;
        }

        double factor = Math.Sqrt(Math.Max(0, after) / before);
        double spread = Math.Sqrt(afterVariance);
        if (after > 2 * spread)
        {
            double u = factor / 2 * Math.Sqrt((afterVariance / (after * after)) + (beforeVariance / (before * before)));
            return Measured<double>.FromSi(factor, u, freedom);
        }

        return Measured<double>.FromSi(factor, Math.Sqrt((Math.Max(0, after) + (2 * spread)) / before) / 2, freedom);
    }
}
