using System.Diagnostics.CodeAnalysis;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>A thin plate bent to probed points at any places: of all surfaces the one of least bending for how well it keeps to the readings.</summary>
/// <remarks>
/// <para>It minimises (1/n)·Σ wᵢ(zᵢ − f)² + λ·∬(f_xx² + 2f_xy² + f_yy²) dx dy, w the weights 1/u² over their mean. f is a plane and Σ cₖ·r² ln r. λ in m² is that of least generalised
/// cross-validation, or stated; λ = 0 passes through all points, a large λ leaves the plane of least squares. Readings of one place are averaged first.</para>
/// <para>The uncertainty is that of the noise and of what a plate may do between the places together (posterior of a Gaussian process whose prior the bending is): on average over a surface its intervals hold
/// as often as they say or more, not at each place. How much a plate bends there is the noise's variance over δ = 8πnλ, which goes with the smoothing, but no more than b = gᵀ(B + δ)⁻¹g/(n − 3), the estimate of
/// maximum likelihood. Beds are smoother than such a prior: on simulated bowls, saddles, ridges and waves 95 % intervals held in 98 to 99.5 % of places, 1.2 to 1.6 times as wide as the error. <see cref="HeightModel.InterpolationErrorAt"/> is twice the standard deviation of the latter part, already contained. Noise that is not stated is judged from
/// what the plate leaves over, |(I − A)z|²/tr(I − A); a plate through all points leaves nothing over.</para>
/// <para>Work and memory grow with n³ and n²: at most <see cref="MostPlaces"/> places. Source: G. Wahba 1990, Spline Models for Observational Data, SIAM, sections 2.4, 4.3 and 5.1; J. Duchon 1977 (both from memory).</para>
/// </remarks>
/// <example><code>
/// ThinPlateModel plate = ThinPlateModel.Fit(points, new ThinPlateOptions { Repeatability = Length.FromMicrometers(6) });
/// Measured&lt;Length&gt; z = plate.HeightAt(Length.FromMillimeters(33), Length.FromMillimeters(71));
/// </code></example>
public sealed class ThinPlateModel : HeightModel
{
    /// <summary>Most places that a plate is fitted to: 2000. Of more, average neighbours or take a grid.</summary>
    public const int MostPlaces = 2000;

    private const int FewestPlaces = 4;

    /// <summary>A plate that leaves less than this over passes through the points for all that can be seen.</summary>
    private const double LeastFreedom = 0.5;
    private readonly PlateFit _fit;

    private ThinPlateModel(ThinPlateSource source, PlateFit fit, bool isPlane)
        : base(source)
    {
        _fit = fit;
        IsPlane = isPlane;
    }

    /// <summary>Weight λ of the bending energy.</summary>
    public Area Smoothing => Area.FromSquareMeters(_fit.Delta * _fit.SquaredScale / (8 * Math.PI * _fit.Count));

    /// <summary>Number of places, repeated ones counted once.</summary>
    public int Places => _fit.Count;

    /// <summary>tr A, between 3 for a plane and the number of places for a plate through all of them: how many parameters the fit is worth.</summary>
    public double EffectiveParameters => _fit.Count - _fit.ResidualFreedom;

    /// <summary>Whether cross-validation found no more than a plane in the readings.</summary>
    public bool IsPlane { get; }

    /// <summary>Generalised cross-validation V(λ) = n·|(I − A)z|²/tr²(I − A), in m²: about the mean square error of a new reading; zero for a plate through all points.</summary>
    public Area CrossValidation => Area.FromSquareMeters(_fit.Score);

    /// <summary>Standard deviation of a reading of mean weight by what the plate leaves over.</summary>
    /// <exception cref="IndeterminateException">The plate passes through all points.</exception>
    public Length LeftOver => _fit.ResidualFreedom > 0
        ? Length.FromMeters(Math.Sqrt(_fit.LeftOverVariance))
        : throw new IndeterminateException(PlateFindings.NothingLeftOver);

    /// <summary>A plate for points.</summary>
    /// <param name="points">At least 4 and at most <see cref="MostPlaces"/> places, not on one line.</param>
    /// <param name="options">Smoothing, noise and outside; null for the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The plate.</returns>
    /// <exception cref="ArgumentException">The points span no rectangle, are too many, or lie too close together for a plate through all of them.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    /// <exception cref="IndeterminateException">The points are too few, or lie on one line.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ThinPlateModel Fit(IReadOnlyList<ProbePoint> points, ThinPlateOptions? options = null, CancellationToken cancellation = default) =>
        Try(points, options, cancellation, out ThinPlateModel? model) is { } finding ? throw new IndeterminateException(finding) : model!;

    /// <summary>A plate for points, if they hold one.</summary>
    /// <param name="points">Places; at most <see cref="MostPlaces"/>.</param>
    /// <param name="model">The plate, or null.</param>
    /// <param name="finding">Why there is none, or null.</param>
    /// <param name="options">Smoothing, noise and outside; null for the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentException">The points span no rectangle, are too many, or lie too close together for a plate through all of them.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static bool TryFit(
        IReadOnlyList<ProbePoint> points,
        [NotNullWhen(true)] out ThinPlateModel? model,
        [NotNullWhen(false)] out Finding? finding,
        ThinPlateOptions? options = null,
        CancellationToken cancellation = default)
    {
        finding = Try(points, options, cancellation, out model);
        return model is not null;
    }

    private static Finding? Try(IReadOnlyList<ProbePoint> points, ThinPlateOptions? options, CancellationToken cancellation, out ThinPlateModel? model)
    {
        options ??= new ThinPlateOptions();
        model = null;
        ProbePoint[] copy = [.. Guard.NotNull(points)];
        PointNoise? noise = PointNoise.Of(copy, options.Repeatability, options.RepeatabilityDegreesOfFreedom);
        double? smoothing = options.Smoothing is { } area ? Guard.NonNegative(area.SquareMeters, nameof(options)) : null;
        SurfaceRectangle rectangle = PointBounds.Of(copy);
        var pooled = PooledPoints.Of(copy, noise);
        if (pooled.Count > MostPlaces)
        {
            throw Guard.Refused(nameof(points), FormattableString.Invariant($"{pooled.Count} places are too many for a plate; at most {MostPlaces}: average neighbours, or take a grid."));
        }

        double mean = pooled.Weights.Average();
        var frame = PlateFrame.Of(pooled, rectangle);
        PlateSystem? system = pooled.Count < FewestPlaces ? null
            : PlateSystem.Of(frame.X, frame.Y, pooled.Z, [.. pooled.Weights.Select(weight => weight / mean)], cancellation);
        if (system is null)
        {
            return PlateFindings.Undetermined(pooled.Count);
        }

        (double delta, bool isPlane) = smoothing is { } stated
            ? (8 * Math.PI * pooled.Count * stated / (frame.Scale * frame.Scale), false)
            : PlateSmoothing.Best(system, cancellation);
        var fit = PlateFit.Of(system, frame, delta, noise is null ? null : 1 / mean, noise?.DegreesOfFreedom ?? double.PositiveInfinity, cancellation);
        List<Finding> findings = pooled.RepeatedPlaces > 0 ? [GridFindings.Repeated(pooled.RepeatedPlaces, pooled.RepeatedReadings)] : [];
        if (smoothing is null && fit.ResidualFreedom < LeastFreedom)
        {
            findings.Add(PlateFindings.NotSmoothed(pooled.Count));
        }

        model = new ThinPlateModel(new ThinPlateSource(rectangle, fit, new HeightModelOptions { Outside = options.Outside }, findings), fit, isPlane);
        return null;
    }
}
