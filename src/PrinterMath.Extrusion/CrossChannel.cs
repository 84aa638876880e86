using MathNet.Numerics.Integration;

namespace PrinterMath.Extrusion;

/// <summary>Flow of a Cross melt through a round channel in reduced rates x = η₀·γ̇/τ*: from the apparent rate G to the rate x at the wall.</summary>
/// <remarks>
/// By parts, G(x) = (4/3)·x·(1 − I), I = ∫₀¹ (τ(u·x)/τ(x))³ du. With u = e⁻ˢ the integrand e⁻⁴ˢ·[(1 + X)/(1 + X·e⁻ᵐˢ)]³, X = xᵐ, m = 1 − n, is smooth (its poles lie π/m off the
/// real axis), so that a few Gauss points give rounding. d ln G/d ln x = n'·(4x/G − 3) with the local exponent n' = 1 − m·X/(1 + X): Newton needs no second integral.
/// x lies between G and G·(3n + 1)/(4n), since n ≤ n' ≤ 1.
/// </remarks>
internal static class CrossChannel
{
    private const int Points = 16;
    private static readonly double[] Panels = [0, 2.5, 5, 9.5];
    private static readonly (double Place, double Weight)[] Nodes = MakeNodes();

    internal static double WallRate(double apparent, double exponent)
    {
        double m = 1 - exponent, local = Local(apparent, m);
        double low = apparent, high = apparent * ((3 * exponent) + 1) / (4 * exponent);
        double x = Math.Clamp(apparent * ((3 * local) + 1) / (4 * local), low, high);
        for (int i = 0; i < 60; i++)
        {
            double g = Apparent(x, m);
            (low, high) = g < apparent ? (x, high) : (low, x);
            double next = x * Math.Exp(Math.Log(apparent / g) / (Local(x, m) * ((4 * x / g) - 3)));
            next = next >= low && next <= high ? next : Math.Sqrt(low) * Math.Sqrt(high);
            if (Math.Abs(next - x) <= 1e-14 * x)
            {
                return next;
            }

            x = next;
        }

        return x;
    }

    private static double Local(double x, double m)
    {
        double power = Math.Pow(x, m);
        return 1 - (m * power / (1 + power));
    }

    private static double Apparent(double x, double m)
    {
        double power = Math.Pow(x, m), sum = 0;
        foreach ((double place, double weight) in Nodes)
        {
            double ratio = (1 + power) / (1 + (power * Math.Exp(-m * place)));
            sum += weight * ratio * ratio * ratio;
        }

        return 4.0 / 3.0 * x * (1 - sum);
    }

    private static (double Place, double Weight)[] MakeNodes()
    {
        var nodes = new List<(double Place, double Weight)>();
        for (int panel = 1; panel < Panels.Length; panel++)
        {
            var rule = new GaussLegendreRule(Panels[panel - 1], Panels[panel], Points);
            for (int i = 0; i < Points; i++)
            {
                double place = rule.GetAbscissa(i);
                nodes.Add((place, rule.GetWeight(i) * Math.Exp(-4 * place)));
            }
        }

        return [.. nodes];
    }
}
