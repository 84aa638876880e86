using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>A stiff span whose ends may turn freely, exact: f_n = n/(2L)·√(T/µ)·√(1 + n²π²EI/(T·L²)).</summary>
/// <remarks>
/// Euler-Bernoulli bending, so the span must be many times longer than the belt is high. With EI = 0 this is <see cref="IdealString"/>; with T = 0 it is
/// the simply supported beam, β₁L = π.
/// Source: N. H. Fletcher, T. D. Rossing 1998, The Physics of Musical Instruments, 2nd ed., 2.18; H. Fletcher 1964, J. Acoust. Soc. Am. 36, 203.
/// </remarks>
/// <example><code>Frequency f = PinnedSpan.Frequency(tension, length, density, FlexuralRigidity.FromNewtonSquareMeters(2e-5));</code></example>
public static class PinnedSpan
{
    /// <summary>Frequency f_n of a partial of the span.</summary>
    /// <param name="tension">Tension T, zero or more; with zero rigidity greater than zero.</param>
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
    /// Tension T = 4·µ·L²·(f_n/n)² − n²π²EI/L² of a span that sounds at a frequency; negative (a strut in compression) when the frequency is
    /// lower than the rigidity alone would give.
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

    internal static double Hertz(double tension, double length, double density, double rigidity, int n) =>
        n / (2 * length) * Math.Sqrt((tension + Stiffening(length, rigidity, n)) / density);

    internal static double Newtons(double frequency, double length, double density, double rigidity, int n) =>
        IdealString.Newtons(frequency, length, density, n) - Stiffening(length, rigidity, n);

    /// <summary>n²π²EI/L², what the rigidity adds to the tension.</summary>
    private static double Stiffening(double length, double rigidity, int n)
    {
        double waveNumber = n * Math.PI / length;
        return waveNumber * waveNumber * rigidity;
    }
}
