using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>
/// The plane z = a + b·x + c·y through probe points, by least squares or robustly, in z, with the covariance of its coefficients; z is positive upwards,
/// b and c are positive where the bed rises along +x and +y.
/// </summary>
/// <remarks>
/// <para>Weights are 1/u² when every point has a standard uncertainty, its own or <see cref="PlaneFitOptions.ProbeRepeatability"/>; else all
/// points count alike and the scatter is judged from the residuals, s² = SSE/(n − 3). A plane without an uncertainty is no answer: three
/// points of unknown uncertainty, or readings without any scatter, give a blocking finding.</para>
/// <para>With v = (1, x, y): C = σ²(VᵀWV)⁻¹ and u²(z(x, y)) = vᵀCv, computed in the frame in which the points are centred and uncorrelated.
/// Source: Draper, Smith, 1998, Applied Regression Analysis, 3rd ed., chapters 5 and 8 (from memory); JCGM 100:2008 (GUM), H.3, for the same in one variable.</para>
/// <para>Robust methods (<see cref="PlaneFitOptions.Method"/>) weigh the readings by how well they agree with the rest. Huber: σ² = (κ/m)²Σψ²/(n − 3), C = σ²(VᵀWV)⁻¹
/// with W the weights over their mean, m the mean of ψ′, κ = 1 + 3·var(ψ′)/(n·m²). Least trimmed squares: C is that of least squares of the readings that were kept.
/// Source: Huber 1981, Robust Statistics, 7.6 and 7.8; Rousseeuw, Leroy 1987, Robust Regression and Outlier Detection, chapter 1 (both from memory).</para>
/// <para>Not to be confused with <see cref="OrthogonalPlane"/>: for the tilts of a bed, below 0.01, the two agree to 1 part in 10 000. Nor with <see cref="MinimumZone"/>,
/// which has no covariance.</para>
/// <para>Findings: <c>plane.collinear</c>, <c>plane.agreement.collinear</c> (robust methods) and <c>plane.uncertainty.unknown</c> (blocking), <c>plane.misfit</c>, <c>plane.outlier</c>,
/// <c>plane.unit.suspect</c> (cautions; outliers are named, not removed), <c>plane.uncertainties.mixed</c>, <c>plane.level</c> (notes).</para>
/// </remarks>
/// <example><code>
/// PlaneFit plane = PlaneFit.Fit(points);
/// if (plane.TryGetHeight(x, y, out Measured&lt;Length&gt; height)) { Console.WriteLine(height); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PlaneFit
{
    private static readonly PlaneFitOptions Defaults = new();
    private readonly ProbePoint[] _points;
    private readonly Place[] _places;
    private readonly PlaneResidual[] _residuals;
    private readonly Finding[] _findings;
    private readonly PlaneSolution _solution;

    internal PlaneFit(ProbePoint[] points, Place[] places, PlaneResidual[] residuals, in PlaneSolution solution, PlaneNoise noise, Finding[] findings)
    {
        _points = points;
        _places = places;
        _residuals = residuals;
        _solution = solution;
        _findings = findings;
        Noise = noise;
    }

    private PlaneFit(ProbePoint[] points, Finding blocking)
        : this(points, [], [], default, default, [blocking]) =>
        Blocking = blocking;

    /// <summary>The points that were fitted, in order.</summary>
    public IReadOnlyList<ProbePoint> Points => Array.AsReadOnly(_points);

    /// <summary>What the fit noticed about the points.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Whether the points fix a plane and its uncertainty; when false, <see cref="Findings"/> say why.</summary>
    public bool IsDeterminate => Blocking is null;

    /// <summary>Slope b = dz/dx, a ratio; positive where the bed rises along +x.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Measured<double> SlopeX => Measured<double>.FromSi(Solution.SlopeX, Math.Sqrt(_solution.SlopeCovariance.X), _solution.DegreesOfFreedom);

    /// <summary>Slope c = dz/dy, a ratio; positive where the bed rises along +y.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Measured<double> SlopeY => Measured<double>.FromSi(Solution.SlopeY, Math.Sqrt(_solution.SlopeCovariance.Y), _solution.DegreesOfFreedom);

    /// <summary>Tilt about the x axis, atan c: right-handed about +x, so positive where the bed rises along +y.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Measured<Angle> TiltAboutX => TiltOf(SlopeY, 1);

    /// <summary>Tilt about the y axis, −atan b: right-handed about +y, so positive where the bed falls along +x.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Measured<Angle> TiltAboutY => TiltOf(SlopeX, -1);

    /// <summary>a, b and c with their covariance: height at the origin (m), slope along x and slope along y (ratios).</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public JointEstimate Coefficients => Solution.Coefficients;

    /// <summary>The residuals, one for each point, in the order of <see cref="Points"/>.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public IReadOnlyList<PlaneResidual> Residuals => IsDeterminate ? Array.AsReadOnly(_residuals) : throw Indeterminate();

    /// <summary>Indices of the points that stand out, in order; often empty.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public IReadOnlyList<int> Outliers => [.. Residuals.Where(r => r.IsOutlier).Select(r => r.Index)];

    /// <summary>Degrees of freedom of the residuals, n − 3: zero or more; for least trimmed squares n counts the readings that were kept.</summary>
    public int ResidualDegreesOfFreedom => Math.Max(0, (IsDeterminate ? Noise.Readings : _points.Length) - 3);

    /// <summary>
    /// Residual standard deviation s = √(SSE/(n − 3)), weighted with mean weight 1, and its own standard uncertainty s/√(2(n − 3)).
    /// </summary>
    /// <remarks>Source: JCGM 100:2008, E.4.3, for the uncertainty of a standard deviation.</remarks>
    /// <exception cref="IndeterminateException">The points fix no plane, or there are only three.</exception>
    public Measured<Length> ResidualStandardDeviation
    {
        get
        {
            int free = ResidualDegreesOfFreedom;
            if (!IsDeterminate || free == 0)
            {
                throw Indeterminate();
            }

            double s = Math.Sqrt(Noise.WeightedSquares / _solution.Axes.Weight * Noise.Readings / free);
            return Measured<Length>.FromSi(s, s / Math.Sqrt(2 * free), free);
        }
    }

    /// <summary>Highest minus lowest residual: least-squares flatness in z, as read.</summary>
    /// <remarks>
    /// A statistic of these readings, not an estimate of the bed: noise widens it, a flat bed read with noise s shows about 3.8 s at 25
    /// points. Source: ISO 12781-1:2011, least-squares reference plane, peak-to-valley deviation (from memory); orthogonal distances are smaller by √(1 + b² + c²).
    /// </remarks>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Length RawFlatness => Length.FromMeters(Residuals.Max(r => r.SiValue) - _residuals.Min(r => r.SiValue));

    /// <summary>Root mean square of the residuals, √(Σr²/n), as read.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Length RootMeanSquare => Length.FromMeters(Math.Sqrt(Residuals.Sum(r => r.SiValue * r.SiValue) / _points.Length));

    /// <summary>Highest minus lowest height of the plane over the rectangle that encloses the points; see <see cref="HeightSpreadOver"/>.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Measured<Length> HeightSpread
    {
        get
        {
            (double width, double depth) = ProbedExtent;
            return TiltSpread.Of(Solution, width, depth);
        }
    }

    internal Finding? Blocking { get; }

    internal PlaneNoise Noise { get; }

    internal ReadOnlySpan<ProbePoint> PointSpan => _points;

    internal ReadOnlySpan<Place> Places => _places;

    internal ReadOnlySpan<PlaneResidual> ResidualSpan => _residuals;

    internal double LargestHeight => PlaneEstimator.LargestHeight(_points);

    internal PlaneSolution Solution => IsDeterminate ? _solution : throw Indeterminate();

    internal (double Width, double Depth) ProbedExtent =>
        (_points.Max(p => p.XMeters) - _points.Min(p => p.XMeters), _points.Max(p => p.YMeters) - _points.Min(p => p.YMeters));

    /// <summary>Fits a plane.</summary>
    /// <param name="points">At least three probe points.</param>
    /// <param name="options">What is known beforehand; null for the defaults of <see cref="PlaneFitOptions"/>.</param>
    /// <returns>The plane, or a result whose findings say what the points lack.</returns>
    /// <exception cref="ArgumentException">Fewer than three points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range, or a point is beyond all printers: a coordinate over 1000 km, an uncertainty below 1 fm.</exception>
    public static PlaneFit Fit(IReadOnlyList<ProbePoint> points, PlaneFitOptions? options = null)
    {
        if (Guard.NotNull(points).Count < 3)
        {
            throw Guard.Refused(nameof(points), $"There are {points.Count} probe points; a plane needs at least 3.");
        }

        PlaneFitOptions chosen = options ?? Defaults;
        double repeatability = ProbeLimits.Repeatability(chosen.ProbeRepeatability, nameof(options) + "." + nameof(chosen.ProbeRepeatability));
        double placement = Guard.NonNegative(chosen.PlacementUncertainty.Meters, nameof(options) + "." + nameof(chosen.PlacementUncertainty));
        Guard.Between(chosen.TuningConstant, 0.5, 10, nameof(options) + "." + nameof(chosen.TuningConstant));
        return Enum.IsDefined(chosen.Method)
            ? PlaneEstimator.Fit([.. points], repeatability, placement, chosen)
            : throw Guard.Out(nameof(options) + "." + nameof(chosen.Method), chosen.Method, "one of the named methods");
    }

    /// <summary>Height of the plane at a place, positive upwards.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>The height; its uncertainty grows with the distance from the middle of the points.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Measured<Length> HeightAt(Length x, Length y) =>
        TryGetHeight(x, y, out Measured<Length> height) ? height : throw Indeterminate();

    /// <summary>Height of the plane at a place, positive upwards, where the points fix a plane.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <param name="height">The height.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    public bool TryGetHeight(Length x, Length y, out Measured<Length> height)
    {
        double px = Guard.Finite(x.Meters, nameof(x));
        double py = Guard.Finite(y.Meters, nameof(y));
        height = IsDeterminate
            ? Measured<Length>.FromSi(_solution.Height(px, py), Math.Sqrt(_solution.HeightCovariance(px, py, px, py)), _solution.DegreesOfFreedom)
            : default;
        return IsDeterminate;
    }

    /// <summary>The steepest slope and the direction in which the bed rises, where the tilt can be told from none at 95 %.</summary>
    /// <param name="slope">√(b² + c²), a ratio.</param>
    /// <param name="direction">Direction of steepest ascent, atan2(c, b): from +x, positive towards +y, from −180° to 180°.</param>
    /// <returns>Whether the tilt is significant: (b, c) lies outside its joint 95 % ellipse, an F test with 2 and ν degrees of freedom.</returns>
    public bool TryGetSteepestAscent(out Measured<double> slope, out Measured<Angle> direction)
    {
        slope = default;
        direction = default;
        if (!IsDeterminate)
        {
            return false;
        }

        double b = _solution.SlopeX;
        double c = _solution.SlopeY;
        SlopeCovariance v = _solution.SlopeCovariance;
        if (!TiltSpread.IsTilted(b, c, v, _solution.DegreesOfFreedom))
        {
            return false;
        }

        double steepest = Math.Sqrt((b * b) + (c * c));
        double along = ((b * b * v.X) + (2 * b * c * v.Both) + (c * c * v.Y)) / (steepest * steepest);
        double across = ((c * c * v.X) - (2 * b * c * v.Both) + (b * b * v.Y)) / (steepest * steepest);
        slope = Measured<double>.FromSi(steepest, Math.Sqrt(along), _solution.DegreesOfFreedom);
        direction = Measured<Angle>.FromSi(Math.Atan2(c, b), Math.Sqrt(across) / steepest, _solution.DegreesOfFreedom);
        return true;
    }

    /// <summary>Highest minus lowest height of the plane over a rectangle with sides along x and y, |b|·w + |c|·d.</summary>
    /// <param name="alongX">Side w along x, greater than zero.</param>
    /// <param name="alongY">Side d along y, greater than zero.</param>
    /// <returns>The spread, zero or more. It does not depend on where the rectangle lies.</returns>
    /// <remarks>
    /// <para>First order in b and c. A spread is never negative, so near zero tilt it reads high: by up to 0.8 standard deviations of each
    /// term at a level bed, negligible from three standard deviations on. It is not lowered for that: a limit on the spread is then accepted later, never
    /// sooner, than it should be.</para>
    /// <para>Where the tilt cannot be told from none (<c>plane.level</c>) the standard uncertainty is widened, if it must be, until the 95 %
    /// interval holds zero. Coverage by simulation was 94 % or more at every tilt and kind of noise tried.</para>
    /// <para>Source: JCGM 100:2008, 5.2.2, equation (13).</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A side is not finite and positive.</exception>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Measured<Length> HeightSpreadOver(Length alongX, Length alongY) =>
        TiltSpread.Of(Solution, Guard.Positive(alongX.Meters, nameof(alongX)), Guard.Positive(alongY.Meters, nameof(alongY)));

    /// <summary>Invariant text.</summary>
    /// <returns>Slopes and the number of points, or what they lack.</returns>
    public override string ToString() => Blocking is null
        ? $"plane through {_points.Length} points, dz/dx = {SlopeX}, dz/dy = {SlopeY}"
        : Blocking.ToString();

    internal static PlaneFit Blocked(ProbePoint[] points, Finding blocking) => new(points, blocking);

    private IndeterminateException Indeterminate() => new(Blocking ?? PlaneFindings.UncertaintyUnknown(_points.Length));

    private static Measured<Angle> TiltOf(Measured<double> slope, double sign) => Measured<Angle>.FromSi(
        sign * Math.Atan(slope.SiValue),
        slope.SiStandardUncertainty / (1 + (slope.SiValue * slope.SiValue)),
        slope.DegreesOfFreedom);
}
