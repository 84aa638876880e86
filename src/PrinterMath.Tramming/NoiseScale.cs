namespace PrinterMath.Tramming;

/// <summary>What the residuals and the stated uncertainties say together about the variance of unit weight.</summary>
internal readonly record struct NoiseScale(bool IsKnown, bool IsMisfit, double UnitVariance, double DegreesOfFreedom)
{
    /// <summary>Upper 1 % point of the standard normal distribution.</summary>
    private const double NormalQuantile99 = 2.3263478740408408;

    /// <summary>Residuals below this fraction of the largest height are rounding of the arithmetic.</summary>
    private const double Rounding = 1e-13;

    internal static NoiseScale Of(bool stated, bool widen, double weightedSquares, int degreesOfFreedom, double largestHeight)
    {
        double variance = degreesOfFreedom > 0 ? weightedSquares / degreesOfFreedom : 0;
        if (!stated)
        {
            double rounding = Rounding * largestHeight;
            return new NoiseScale(degreesOfFreedom > 0 && variance > rounding * rounding, false, variance, degreesOfFreedom);
        }

        bool misfit = degreesOfFreedom > 0 && variance > ReducedChiSquare99(degreesOfFreedom);
        return misfit && widen
            ? new NoiseScale(true, true, variance, degreesOfFreedom)
            : new NoiseScale(true, misfit, 1, double.PositiveInfinity);
    }

    /// <summary>Upper 1 % point of χ²/ν. Wilson, Hilferty 1931, PNAS 17, 684 (from memory).</summary>
    private static double ReducedChiSquare99(int degreesOfFreedom)
    {
        double spread = 2 / (9.0 * degreesOfFreedom);
        double root = 1 - spread + (NormalQuantile99 * Math.Sqrt(spread));
        return root * root * root;
    }
}
