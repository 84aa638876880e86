namespace PrinterMath.Tension;

/// <summary>A span whose ends lie between pinned (fixity 0) and clamped (1).</summary>
internal static class SpanModel
{
    /// <summary>f = f_pinned + e·(f_clamped − f_pinned).</summary>
    internal static double Hertz(double tension, double length, double density, double rigidity, double fixity, int n)
    {
        double stiffness = Math.Max(0, rigidity);
        double pinned = PinnedSpan.Hertz(tension, length, density, stiffness, n);
        return fixity == 0 ? pinned : pinned + (fixity * (ClampedSpan.Hertz(tension, length, density, stiffness, n) - pinned));
    }

    /// <summary>T = T_pinned + e·(T_clamped − T_pinned), which agrees with <see cref="Hertz"/> to first order in the small difference.</summary>
    internal static double Newtons(double frequency, double length, double density, double rigidity, double fixity, int n)
    {
        double stiffness = Math.Max(0, rigidity);
        double pinned = PinnedSpan.Newtons(frequency, length, density, stiffness, n);
        return fixity == 0 ? pinned : pinned + (fixity * (ClampedSpan.Newtons(frequency, length, density, stiffness, n) - pinned));
    }
}
