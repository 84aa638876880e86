namespace PrinterMath.Measurement;

/// <summary>cos and sin of 2πk/n, from angles of at most π/4, so that all are good to a rounding or two.</summary>
internal static class UnitRoots
{
    private const int Fine = 64;

    internal static (double Cosine, double Sine) At(long k, long n)
    {
        long eighths = 8 * (k % n);
        long octant = eighths / n;
        double angle = (octant % 2 == 0 ? eighths - (octant * n) : ((octant + 1) * n) - eighths) * (Math.PI / 4) / n;
        (double s, double c) = Math.SinCos(angle);
        return octant switch
        {
            0 => (c, s),
            1 => (s, c),
            2 => (-s, c),
            3 => (-c, s),
            4 => (-c, -s),
            5 => (-s, -c),
            6 => (s, -c),
            _ => (c, -s),
        };
    }

    /// <summary>cos and sin of 2π·step·k/n for k = 0, 1, … as many as the spans hold: each the product of a coarse and a fine root.</summary>
    internal static void Fill(long step, long n, Span<double> cosine, Span<double> sine)
    {
        int fine = Math.Min(Fine, cosine.Length);
        for (int k = 0; k < fine; k++)
        {
            (cosine[k], sine[k]) = At(step * k, n);
        }

        for (int coarse = fine; coarse < cosine.Length; coarse += fine)
        {
            (double c, double s) = At(step * coarse, n);
            for (int k = 0; k < Math.Min(fine, cosine.Length - coarse); k++)
            {
                cosine[coarse + k] = (cosine[k] * c) - (sine[k] * s);
                sine[coarse + k] = (sine[k] * c) + (cosine[k] * s);
            }
        }
    }
}
