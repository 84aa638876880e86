namespace PrinterMath.Measurement;

/// <summary>cos and sin of 2πk/n, each from an angle of at most π/4, so that all are good to about one rounding.</summary>
internal static class UnitRoots
{
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

    /// <summary>cos and sin of 2π·step·k/n for k = 0, 1, … as many as the spans hold.</summary>
    internal static void Fill(long step, long n, Span<double> cosine, Span<double> sine)
    {
        for (int k = 0; k < cosine.Length; k++)
        {
            (cosine[k], sine[k]) = At(step * k, n);
        }
    }
}
