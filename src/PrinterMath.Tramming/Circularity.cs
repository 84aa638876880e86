using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>A printed or driven circle: centre and radius by least squares, and how far the path departs from a circle, by least squares and by the narrowest ring.</summary>
/// <remarks>
/// <para>Least squares: min Σ(√((x − a)² + (y − b)²) − r)², by Gauss-Newton from the algebraic fit; covariance σ²(JᵀJ)⁻¹, σ² from the residuals on n − 3 degrees of freedom. It holds for
/// random scatter: deviations that belong to the machine, an oval for instance, are not random, and the covariance is then only a measure of size.</para>
/// <para>Circular deviation: width of the narrowest ring between two concentric circles that holds all points (minimum zone). It is found by the exchange of
/// <see cref="MinimumZone"/> on radii against directions, centred anew until it stands still: exact for paths near a circle that turn all round. The zone has no covariance: it rests on four points.</para>
/// <para>Findings: <c>circle.short</c> (blocking: points in one line or one place, so no circle is fixed), <c>circle.arc</c> (caution: the points leave a gap of more than 120°), <c>circle.unit.suspect</c>
/// (caution), <c>circle.uncertainty.unknown</c> (note: there are three points, which always lie on a circle).</para>
/// <para>Source: ISO 230-4:2005, circular deviation G, minimum separation of two concentric circles that envelop the path (from memory); ISO 12181-1 for least-squares and minimum zone
/// reference circles (from memory); Kåsa 1976, IEEE Transactions on Instrumentation and Measurement 25, 8 (algebraic fit, from memory).</para>
/// </remarks>
/// <example><code>Circularity circle = Circularity.OfMeters(xs, ys); Length deviation = circle.CircularDeviation;</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class Circularity
{
    private readonly Finding[] _findings;
    private readonly CircleSolution? _solution;

    internal Circularity(CircleSolution? solution, params Finding?[] findings)
    {
        _solution = solution;
        _findings = [.. findings.OfType<Finding>()];
    }

    /// <summary>What was noticed.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Whether the points fix a circle.</summary>
    public bool IsDeterminate => _solution is not null;

    /// <summary>Centre (x, y) and radius r of the least-squares circle in metres, with their covariance.</summary>
    /// <exception cref="IndeterminateException">The points fix no circle, or there are only three.</exception>
    public JointEstimate LeastSquaresCircle => Solution.DegreesOfFreedom > 0
        ? JointEstimate.FromSi(["centre x", "centre y", "radius"], ["m", "m", "m"], [Solution.X, Solution.Y, Solution.Radius], Solution.Covariance, Solution.DegreesOfFreedom)
        : throw new IndeterminateException(CircleFindings.UncertaintyUnknown());

    /// <summary>Radius of the least-squares circle.</summary>
    /// <exception cref="IndeterminateException">The points fix no circle, or there are only three.</exception>
    public Measured<Length> Radius => LeastSquaresCircle.Estimate<Length>(2);

    /// <summary>Distance of each point from the least-squares circle, positive outside, in order.</summary>
    /// <exception cref="IndeterminateException">The points fix no circle.</exception>
    public IReadOnlyList<Length> Deviations => [.. Solution.Residuals.Select(d => Length.FromMeters(d))];

    /// <summary>Largest less smallest distance from the centre of the least-squares circle.</summary>
    /// <exception cref="IndeterminateException">The points fix no circle.</exception>
    public Length LeastSquaresDeviation => Length.FromMeters(Solution.Residuals.Max() - Solution.Residuals.Min());

    /// <summary>Circular deviation G: width of the narrowest ring that holds all points.</summary>
    /// <exception cref="IndeterminateException">The points fix no circle.</exception>
    public Length CircularDeviation => Length.FromMeters(Solution.ZoneWidth);

    /// <summary>Centre of the narrowest ring.</summary>
    /// <exception cref="IndeterminateException">The points fix no circle.</exception>
    public (Length X, Length Y) ZoneCentre => (Length.FromMeters(Solution.ZoneX), Length.FromMeters(Solution.ZoneY));

    private CircleSolution Solution => _solution ?? throw new IndeterminateException(_findings[0]);

    /// <summary>A circle from points in metres.</summary>
    /// <param name="x">Positions along x in metres, at least three.</param>
    /// <param name="y">Positions along y in metres, as many.</param>
    /// <returns>The circle, or a result whose findings say what the points lack.</returns>
    /// <exception cref="ArgumentException">Fewer than three points, or spans of different length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite.</exception>
    public static Circularity OfMeters(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Guard.AllFinite(x);
        Guard.AllFinite(y);
        return x.Length >= 3 && x.Length == y.Length
            ? CircleEstimator.Fit(x, y)
            : throw Guard.Refused(nameof(y), $"There are {x.Length} positions along x and {y.Length} along y; a circle needs as many of both, at least 3.");
    }

    /// <summary>The circular deviation, where the points fix a circle.</summary>
    /// <param name="deviation">Width of the narrowest ring.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetCircularDeviation(out Length deviation)
    {
        deviation = Length.FromMeters(_solution?.ZoneWidth ?? 0);
        return IsDeterminate;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Radius and deviations, or what the points lack.</returns>
    public override string ToString() => _solution is null
        ? _findings[0].ToString()
        : string.Create(CultureInfo.InvariantCulture, $"radius {_solution.Radius * 1e3:0.####} mm, circular deviation {_solution.ZoneWidth * 1e6:G4} µm");
}
