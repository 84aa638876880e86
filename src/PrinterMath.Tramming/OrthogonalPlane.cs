using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>The plane with the least sum of squared distances square to it (orthogonal or total least squares), for points whose x, y and z are alike uncertain.</summary>
/// <remarks>
/// <para>In the frame in which the places are centred and uncorrelated, with moments S and least-squares slopes s: s′ = s·S/(S − λ) for both directions, λ = Σw·d² the least eigenvalue of
/// the moment matrix, found by fixed-point steps from least squares; no digits are lost to the large moments of the places. Weights as in <see cref="PlaneFit"/>.</para>
/// <para>Covariance of first order, q²σ²(VᵀWV)⁻¹ with q² = 1 + b² + c², slopes times S/(S − λ); σ² stated, or λ/(n − 3).</para>
/// <para>For the tilts of a bed the answer is that of <see cref="PlaneFit"/> to 1 part in 10 000. Findings as there, and <c>plane.upright</c> (blocking).</para>
/// <para>Source: Shakarji 1998, Least-squares fitting algorithms of the NIST Algorithm Testing System, Journal of Research of NIST 103, 633 (planes by the singular vector of the
/// centred points); Van Huffel, Vandewalle 1991, The Total Least Squares Problem, chapter 2 (from memory).</para>
/// </remarks>
/// <example><code>OrthogonalPlane plane = OrthogonalPlane.Fit(points); double tilt = Math.Acos(plane.NormalZ);</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class OrthogonalPlane
{
    private const int MostSteps = 100;

    private readonly PlaneFit _inZ;
    private readonly PlaneSolution _solution;
    private readonly PlaneResidual[] _residuals;
    private readonly Finding[] _findings;
    private readonly double _squares;

    private OrthogonalPlane(PlaneFit inZ, in PlaneSolution solution, PlaneResidual[] residuals, double squares, Finding[] findings)
    {
        _inZ = inZ;
        _solution = solution;
        _residuals = residuals;
        _squares = squares;
        _findings = findings;
    }

    /// <summary>What the fit noticed about the points.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Whether the points fix a plane and its uncertainty; when false, <see cref="Findings"/> say why.</summary>
    public bool IsDeterminate => _residuals.Length > 0;

    /// <summary>Component along x of the unit normal, which points upwards; a ratio.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public double NormalX => -Solution.SlopeX / Secant;

    /// <summary>Component along y of the unit normal; a ratio.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public double NormalY => -Solution.SlopeY / Secant;

    /// <summary>Component along z of the unit normal, greater than zero; a ratio.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public double NormalZ => 1 / Secant;

    /// <summary>Slope b = dz/dx, a ratio; positive where the bed rises along +x.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Measured<double> SlopeX => Measured<double>.FromSi(Solution.SlopeX, Math.Sqrt(_solution.SlopeCovariance.X), _solution.DegreesOfFreedom);

    /// <summary>Slope c = dz/dy, a ratio; positive where the bed rises along +y.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Measured<double> SlopeY => Measured<double>.FromSi(Solution.SlopeY, Math.Sqrt(_solution.SlopeCovariance.Y), _solution.DegreesOfFreedom);

    /// <summary>Height at the origin (m), slope along x and slope along y (ratios), with their covariance.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public JointEstimate Coefficients => Solution.Coefficients;

    /// <summary>Distances square to the plane, one for each point, in order.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public IReadOnlyList<PlaneResidual> Residuals => IsDeterminate ? Array.AsReadOnly(_residuals) : throw Indeterminate();

    /// <summary>Indices of the points that stand out, in order; often empty.</summary>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public IReadOnlyList<int> Outliers => [.. Residuals.Where(r => r.IsOutlier).Select(r => r.Index)];

    /// <summary>Standard deviation of the distances, √(Σd²/(n − 3)), weighted with mean weight 1, and its standard uncertainty s/√(2(n − 3)).</summary>
    /// <exception cref="IndeterminateException">The points fix no plane, or there are only three.</exception>
    public Measured<Length> ResidualStandardDeviation
    {
        get
        {
            int free = _residuals.Length - 3;
            if (free <= 0)
            {
                throw Indeterminate();
            }

            double s = Math.Sqrt(_squares / _solution.Axes.Weight * _residuals.Length / free);
            return Measured<Length>.FromSi(s, s / Math.Sqrt(2 * free), free);
        }
    }

    /// <summary>Highest minus lowest distance: least-squares flatness square to the plane, as read.</summary>
    /// <remarks>Source: ISO 12781-1:2011, least-squares reference plane, peak-to-valley deviation (from memory).</remarks>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Length RawFlatness => Length.FromMeters(Residuals.Max(r => r.SiValue) - _residuals.Min(r => r.SiValue));

    private PlaneSolution Solution => IsDeterminate ? _solution : throw Indeterminate();

    private double Secant => Math.Sqrt(1 + (Solution.SlopeX * _solution.SlopeX) + (_solution.SlopeY * _solution.SlopeY));

    /// <summary>Fits a plane.</summary>
    /// <param name="points">At least three probe points.</param>
    /// <param name="options">What is known beforehand; the method in it plays no part; null for the defaults.</param>
    /// <returns>The plane, or a result whose findings say what the points lack.</returns>
    /// <exception cref="ArgumentException">Fewer than three points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static OrthogonalPlane Fit(IReadOnlyList<ProbePoint> points, PlaneFitOptions? options = null)
    {
        PlaneFit inZ = PlaneFit.Fit(points, (options ?? new PlaneFitOptions()) with { Method = PlaneMethod.LeastSquares });
        if (inZ.Blocking is Finding blocking)
        {
            return new OrthogonalPlane(inZ, default, [], 0, [blocking]);
        }

        PlaneSolution plane = inZ.Solution;
        if (!TryTurn(ref plane, inZ.Noise.WeightedSquares, out double along, out double across))
        {
            return new OrthogonalPlane(inZ, default, [], 0, [PlaneFindings.Upright()]);
        }

        double secant = Math.Sqrt(1 + (plane.SlopeX * plane.SlopeX) + (plane.SlopeY * plane.SlopeY));
        var table = new PlaneResidual[points.Count];
        double squares = ResidualTable.Fill(table, inZ.PointSpan, inZ.Places, plane) / (secant * secant);
        for (int i = 0; i < table.Length; i++)
        {
            table[i] = table[i] with { SiValue = table[i].SiValue / secant };
        }

        int free = table.Length - 3;
        var noise = NoiseScale.Of(inZ.Noise.IsStated, inZ.Noise.WidenForMisfit, squares, free, inZ.LargestHeight);
        if (!noise.IsKnown)
        {
            return new OrthogonalPlane(inZ, default, [], 0, [PlaneFindings.UncertaintyUnknown(table.Length)]);
        }

        PrincipalAxes axes = plane.Axes;
        plane = plane with
        {
            Axes = axes with { AlongMoment = axes.AlongMoment / (along * along), AcrossMoment = axes.AcrossMoment / (across * across) },
            UnitVariance = noise.UnitVariance * secant * secant,
            DegreesOfFreedom = noise.DegreesOfFreedom,
        };
        NoiseScale scatter = noise.IsMisfit ? NoiseScale.Of(inZ.Noise.IsStated, true, squares, free, 0) : noise;
        int outliers = ResidualTable.Standardise(table, inZ.Places, scatter);
        int setAside = inZ.Noise.IsStated ? 0 : inZ.Points.Count(p => p.HasUncertainty);
        return new OrthogonalPlane(inZ, plane, table, squares, PlaneEstimator.Notices(inZ.Points, table, noise, squares, outliers, setAside, plane, free));
    }

    /// <summary>Height of the plane at a place, positive upwards.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>The height; its uncertainty grows with the distance from the middle of the points.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    /// <exception cref="IndeterminateException">The points fix no plane.</exception>
    public Measured<Length> HeightAt(Length x, Length y)
    {
        double px = Guard.Finite(x.Meters, nameof(x));
        double py = Guard.Finite(y.Meters, nameof(y));
        return Measured<Length>.FromSi(Solution.Height(px, py), Math.Sqrt(_solution.HeightCovariance(px, py, px, py)), _solution.DegreesOfFreedom);
    }

    /// <summary>The slopes, where the points fix a plane.</summary>
    /// <param name="slopeX">dz/dx, a ratio.</param>
    /// <param name="slopeY">dz/dy, a ratio.</param>
    /// <returns>Whether there are any.</returns>
    public bool TryGetSlopes(out Measured<double> slopeX, out Measured<double> slopeY)
    {
        slopeX = IsDeterminate ? SlopeX : default;
        slopeY = IsDeterminate ? SlopeY : default;
        return IsDeterminate;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Slopes and the number of points, or what they lack.</returns>
    public override string ToString() => IsDeterminate
        ? $"orthogonal plane through {_residuals.Length} points, dz/dx = {SlopeX}, dz/dy = {SlopeY}"
        : _findings[0].ToString();

    /// <summary>Least-squares slopes to orthogonal ones; the factors S/(S − λ) come out beside them.</summary>
    private static bool TryTurn(ref PlaneSolution plane, double squares, out double along, out double across)
    {
        double su = plane.Axes.AlongMoment, sv = plane.Axes.AcrossMoment;
        double a = plane.SlopeAlong, b = plane.SlopeAcross;
        double lambda = squares / (1 + (a * a) + (b * b));
        along = across = 1;
        for (int step = 0; step < MostSteps; step++)
        {
            if (lambda >= Math.Min(su, sv))
            {
                return false;
            }

            along = su / (su - lambda);
            across = sv / (sv - lambda);
            double ta = a * along, tb = b * across;
            double next = (squares + (su * (ta - a) * (ta - a)) + (sv * (tb - b) * (tb - b))) / (1 + (ta * ta) + (tb * tb));
            plane = plane with { SlopeAlong = ta, SlopeAcross = tb };
            if (Math.Abs(next - lambda) <= 1e-15 * lambda)
            {
                return true;
            }

            lambda = next;
        }

        return true;
    }

    private IndeterminateException Indeterminate() => new(_findings.FirstOrDefault(f => f.Severity == FindingSeverity.Blocking) ?? PlaneFindings.UncertaintyUnknown(_inZ.Points.Count));
}
