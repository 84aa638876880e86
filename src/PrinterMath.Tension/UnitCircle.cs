namespace PrinterMath.Tension;

/// <summary>Points of the unit circle at equal steps, by one complex product each of a coarse and a fine step.</summary>
internal static class UnitCircle
{
    private const int Fine = 64;

    /// <summary>cos and sin of 2πk/n for k below n/2; n a power of two, 16 or more. One quarter is computed, the rest mirrored.</summary>
    internal static void Fill(int n, Span<double> cosine, Span<double> sine)
    {
        int half = n / 2, quarter = n / 4, fine = Math.Min(Fine, quarter);
        for (int k = 0; k < fine; k++)
        {
            (sine[k], cosine[k]) = Math.SinCos(2 * Math.PI * k / n);
        }

        for (int coarse = fine; coarse < quarter; coarse += fine)
        {
            (double s, double c) = Math.SinCos(2 * Math.PI * coarse / n);
            Turn(cosine[..fine], sine[..fine], c, s, cosine.Slice(coarse, fine), sine.Slice(coarse, fine));
        }

        (cosine[quarter], sine[quarter]) = (0, 1);
        for (int k = 1; k < quarter; k++)
        {
            (cosine[half - k], sine[half - k]) = (-cosine[k], sine[k]);
        }
    }

    /// <summary>Every <paramref name="stride"/>-th point of a circle.</summary>
    internal static void Pick(int count, int stride, ReadOnlySpan<double> cosine, ReadOnlySpan<double> sine, Span<double> toCosine, Span<double> toSine)
    {
        for (int k = 0; k < count; k++)
        {
            toCosine[k] = cosine[k * stride];
            toSine[k] = sine[k * stride];
        }
    }

    private static void Turn(ReadOnlySpan<double> fineC, ReadOnlySpan<double> fineS, double c, double s, Span<double> cosine, Span<double> sine)
    {
        for (int k = 0; k < cosine.Length; k++)
        {
            cosine[k] = (fineC[k] * c) - (fineS[k] * s);
            sine[k] = (fineS[k] * c) + (fineC[k] * s);
        }
    }
}
