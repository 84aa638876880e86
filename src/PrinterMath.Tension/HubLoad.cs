using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>Radial load on a pulley: the vector sum of the tensions of the two strands, R = √(T₁² + T₂² − 2·T₁·T₂·cos θ), θ the wrap.</summary>
/// <remarks>Equal tensions give R = 2·T·sin(θ/2), half a turn 2·T. Source: statics.</remarks>
/// <example><code>Force load = HubLoad.Of(Force.FromNewtons(50), Force.FromNewtons(50), Angle.FromDegrees(180));   // 100 N</code></example>
public static class HubLoad
{
    /// <summary>The load R.</summary>
    /// <param name="first">Tension of one strand, zero or more.</param>
    /// <param name="second">Tension of the other, zero or more.</param>
    /// <param name="wrap">Wrap angle θ, from 0 to 270°.</param>
    /// <returns>The load.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Force Of(Force first, Force second, Angle wrap) => Force.FromNewtons(Newtons(
        Guard.NonNegative(first.Newtons, nameof(first)),
        Guard.NonNegative(second.Newtons, nameof(second)),
        Guard.Between(wrap.Radians, 0, 1.5 * Math.PI, nameof(wrap))));

    internal static double Newtons(double first, double second, double wrap)
    {
        double difference = first - second;
        double half = Math.Sin(wrap / 2);
        return Math.Sqrt((difference * difference) + (4 * first * second * half * half));
    }

    /// <summary>T₀ at which T₀ + more and T₀ − less load the pulley with R: 4s²T₀² + 4s²(more − less)T₀ + (more + less)² − 4s²·more·less = R², s = sin(θ/2).</summary>
    internal static double Pretension(double load, double more, double less, double wrap)
    {
        double half = Math.Sin(wrap / 2);
        double a = 4 * half * half;
        double middle = (more - less) / 2;
        double sum = more + less;
        double square = (((load * load) - (sum * sum)) / a) + (sum * sum / 4);
        return Math.Sqrt(Math.Max(0, square)) - middle;
    }
}
