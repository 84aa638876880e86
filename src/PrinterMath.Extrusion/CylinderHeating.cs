namespace PrinterMath.Extrusion;

/// <summary>Conduction into a long cylinder, as filament moving through a heated length: how much of the first temperature difference to the wall is left.</summary>
/// <remarks>
/// <para>The unaccomplished change is (T_wall − T)/(T_wall − T_start), a ratio from 1 down to 0, as a function of the Fourier number Fo = α·t/R², with α = k/(ρ·c_p). For filament moving as a plug, t = L/v and
/// Fo = π·α·L/Q: the diameter drops out. The Biot number is Bi = h·R/k; none means a wall that holds its temperature at the surface of the filament.</para>
/// <para>Good to 1e-12. Source: H. S. Carslaw, J. C. Jaeger 1959, Conduction of Heat in Solids, 2nd ed., 7.6 and 7.7; J. Crank 1975, The Mathematics of Diffusion, 2nd ed., 5.3, for short times (from memory).</para>
/// </remarks>
/// <example><code>double left = CylinderHeating.UnaccomplishedAtCenter(0.4);   // 0.158</code></example>
public static class CylinderHeating
{
    /// <summary>Shortest Fourier number with a film.</summary>
    private const double Shortest = 1e-4;

    /// <summary>Unaccomplished change at the centre, wall at constant temperature.</summary>
    /// <param name="fourier">Fourier number Fo, zero or more.</param>
    /// <returns>The ratio, from 1 down to 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative or not finite.</exception>
    public static double UnaccomplishedAtCenter(double fourier) => HeatingSeries.FixedWall.Center(Guard.NonNegative(fourier));

    /// <summary>Unaccomplished change at the centre, heated through a film.</summary>
    /// <param name="fourier">Fourier number Fo, 1e-4 or more.</param>
    /// <param name="biot">Biot number Bi, greater than zero.</param>
    /// <returns>The ratio, from 1 down to 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double UnaccomplishedAtCenter(double fourier, double biot) => Film(fourier, biot).Center(fourier);

    /// <summary>Unaccomplished change of the mean over the section, wall at constant temperature.</summary>
    /// <param name="fourier">Fourier number Fo, zero or more.</param>
    /// <returns>The ratio, from 1 down to 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative or not finite.</exception>
    public static double UnaccomplishedMean(double fourier) => HeatingSeries.FixedWall.Mean(Guard.NonNegative(fourier));

    /// <summary>Unaccomplished change of the mean over the section, heated through a film.</summary>
    /// <param name="fourier">Fourier number Fo, 1e-4 or more.</param>
    /// <param name="biot">Biot number Bi, greater than zero.</param>
    /// <returns>The ratio, from 1 down to 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double UnaccomplishedMean(double fourier, double biot) => Film(fourier, biot).Mean(fourier);

    /// <summary>Fourier number at which the centre has a given part of the change left, wall at constant temperature.</summary>
    /// <param name="unaccomplished">The ratio, from 1e-12 to 1 − 1e-12.</param>
    /// <returns>The Fourier number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is out of range.</exception>
    public static double FourierFor(double unaccomplished) => HeatingSeries.FixedWall.FourierFor(Guard.Between(unaccomplished, 1e-12, 1 - 1e-12));

    private static HeatingSeries Film(double fourier, double biot)
    {
        Guard.Positive(biot);
        return Guard.Finite(fourier) >= Shortest ? HeatingSeries.Film(biot, fourier) : throw Guard.Out(nameof(fourier), fourier, "1e-4 or more with a film");
    }
}
