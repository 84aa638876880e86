namespace PrinterMath.Measurement;

/// <summary>Degrees of freedom of a combined standard uncertainty.</summary>
public static class EffectiveDegreesOfFreedom
{
    /// <summary>
    /// Welch-Satterthwaite: ν_eff = (Σuᵢ²)² / Σ(uᵢ⁴/νᵢ), for components that are independent of each other.
    /// </summary>
    /// <param name="contributions">Standard uncertainty components uᵢ of the result, zero or more, all in one unit.</param>
    /// <param name="degreesOfFreedom">νᵢ of each, 1 or more, or infinite.</param>
    /// <returns>ν_eff, at least the smallest νᵢ; infinite when no component with finite ν contributes.</returns>
    /// <remarks>
    /// Not for correlated components: <see cref="Propagation"/> first joins those into one.
    /// Source: JCGM 100:2008 (GUM), G.4.1, equation (G.2b).
    /// </remarks>
    /// <exception cref="ArgumentException">The lists differ in length or are empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double WelchSatterthwaite(ReadOnlySpan<double> contributions, ReadOnlySpan<double> degreesOfFreedom)
    {
        if (contributions.Length != degreesOfFreedom.Length || contributions.IsEmpty)
        {
            throw new ArgumentException(
                $"There are {contributions.Length} contributions and {degreesOfFreedom.Length} degrees of freedom; both lists need the same length, at least 1.",
                nameof(contributions));
        }

        double largest = 0;
        for (int i = 0; i < contributions.Length; i++)
        {
            largest = Math.Max(largest, Guard.NonNegative(contributions[i], nameof(contributions)));
            Guard.DegreesOfFreedom(degreesOfFreedom[i], nameof(degreesOfFreedom));
        }

        if (largest == 0)
        {
            return double.PositiveInfinity;
        }

        double sum = 0, weighted = 0;
        for (int i = 0; i < contributions.Length; i++)
        {
            double square = contributions[i] / largest * (contributions[i] / largest);
            sum += square;
            weighted += square * square / degreesOfFreedom[i];
        }

        return weighted > 0 ? Math.Max(1, sum * sum / weighted) : double.PositiveInfinity;
    }
}
