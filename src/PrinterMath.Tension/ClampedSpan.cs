using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>A stiff span whose ends are held so that they cannot turn: the exact root of the tensioned Euler-Bernoulli equation.</summary>
/// <remarks>
/// <para>With p and q the bending wave numbers times L, q² − p² = T·L²/EI and 2πf·L²·√(µ/EI) = p·q, the characteristic equation
/// 2pq(1 − cos p cosh q) + (q² − p²) sin p sinh q = 0 splits into even and odd shapes. Its n-th root is p = nπ + 2δ with tan δ = p/(q·tanh(q/2)) for odd n and
/// tan δ = p·tanh(q/2)/q for even n, which neither overflows for long soft spans nor loses digits as EI or T vanish.</para>
/// <para>With EI = 0 this is <see cref="IdealString"/>; with T = 0 the clamped beam, β₁L = 4.730040745.</para>
/// Source: P. M. Morse 1948, Vibration and Sound, 2nd ed., ch. IV (from memory); H. Fletcher 1964, J. Acoust. Soc. Am. 36, 203, gives a series for it.
/// </remarks>
/// <example><code>Frequency f = ClampedSpan.Frequency(tension, length, density, FlexuralRigidity.FromNewtonSquareMeters(2e-5));</code></example>
public static class ClampedSpan
{
    /// <summary>Bisection alone would end in this many rounds; the secant needs about six.</summary>
    private const int MostIterations = 60;
    private const double RelativeRounding = 4e-16;

    /// <summary>Frequency f_n of a partial of the span.</summary>
    /// <param name="tension">Tension T, zero or more.</param>
    /// <param name="length">Free length L, greater than zero.</param>
    /// <param name="density">Linear density µ, greater than zero.</param>
    /// <param name="rigidity">Flexural rigidity EI.</param>
    /// <param name="harmonic">Number n of the partial, 1 or more.</param>
    /// <returns>The frequency; zero only if both tension and rigidity are.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Frequency Frequency(Force tension, Length length, LinearDensity density, FlexuralRigidity rigidity, int harmonic = 1) =>
        UnitsNet.Frequency.FromHertz(Hertz(
            Guard.NonNegative(tension.Newtons, nameof(tension)),
            Guard.Positive(length.Meters, nameof(length)),
            Guard.Positive(density.KilogramsPerMeter, nameof(density)),
            rigidity.NewtonSquareMeters,
            Guard.AtLeast(harmonic, 1)));

    /// <summary>
    /// Tension of a span that sounds at a frequency; negative (a strut in compression) when the frequency is lower than the rigidity alone would give.
    /// </summary>
    /// <param name="frequency">Frequency f_n of the partial, greater than zero.</param>
    /// <param name="length">Free length L, greater than zero.</param>
    /// <param name="density">Linear density µ, greater than zero.</param>
    /// <param name="rigidity">Flexural rigidity EI.</param>
    /// <param name="harmonic">Number n of the partial, 1 or more.</param>
    /// <returns>The tension.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Force Tension(Frequency frequency, Length length, LinearDensity density, FlexuralRigidity rigidity, int harmonic = 1) =>
        Force.FromNewtons(Newtons(
            Guard.Positive(frequency.Hertz, nameof(frequency)),
            Guard.Positive(length.Meters, nameof(length)),
            Guard.Positive(density.KilogramsPerMeter, nameof(density)),
            rigidity.NewtonSquareMeters,
            Guard.AtLeast(harmonic, 1)));

    internal static double Hertz(double tension, double length, double density, double rigidity, int n)
    {
        double pull = tension * length * length;
        double p = n * Math.PI;
        if (rigidity > 0)
        {
            p = Solve(n, new WaveNumberLaw(pull / rigidity, TensionKnown: true));
        }

        return p / (2 * Math.PI * length * length) * Math.Sqrt(((p * p * rigidity) + pull) / density);
    }

    internal static double Newtons(double frequency, double length, double density, double rigidity, int n)
    {
        double speed = 2 * Math.PI * frequency * length;
        double p = n * Math.PI;
        if (rigidity > 0)
        {
            p = Solve(n, new WaveNumberLaw(speed * length * Math.Sqrt(density / rigidity), TensionKnown: false));
        }

        double stiffening = p / length;
        return (density * (speed / p) * (speed / p)) - (stiffening * stiffening * rigidity);
    }

    /// <summary>p = nπ + 2δ(p, q(p)) by a bracketed secant method, nπ &lt; p &lt; (n + 1)π.</summary>
    private static double Solve(int n, WaveNumberLaw law)
    {
        double low = n * Math.PI, high = (n + 1) * Math.PI;
        double p = low;
        double error = Excess(p, n, law);
        double next = Math.Min(p - error, high);
        for (int i = 0; i < MostIterations && Math.Abs(next - p) > RelativeRounding * next; i++)
        {
            double nextError = Excess(next, n, law);
            (low, high) = nextError < 0 ? (next, high) : (low, next);
            double slope = (nextError - error) / (next - p);
            double proposal = slope != 0 ? next - (nextError / slope) : (low + high) / 2;
            (p, error) = (next, nextError);
            next = nextError == 0 ? next : proposal > low && proposal < high ? proposal : (low + high) / 2;
        }

        return next;
    }

    private static double Excess(double p, int n, WaveNumberLaw law) => p - (n * Math.PI) - (2 * EndPhase(n, p, law.Other(p)));

    /// <summary>δ, how far the bending at a clamped end shifts the phase of the shape.</summary>
    private static double EndPhase(int n, double p, double q)
    {
        double hold = Math.Tanh(q / 2);
        return int.IsOddInteger(n) ? Math.Atan2(p, q * hold) : Math.Atan2(p * hold, q);
    }

    /// <summary>How q follows from p: q² = p² + T·L²/EI when the tension is known, q = Ω/p with Ω = 2πf·L²·√(µ/EI) when the frequency is.</summary>
    private readonly record struct WaveNumberLaw(double Constant, bool TensionKnown)
    {
        internal double Other(double p) => TensionKnown ? Math.Sqrt((p * p) + Constant) : Constant / p;
    }
}
