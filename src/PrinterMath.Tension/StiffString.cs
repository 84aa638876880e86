namespace PrinterMath.Tension;

/// <summary>Partials of a stiff string: f_n = n·f0·√(1 + B·n²), in Hz.</summary>
internal readonly record struct StiffString(double F0, double B)
{
    internal double Partial(int n) => n * F0 * Math.Sqrt(1 + (B * n * n));
}
