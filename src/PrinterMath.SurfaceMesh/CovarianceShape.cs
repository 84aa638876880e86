namespace PrinterMath.SurfaceMesh;

/// <summary>The correlation ρ of a <see cref="SurfaceCovariance"/> and its derivatives along x and y.</summary>
internal sealed class CovarianceShape
{
    private readonly bool _isSmooth;

    private CovarianceShape(bool isSmooth) => _isSmooth = isSmooth;

    internal static CovarianceShape Exponential { get; } = new(false);

    internal static CovarianceShape Smooth { get; } = new(true);

    internal double Value(double squared, double length)
    {
        double a = Math.Sqrt(_isSmooth ? 5 * squared : squared) / length;
        return _isSmooth ? (1 + a + (a * a / 3)) * Math.Exp(-a) : Math.Exp(-a);
    }

    /// <summary>ρ_x/dx = ρ_y/dy and ρ_xy/(dx·dy); zero where an exponential has its crease.</summary>
    internal (double Slope, double Twist) Derivatives(double squared, double length)
    {
        double r = Math.Sqrt(squared);
        if (_isSmooth)
        {
            double a = Math.Sqrt(5) * r / length, e = 5 / (3 * length * length) * Math.Exp(-a);
            return (-e * (1 + a), e * 5 / (length * length));
        }

        double fade = r > 0 ? Math.Exp(-r / length) : 0;
        return r > 0 ? (-fade / (length * r), fade * ((1 / (length * length * squared)) + (1 / (length * squared * r)))) : default;
    }
}
