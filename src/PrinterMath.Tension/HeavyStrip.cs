using MathNet.Numerics.RootFinding;

namespace PrinterMath.Tension;

/// <summary>A strip that is clamped level at one end and bends under its own weight, however far.</summary>
/// <remarks>
/// From the free end, with the arc length in units of (EI/w)^⅓, the slope ψ below the horizon follows ψ″ = −t·cos ψ, ψ′(0) = 0. Each slope at the free end
/// starts one curve; it becomes level at t = T, so w·L³/EI = T³ and the drop is 1/T·∫ sin ψ dt of the overhang. Integrated by Taylor series, no step longer than ½.
/// Source: F. T. Peirce 1930, J. Textile Inst. 21, T377; W. G. Bickley 1934, Phil. Mag. 17, 603 (both from memory).
/// </remarks>
internal static class HeavyStrip
{
    private const int Order = 24;
    private const double Step = 0.5;

    /// <summary>Slope of the free end at a drop of 0.91; at π/2 the strip would be infinitely long.</summary>
    private const double Steepest = 1.5;
    private const double Accuracy = 1e-13;

    /// <summary>w·L³/EI from the drop of the free end, as a ratio of the overhang, greater than 0 and at most 0.9.</summary>
    internal static double Load(double drop) =>
        From(Brent.FindRoot(slope => From(slope).Drop - drop, drop, Steepest, Accuracy)).Load;

    /// <summary>w·L³/EI and drop/L of the strip whose free end slopes by an angle.</summary>
    internal static (double Load, double Drop) From(double slope)
    {
        Span<double> psi = stackalloc double[Order + 1];
        Span<double> sine = stackalloc double[Order + 1];
        Span<double> cosine = stackalloc double[Order + 1];
        double rate = 0;
        double t = 0;
        double sunk = 0;
        while (true)
        {
            Expand(t, slope, rate, psi, sine, cosine);
            if (Value(psi, Step) <= 0)
            {
                double level = Level(psi);
                return (Cube(t + level), (sunk + Integral(sine, level)) / (t + level));
            }

            sunk += Integral(sine, Step);
            slope = Value(psi, Step);
            rate = Slope(psi, Step);
            t += Step;
        }
    }

    /// <summary>Coefficients about t of ψ, sin ψ and cos ψ, from (k + 1)(k + 2)·ψ_{k+2} = −t·c_k − c_{k−1} and the products ψ′·cos ψ, −ψ′·sin ψ.</summary>
    private static void Expand(double t, double slope, double rate, Span<double> psi, Span<double> sine, Span<double> cosine)
    {
        psi[0] = slope;
        psi[1] = rate;
        (sine[0], cosine[0]) = Math.SinCos(slope);
        for (int k = 0; k < Order; k++)
        {
            if (k + 2 <= Order)
            {
                psi[k + 2] = -((t * cosine[k]) + (k > 0 ? cosine[k - 1] : 0)) / ((k + 1) * (k + 2));
            }

            double s = 0;
            double c = 0;
            for (int j = 0; j <= k; j++)
            {
                s += (j + 1) * psi[j + 1] * cosine[k - j];
                c -= (j + 1) * psi[j + 1] * sine[k - j];
            }

            sine[k + 1] = s / (k + 1);
            cosine[k + 1] = c / (k + 1);
        }
    }

    /// <summary>Where ψ = 0 within the step; ψ falls throughout and ever faster, so Newton from the far end does not overshoot.</summary>
    private static double Level(ReadOnlySpan<double> psi)
    {
        double at = Step;
        for (int round = 0; round < 12; round++)
        {
            at -= Value(psi, at) / Slope(psi, at);
        }

        return at;
    }

    private static double Value(ReadOnlySpan<double> series, double at)
    {
        double sum = 0;
        for (int k = Order; k >= 0; k--)
        {
            sum = (sum * at) + series[k];
        }

        return sum;
    }

    private static double Slope(ReadOnlySpan<double> series, double at)
    {
        double sum = 0;
        for (int k = Order; k >= 1; k--)
        {
            sum = (sum * at) + (k * series[k]);
        }

        return sum;
    }

    private static double Integral(ReadOnlySpan<double> series, double to)
    {
        double sum = 0;
        for (int k = Order; k >= 0; k--)
        {
            sum = (sum * to) + (series[k] / (k + 1));
        }

        return sum * to;
    }

    private static double Cube(double x) => x * x * x;
}
