using PrinterMath.Measurement;

namespace PrinterMath.Tramming;

/// <summary>Residuals of a plane with leverage, standardised value and outlier test.</summary>
internal static class ResidualTable
{
    /// <summary>1 − h below this is rounding: the plane passes through the point whatever its height.</summary>
    private const double FullLeverage = 1e-9;

    /// <summary>A Bonferroni limit over four points or more lies above this, so smaller values need no distribution.</summary>
    private const double NeverAnOutlier = 2.49;

    internal static double Fill(PlaneResidual[] table, ReadOnlySpan<ProbePoint> points, ReadOnlySpan<Place> places, in PlaneSolution plane)
    {
        double squares = 0;
        for (int i = 0; i < table.Length; i++)
        {
            double residual = points[i].ZMeters - plane.Height(places[i].X, places[i].Y);
            double leverage = Math.Min(1, places[i].Weight * plane.Axes.Influence(places[i].X, places[i].Y, places[i].X, places[i].Y));
            squares += places[i].Weight * residual * residual;
            table[i] = new PlaneResidual(i, residual, leverage, null, false);
        }

        return squares;
    }

    /// <summary>
    /// Standardises the residuals and names the outliers: with a variance from the residuals by the externally studentised residual
    /// t = r√((ν − 1)/(ν − r²)), with a known one by the normal distribution; each at 5 %/n.
    /// </summary>
    internal static int Standardise(PlaneResidual[] table, ReadOnlySpan<Place> places, NoiseScale noise)
    {
        int outliers = 0;
        double sigma = Math.Sqrt(noise.UnitVariance);
        for (int i = 0; i < table.Length; i++)
        {
            double free = 1 - table[i].Leverage;
            if (free < FullLeverage)
            {
                continue;
            }

            double standardised = table[i].SiValue * Math.Sqrt(places[i].Weight) / (sigma * Math.Sqrt(free));
            bool outlier = IsOutlier(standardised, noise.DegreesOfFreedom, table.Length);
            outliers += outlier ? 1 : 0;
            table[i] = table[i] with { Standardised = standardised, IsOutlier = outlier };
        }

        return outliers;
    }

    private static bool IsOutlier(double standardised, double degreesOfFreedom, int count)
    {
        double limit = TwoSidedTest.Risk / count;
        if (double.IsPositiveInfinity(degreesOfFreedom))
        {
            return Math.Abs(standardised) > NeverAnOutlier && TwoSidedTest.ProbabilityBeyond(standardised, degreesOfFreedom) < limit;
        }

        double left = degreesOfFreedom - (standardised * standardised);
        if (degreesOfFreedom < 2)
        {
            return false;
        }

        double t = left > 0 ? Math.Abs(standardised) * Math.Sqrt((degreesOfFreedom - 1) / left) : double.MaxValue;
        return t > NeverAnOutlier && TwoSidedTest.ProbabilityBeyond(t, degreesOfFreedom - 1) < limit;
    }
}
