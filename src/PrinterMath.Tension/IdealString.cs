using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>A span without bending stiffness: f_n = n/(2L)·√(T/µ).</summary>
/// <remarks>
/// Holds when EI/(T·L²) is small: at 1e-4 clamped ends already make the tension read 4 % high. Not to be confused with <see cref="PinnedSpan"/> and
/// <see cref="ClampedSpan"/>, which know the stiffness.
/// Source: M. Mersenne 1636, Harmonie universelle; N. H. Fletcher, T. D. Rossing 1998, The Physics of Musical Instruments, 2nd ed., ch. 2.
/// </remarks>
/// <example><code>
/// Frequency f = IdealString.Frequency(Force.FromNewtons(50), Length.FromMillimeters(250), LinearDensity.FromGramsPerMeter(8.4));   // 154.303 Hz
/// </code></example>
public static class IdealString
{
    /// <summary>Frequency f_n of a harmonic of the span.</summary>
    /// <param name="tension">Tension T, greater than zero.</param>
    /// <param name="length">Free length L, greater than zero.</param>
    /// <param name="density">Linear density µ, greater than zero.</param>
    /// <param name="harmonic">Number n of the harmonic, 1 or more.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Frequency Frequency(Force tension, Length length, LinearDensity density, int harmonic = 1) =>
        UnitsNet.Frequency.FromHertz(Hertz(
            Guard.Positive(tension.Newtons, nameof(tension)),
            Guard.Positive(length.Meters, nameof(length)),
            Guard.Positive(density.KilogramsPerMeter, nameof(density)),
            Guard.AtLeast(harmonic, 1)));

    /// <summary>Tension T = 4·µ·L²·(f_n/n)² of a span that sounds at a frequency.</summary>
    /// <param name="frequency">Frequency f_n of the harmonic, greater than zero.</param>
    /// <param name="length">Free length L, greater than zero.</param>
    /// <param name="density">Linear density µ, greater than zero.</param>
    /// <param name="harmonic">Number n of the harmonic, 1 or more.</param>
    /// <returns>The tension.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Force Tension(Frequency frequency, Length length, LinearDensity density, int harmonic = 1) =>
        Force.FromNewtons(Newtons(
            Guard.Positive(frequency.Hertz, nameof(frequency)),
            Guard.Positive(length.Meters, nameof(length)),
            Guard.Positive(density.KilogramsPerMeter, nameof(density)),
            Guard.AtLeast(harmonic, 1)));

    internal static double Hertz(double tension, double length, double density, int n) =>
        n / (2 * length) * Math.Sqrt(tension / density);

    internal static double Newtons(double frequency, double length, double density, int n)
    {
        double speed = 2 * length * frequency / n;
        return density * speed * speed;
    }
}
