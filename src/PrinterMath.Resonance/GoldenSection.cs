namespace PrinterMath.Resonance;

/// <summary>Largest value of a function that has one maximum between two points, by golden sections.</summary>
internal static class GoldenSection
{
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    internal static (double At, double Value) Maximum(Func<double, double> function, double low, double high, int steps)
    {
        double a = high - (Golden * (high - low)), b = low + (Golden * (high - low));
        double atA = function(a), atB = function(b);
        for (int i = 0; i < steps; i++)
        {
            if (atA > atB)
            {
                (high, b, atB) = (b, a, atA);
                a = high - (Golden * (high - low));
                atA = function(a);
            }
            else
            {
                (low, a, atA) = (a, b, atB);
                b = low + (Golden * (high - low));
                atB = function(b);
            }
        }

        return atA > atB ? (a, atA) : (b, atB);
    }
}
