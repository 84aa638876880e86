namespace PrinterMath.Tension;

/// <summary>A taper that rises fast and falls slowly, as a pluck does: w = 16·g²·(1 − g)² with g = (1 − e^(−βt/T))/(1 − e^(−β)).</summary>
/// <remarks>
/// Value and slope vanish at both ends, so that tails fall by 18 dB per octave as those of a Hann taper do. Of a partial that dies by 30 dB within the window it
/// loses 2.7 dB against the matched filter, of one that dies three times as fast 10 dB; a Hann taper, which sleeps through the loud beginning, loses 6.7 and 20 dB.
/// </remarks>
internal static class PluckTaper
{
    /// <summary>Equivalent noise bandwidth in units of 1/T.</summary>
    internal const double NoiseBandwidth = 1.75;

    private const double Asymmetry = 2.5;

    /// <summary>Tapered samples less their mean.</summary>
    internal static void Apply(ReadOnlySpan<double> samples, Span<double> tapered)
    {
        double mean = 0;
        foreach (double sample in samples)
        {
            mean += sample;
        }

        mean /= samples.Length;
        double fall = Math.Exp(-Asymmetry / samples.Length), left = Math.Sqrt(fall), whole = 1 - Math.Exp(-Asymmetry);
        for (int i = 0; i < samples.Length; i++)
        {
            double g = (1 - left) / whole, w = 4 * g * (1 - g);
            w *= w;
            tapered[i] = (samples[i] - mean) * w;
            left *= fall;
        }
    }
}
