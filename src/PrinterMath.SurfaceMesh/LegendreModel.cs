using System.Diagnostics.CodeAnalysis;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Polynomials fitted to points at any places by least squares: the smooth part of a surface, with few numbers and their covariance.</summary>
/// <remarks>
/// <para>z = Σ c·Pᵢ(ξ)Pⱼ(η), i + j up to the degree, ξ and η from −1 to 1 across the rectangle. The degree is that of least Σ(eᵢ/(1 − hᵢᵢ))², the squares of predictions of readings that were left out, or stated.</para>
/// <para>The uncertainty is that of the noise of the readings; where it is not stated, of what the polynomials leave over. Shape that they cannot take is not in it: <see cref="HeightModel.InterpolationErrorAt"/> is
/// twice the standard deviation of what is left over beyond the noise, zero where noise explains it.</para>
/// Source: Legendre polynomials, Abramowitz, Stegun 1964, 22.7.10; prediction sum of squares, D. M. Allen 1974, Technometrics 16, 125-127 (both from memory).
/// </remarks>
/// <example><code>
/// LegendreModel smooth = LegendreModel.Fit(points, new LegendreOptions { Repeatability = Length.FromMicrometers(6) });
/// Console.WriteLine($"degree {smooth.Degree}: {smooth.HeightAt(x, y)}");
/// </code></example>
public sealed class LegendreModel : HeightModel
{
    /// <summary>Highest degree: 8, which takes 45 coefficients.</summary>
    public const int MostDegree = 8;

    private readonly LinearFit _fit;

    private LegendreModel(LegendreSource source, LinearFit fit, int degree)
        : base(source)
    {
        _fit = fit;
        Degree = degree;
    }

    /// <summary>Total degree.</summary>
    public int Degree { get; }

    /// <summary>Number of coefficients, (d + 1)(d + 2)/2.</summary>
    public int CoefficientCount => _fit.CoefficientCount;

    /// <summary>Standard deviation of what the polynomials leave over.</summary>
    /// <exception cref="IndeterminateException">As many coefficients as points leave nothing over.</exception>
    public Length LeftOver => Length.FromMeters(Math.Sqrt(_fit.Readings.Sum(reading => reading.Residual * reading.Residual) / (_fit.DegreesOfFreedom > 0
        ? _fit.DegreesOfFreedom
        : throw new IndeterminateException("As many coefficients as points leave nothing over."))));

    /// <summary>Polynomials for points.</summary>
    /// <param name="points">As many points as coefficients or more, at enough places along x and y.</param>
    /// <param name="options">Degree, rectangle and noise; null for the defaults.</param>
    /// <returns>The surface.</returns>
    /// <exception cref="ArgumentException">The points span no rectangle.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    /// <exception cref="IndeterminateException">The points do not tell the coefficients apart.</exception>
    public static LegendreModel Fit(IReadOnlyList<ProbePoint> points, LegendreOptions? options = null) =>
        Try(points, options, out LegendreModel? model) is { } finding ? throw new IndeterminateException(finding) : model!;

    /// <summary>Polynomials for points, if those hold them.</summary>
    /// <param name="points">Points.</param>
    /// <param name="model">The surface, or null.</param>
    /// <param name="finding">Why there is none, or null.</param>
    /// <param name="options">Degree, rectangle and noise; null for the defaults.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentException">The points span no rectangle.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static bool TryFit(
        IReadOnlyList<ProbePoint> points, [NotNullWhen(true)] out LegendreModel? model, [NotNullWhen(false)] out Finding? finding, LegendreOptions? options = null)
    {
        finding = Try(points, options, out model);
        return model is not null;
    }

    private static Finding? Try(IReadOnlyList<ProbePoint> points, LegendreOptions? options, out LegendreModel? model)
    {
        options ??= new LegendreOptions();
        model = null;
        int least = 1, most = MostDegree;
        if (options.Degree is { } degree)
        {
            least = most = (int)Guard.Between(degree, 1, MostDegree, nameof(options));
        }

        ProbePoint[] copy = [.. Guard.NotNull(points)];
        PointNoise? noise = PointNoise.Of(copy, options.Repeatability, options.RepeatabilityDegreesOfFreedom);
        SurfaceRectangle domain = options.Domain ?? PointBounds.Of(copy);
        (LinearFit Fit, int Degree)[] fits = [.. Enumerable.Range(least, most - least + 1)
            .Where(d => LegendreTerms.Count(d) <= copy.Length)
            .Select(d => (Fit: Fitted(copy, domain, d, noise), Degree: d))
            .Where(pair => pair.Fit is not null && (options.Degree is not null || pair.Fit.PredictionSumOfSquares is not null))
            .Select(pair => (pair.Fit!, pair.Degree))];
        if (fits.Length == 0)
        {
            return ShapeFindings.Undetermined(copy.Length);
        }

        (LinearFit Fit, int Degree) chosen = fits.MinBy(pair => pair.Fit.PredictionSumOfSquares ?? 0);
        model = new LegendreModel(Source(chosen.Fit, chosen.Degree, domain, noise, options.Outside), chosen.Fit, chosen.Degree);
        return null;
    }

    private static LinearFit? Fitted(ProbePoint[] points, SurfaceRectangle domain, int degree, PointNoise? noise)
    {
        int columns = LegendreTerms.Count(degree) - 1;
        double[] design = new double[points.Length * columns], p = new double[degree + 1], q = new double[degree + 1], slopes = new double[degree + 1];
        for (int k = 0; k < points.Length; k++)
        {
            LegendreTerms.Polynomials(((2 * points[k].XMeters) - domain.LeftMeters - domain.RightMeters) / (domain.RightMeters - domain.LeftMeters), p, slopes);
            LegendreTerms.Polynomials(((2 * points[k].YMeters) - domain.FrontMeters - domain.RearMeters) / (domain.RearMeters - domain.FrontMeters), q, slopes);
            for (int term = 1; term <= columns; term++)
            {
                (int i, int j) = LegendreTerms.Degrees(term);
                design[(k * columns) + term - 1] = p[i] * q[j];
            }
        }

        LinearFit fit = LinearLeastSquares.Fit(design, columns, [.. points.Select(point => point.ZMeters)], noise?.StandardUncertainties ?? []);
        return fit.TryGetCoefficients(out _) ? fit : null;
    }

    private static LegendreSource Source(LinearFit fit, int degree, SurfaceRectangle domain, PointNoise? noise, OutsideRule outside)
    {
        int n = fit.CoefficientCount;
        double[,]? covariance = noise is null && fit.DegreesOfFreedom == 0 ? null : new double[n, n];
        for (int i = 0; covariance is not null && i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                covariance[i, j] = fit.Covariance(i, j);
            }
        }

        double surplus = noise is not null && fit.DegreesOfFreedom > 0 ? Math.Max(0, (fit.ChiSquare!.Value / fit.DegreesOfFreedom) - 1) : 0;
        double excess = surplus == 0 ? 0 : Math.Sqrt(surplus * noise!.StandardUncertainties.Average(u => u * u));
        return new LegendreSource(
            domain, degree, [.. fit.Coefficients], covariance, noise?.DegreesOfFreedom ?? Math.Max(1, fit.DegreesOfFreedom), excess, new HeightModelOptions { Outside = outside }, []);
    }
}
