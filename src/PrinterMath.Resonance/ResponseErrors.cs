namespace PrinterMath.Resonance;

/// <summary>What each value of a response is worth: the standard deviation of its real and of its imaginary part, if known, else one weight for all.</summary>
/// <remarks>
/// Variance of either part |H|²·(1 − γ²)/(2γ²n). Its factor |H|²·(1 − γ²)/γ², noise over input, is averaged over neighbouring lines, which it changes little over, and multiplied by n/(n − 1), since
/// the estimated coherence takes up one part of noise in n. Source: J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, table 9.6 (from memory).
/// </remarks>
internal sealed class ResponseErrors
{
    private const int Reach = 6;

    /// <summary>Share of the largest value below which a difference is rounding.</summary>
    internal const double Rounding = 1e-11;

    private ResponseErrors(double[] deviations, bool known, double[] correlation)
    {
        Deviations = deviations;
        Known = known;
        Correlation = correlation;
    }

    /// <summary>Infinite where a value says nothing.</summary>
    internal double[] Deviations { get; }

    /// <summary>Whether <see cref="Deviations"/> are standard deviations; else they are equal and only their ratio counts.</summary>
    internal bool Known { get; }

    /// <summary>Correlation of the real parts, and of the imaginary parts, of values 0, 1, 2 ... lines apart.</summary>
    internal double[] Correlation { get; }

    /// <summary>1 + 2·Σ correlation: how much less many lines tell than if they were independent.</summary>
    internal double Inflation => 1 + (2 * Correlation.Skip(1).Sum());

    internal static ResponseErrors Of(ResponseLines lines)
    {
        int count = lines.Values.Length;
        if (lines.Averages is not { } averages)
        {
            double scale = Math.Sqrt(lines.Values.Sum(value => (value.Real * value.Real) + (value.Imaginary * value.Imaginary)) / count);
            return new ResponseErrors([.. Enumerable.Repeat(scale > 0 ? scale : 1, count)], false, [1]);
        }

        double[] noise = [.. lines.Values.Zip(lines.Coherences, (value, coherence) =>
            coherence > 0 ? Math.Pow(value.Magnitude, 2) * (1 - coherence) / (lines.Estimator == ResponseEstimator.Hv ? 1 : coherence) : double.NaN)];
        double[] deviations = new double[count];
        double least = Rounding * lines.Values.Max(value => value.Magnitude);
        for (int i = 0; i < count; i++)
        {
            double[] around = [.. noise[Math.Max(0, i - Reach)..Math.Min(count, i + Reach + 1)].Where(double.IsFinite)];
            deviations[i] = double.IsNaN(noise[i]) || around.Length == 0
                ? double.PositiveInfinity
                : Math.Max(Math.Sqrt(around.Average() / (2 * (averages - 1))), least);
        }

        return new ResponseErrors(deviations, true, lines.Source?.Segments.LineCorrelations() ?? [1]);
    }
}
